/** Examples under the help of each command. */

export const EXAMPLES = `
Examples:
  inlaywright make patterns/tea-box-rosette.json
  inlaywright make my-lid.json --out pieces --set cutter.diameter=1/8in
  inlaywright list rosette

Exit codes: 0 made and proven, 1 cannot be cut as asked (nothing is written), 2 bad input or usage.`;

export const SERVE_EXAMPLES = `
Examples:
  inlaywright serve
  inlaywright serve tea-box-rosette.json
  inlaywright serve ~/inlays --out ~/inlays/made --no-open

The page is for this machine alone: it is bound to 127.0.0.1, and the address printed holds a key that is new each time.
It edits the recipe files of that folder, the same that inlaywright make takes, and nothing outside it.`;

export const LETTER_EXAMPLES = `
Examples:
  inlaywright letter "Orchard 27" --height 40mm --cutter 3mm
  inlaywright letter "Boot room" --units in --height 1.5in --name boot-room-sign

The recipe is written beside the piece, as OUT/NAME.json: edit it and make it again with inlaywright make.`;

export const ADOPT_EXAMPLES = `
Examples:
  inlaywright adopt heron.svg --cutter 1/8in
  inlaywright adopt heron.svg --cutter 3mm --width 160mm --name heron-tray

The recipe is written beside the piece, as OUT/NAME.json, with a copy of the drawing: edit it and make it again with
inlaywright make.`;

export const PROVE_EXAMPLES = `
Examples:
  inlaywright prove heron.svg --cutter 3mm --picture heron-tight.png
  inlaywright prove bracket.dxf --cutter 1/4in --as plug
  inlaywright prove out/lid/pocket.svg out/lid/plug.svg --clearance 0.08mm

Exit codes: 0 it can be cut (and goes in), 1 it cannot, 2 bad input or usage.`;

export const MAKE_EXAMPLES = `
Examples:
  inlaywright make patterns/*.json
  inlaywright make lid.json --set fit.clearance=0.1 --set name=lid-looser
  inlaywright make lid.json --parts 7,12

Each piece gets a folder with pocket and plug as SVG and DXF, pictures, a sheet to print and job.json.
It is written only when the drawings, read back, are proven to be cuttable and to fit.`;

export const COUPON_EXAMPLES = `
Examples:
  inlaywright coupon lid.json
  inlaywright coupon lid.json --ladder 0.06,0.08,0.1,0.12 --size 30mm

Made and proven like a piece, in OUT/NAME-coupon. Its steps are noted in the fit log beside the recipe, so that
inlaywright fit record lid.json --step 2 knows which clearance that was.`;

export const RECORD_EXAMPLES = `
Examples:
  inlaywright fit record lid.json --step 3 --result good --tried dry
  inlaywright fit record lid.json --clearance 0.1mm --result tight --tried glued --date 2026-03-09 --note "rapped home"`;

export const BOWL_EXAMPLES = `
Examples:
  inlaywright bowl fruit-bowl-wave.json
  inlaywright bowl fruit-bowl-wave.json --set bowl.sides=16 --no-coupon

Angles and sizes of the staves are on vessel.html; saw offcuts first and measure them.`;

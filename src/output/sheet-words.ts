import { bareLength, lengthText, UNIT_WORD } from './format.js';
import type { Job } from './job.js';

/** How to cut and put together a pair, step by step. HTML text. */
export function stepList(job: Job): string {
  const { fit, depth, units, skin } = job.recipe;
  const carrier = fit.plug === 'carrier';
  const steps = [
    'Check the scale of each drawing with its reference square (below) before making a toolpath.',
    `Set the machine’s zero at the datum of the drawing. Cut the pocket inside its lines, ${lengthText(depth, units)} deep, leaving ${lengthText(Math.max(0, job.recipe.stock.field - depth), units)} under it.`,
    carrier
      ? `The plug’s drawing is mirrored: cut it as drawn, outside its lines, ${lengthText(depth, units)} deep, and leave the carrier under it.`
      : 'Cut the plug outside its lines, right through its wood; hold each part so that it cannot come loose.',
    `Cut a test piece of both first: the clearance of ${lengthText(fit.clearance, units)} per side holds only if the cutter cuts the width given here.`,
    carrier
      ? 'Glue, turn the plug over and press it in face down, carrier up. When the glue is dry, saw off the carrier and plane flush.'
      : 'Glue and press the plug in as drawn. When the glue is dry, plane flush.',
    `To show the figure on both faces, plane, turn or saw the back down to the pocket’s floor or past it (skin ${lengthText(skin, units)}).`,
  ];
  return `<ol>${steps.map((s) => `<li>${s}</li>`).join('\n')}</ol>`;
}

/** What each file is and how to be sure that it came in at true scale. HTML text. */
export function fileList(job: Job): string {
  const { units } = job.recipe;
  const side = units === 'mm' ? '10 mm' : '1/2 in (0.5 in)';
  const border = bareLength(job.sheet.border, units);
  return [
    '<ul>',
    '<li><b>pocket.svg, pocket.dxf</b>: the pocket; <b>plug.svg, plug.dxf</b>: the plug. SVG and DXF say the same: use either.</li>',
    `<li>Both are in ${UNIT_WORD[units]}, true scale, lines and true arcs only. Cut paths are in the group or layer of that name; marks are not to be cut.</li>`,
    `<li>Datum: lower left corner of the box round the face, at ${border}, ${border} ${units} from the drawing’s lower left corner${job.pair.mirrored ? '; on the mirrored plug it is at the lower right' : ''}.</li>`,
    `<li>Scale: measure the reference square in your CAM program. It must be ${side} on each side. If it is not, set the import to ${UNIT_WORD[units]} and look again.</li>`,
    '<li><b>picture.svg, picture.png</b>: how the piece will look. <b>job.json</b>: every number, finding and proof.</li>',
    '</ul>',
    '<p>This sheet is written only after the drawings were read back and measured; see job.json for the proof.</p>',
  ].join('\n');
}

/**
 * Usual cautions. Wood dust: NIOSH, OSHA and ACGIH figures as on OSHA's wood dust evaluation page. HTML text.
 */
export function cautionList(): string {
  const cautions = [
    'Eyes and ears: wear protection for both whenever the machine runs.',
    'Dust: collect it at the cutter and wear a mask that fits. Limits over a shift: 1 mg/m³ recommended by NIOSH and, since 2007, ACGIH (0.5 for western red cedar); OSHA enforces 15 mg/m³ total and 5 mg/m³ respirable as nuisance dust (source: OSHA, wood dust evaluation). Some woods irritate skin and lungs. Wood dust burns: no sparks, clean up.',
    'Hold-down: fix the work so that nothing can shift or lift, small parts and the last of a cut above all. Clamps and screws clear of every path.',
    'Switch off and unplug before changing a cutter. Let the spindle stop by itself. Never exceed the speed marked on the cutter.',
    'Keep within what the makers of machine, cutter, press and glue allow: their instructions come before this sheet.',
    'Presses and clamps: hands clear while they close; never exceed the rated load.',
    'Do not leave a cutting machine alone. Know where its stop is.',
    'Follow local rules, and leave to licensed people what those rules leave to them, such as wiring.',
  ];
  return `<ul>${cautions.map((c) => `<li>${c}</li>`).join('\n')}</ul>`;
}

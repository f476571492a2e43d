import { SAW_KERF } from '../fit/coupon/board.js';
import { DOT_DEPTH } from '../fit/coupon/dots.js';
import { plugHeight } from '../recipe/recipe.js';
import type { Coupon } from './coupon.js';
import { bareLength, lengthText, UNIT_WORD } from './format.js';
import { grainText } from './sheet-grain.js';

/** How to cut, gauge and try a coupon. HTML. */
export function couponStepList({ job, steps, whole, edge }: Coupon): string {
  const { depth, fit, stock, units } = job.recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const carrier = fit.plug === 'carrier';
  const down = fit.face === 'down';
  const dots = len(DOT_DEPTH);
  const list = [
    'Use the woods, the cutter, the feeds and the passes of the piece itself: a coupon cut otherwise tells nothing. Check the scale with the reference square (below).',
    `Field: cut the pockets inside their lines, ${len(depth)} deep, and the dots (group or layer <b>dots</b>) ${dots} deep. ${len(edge)} of wood stay round each figure. Grain at ${grainText(job, 'field')}; plug's grain at ${grainText(job, 'plug')}.`,
    carrier
      ? `Plug, mirrored as drawn: clear round it ${len(plugHeight(job.recipe))} deep down to the carrier, then drill the dots ${dots} deeper, into the carrier: they number its steps.`
      : `Plug${down ? ', mirrored as drawn' : ''}: drill the dots ${dots} deep first; they stand in the waste beside each step, clear of the cut. Then cut the parts outside their lines, right through, and leave them lying in their waste.`,
    carrier
      ? `Saw field and plug apart between the steps, in the ${len(SAW_KERF)} left for the saw, before anything is pressed: a neighbour would stiffen the field, and its plug would press with it.`
      : `Saw the field apart between the steps, in the ${len(SAW_KERF)} left for the saw, before anything is pressed: a neighbour would stiffen it. Lift the plug's parts step by step and pencil the number in the drawing on ${down ? 'its upper side, which goes down' : 'its face'}: 2.3 is part 3 of step 2, and goes where the pocket's drawing has 2.3. Parts of two steps look alike and are not.`,
    'A slim cutter leans: pockets narrow towards the floor, plugs thicken towards the foot of their cut. Gauge every step with calipers: the pocket at its mouth and at its floor, the plug at its head and at its foot, and write it in the table. If mouth and floor differ by as much as two steps of the ladder do, take a second finishing pass first.',
    `Try each step dry, loosest (${steps.length}) first, and stop at the one that wants more than the load below. Then glue and press, ${stock.field - depth > 1e-6 ? 'on a flat block that supports the whole skin, ' : ''}slowly, with the glue and coat of the piece. Saw one through the middle when it is dry and look at the line.`,
    `Write down what happened: <b>inlaywright fit record RECIPE --step 3 --result good --tried dry</b>, a command a step, dry and glued; RECIPE is the file of ${whole.name}. <b>inlaywright fit next RECIPE</b> then says which clearance to use, or which to try next.`,
  ];
  return `<ol>${list.map((s) => `<li>${s}</li>`).join('\n')}</ol>`;
}

/** What each file is. HTML. */
export function couponFileList({ job }: Coupon): string {
  const { units } = job.recipe;
  const side = units === 'mm' ? '10 mm' : '1/2 in (0.5 in)';
  const border = bareLength(job.sheet.border, units);
  return [
    '<ul>',
    '<li><b>pocket.svg, pocket.dxf</b>: the pockets of all steps; <b>plug.svg, plug.dxf</b>: their plugs. SVG and DXF say the same: use either. Cut paths are in the group or layer of that name, the dots in <b>dots</b>; step outlines, numbers and marks are not to be cut.</li>',
    `<li>In ${UNIT_WORD[units]}, true scale. Datum: lower left corner of the box round the coupon, at ${border}, ${border} ${units} from the drawing’s lower left corner${job.pair.mirrored ? '; on the mirrored plug it is at the lower right' : ''}. The reference square must be ${side} on each side.</li>`,
    '<li><b>job.json</b>: every number, finding and proof, each step’s own among them. The files are written only after the drawings were read back and each step’s gap was measured.</li>',
    '</ul>',
  ].join('\n');
}

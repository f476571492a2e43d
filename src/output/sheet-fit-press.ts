import { glueSum } from '../inspect/sums/glue.js';
import { pressSum } from '../inspect/sums/press.js';
import { inwards, lengthText } from '../schema/units.js';
import type { Figure } from '../shop/figure.js';
import { strengthOf } from '../shop/strength.js';
import { areaText, decimal, type Units } from './format.js';
import type { Job } from './job.js';
import { type FitRow, UNKNOWN } from './sheet-fit-row.js';
import { loadText, pressureText, tonWord, volumeText } from './sheet-units.js';

export function glueRow({ recipe, pair }: Job): FitRow {
  const { fit, units } = recipe;
  const sum = glueSum(recipe, pair);
  const coat = lengthText(sum.coat, units);
  const volume = (mm3: number): string => volumeText(mm3, units);
  const gap = sum.worst?.gap;
  const least =
    gap === undefined
      ? ''
      : gap === null
        ? 'No glue gap takes up all of it in every part: coat the walls alone, or more thinly.'
        : `The glue gap that takes up all of it in every part: ${lengthText(inwards(gap, units, Math.ceil), units)}; here ${lengthText(fit.glueGap, units)}.`;
  return {
    name: 'Glue',
    says: [
      `To coat: ${areaText(sum.coated, units)}. Between the parts: ${volume(sum.volume)}. A coat of ${coat} is ${volume(sum.applied)}.`,
      ...(sum.open
        ? ['The pocket goes right through, so nothing is trapped.']
        : [
            `${volume(sum.surplus)} gathers under the plug; ${sum.squeezedOut > 0.5 ? `${volume(sum.squeezedOut)} has no room and must come out at the mouth` : 'there is room for it'}. Air shut in when the plug enters: ${volume(sum.airAtEntry)}.`,
            least,
          ]),
    ],
    how: `Estimate: area = length of the walls × depth + floor; volume = clearance × length × (depth − glue gap) + glue gap × floor; glue fills the walls first; nothing soaked up. Coat of ${coat} from memory (makers speak of 6 mil).`,
  };
}

export function pressRow({ recipe, outline, pair }: Job): FitRow {
  const sum = pressSum(recipe, outline, pair);
  const name = 'Press';
  if (!sum) return { name, says: ['Nothing to press.'], how: '' };
  const { press, units, woods } = recipe;
  const load = (newtons: number): string => loadText(newtons, recipe);
  const compression = strengthOf(woods.plug, woods.own)?.compression ?? null;
  const says = [
    sum.crush === null || sum.limit === null
      ? `Load at which the plug crushes: ${UNKNOWN} (${woods.plug}); press no harder than it takes.`
      : `The plug's wood gives way near ${load(sum.crush)}; stay under half, ${load(sum.limit)}.`,
    sum.pressure === null || sum.load === null
      ? 'No press is named in the recipe (press.tons).'
      : `A press of ${decimal(press!.tons, 2)} ${tonWord(press!.kind)} makes ${load(sum.load)} at most, ${pressureText(sum.pressure, units)} on the plug.`,
  ];
  return {
    name,
    says,
    how: `Estimate: load = compression perpendicular to the grain (${known(compression, units)}) × face of all plug parts, ${areaText(sum.area, units)}, evenly pressed; half of it as the limit is our own choice. Pressure = load / that area. Ton: 2,000 lbf (US), 1,000 kg × 9.80665 m/s² (metric).`,
  };
}

/** What holds for every press and every wood. */
export const pressingRow: FitRow = {
  name: 'Pressing',
  says: [
    'A straight plug pushed in puts no pressure on its side glue lines, so no clamping pressure is given for them. Trapped glue works as hydraulics: support the whole skin on a flat block and press slowly; the glue gap is the relief.',
  ],
  how: 'By reasoning; common practice, no source.',
};

export function wallRow({ recipe, outline, pair }: Job): FitRow {
  const sum = pressSum(recipe, outline, pair);
  const name = 'Thinnest wall';
  if (!sum?.wall) return { name, says: ['None between parts or to the edge.'], how: '' };
  const { units, woods } = recipe;
  const { wall } = sum;
  const where =
    wall.beside === 'edge' ? 'between the pocket and the edge' : 'between two parts of the pocket';
  const tension = strengthOf(woods.field, woods.own)?.tension ?? null;
  return {
    name,
    says: [
      `${lengthText(wall.thickness, units)} of field ${where}.`,
      sum.burst === null || sum.burstLoad === null
        ? `Pressure of shut-in glue that bursts it: ${UNKNOWN} (${woods.field}).`
        : `Shut-in glue may burst it from ${pressureText(sum.burst, units)}, which is ${loadText(sum.burstLoad, recipe)} on a plug that seals its pocket.`,
    ],
    how: `Estimate: bending, the lesser of 3 p (h/t)² and 0.75 p (l/t)² (height h, thickness t, length l; strength of materials, from memory), against tension perpendicular to the grain (${known(tension, units)}). The drawing gives t and l: nearest distance between parts, and how far it stays under 1.5 times that.`,
  };
}

function known(figure: Figure | null, units: Units): string {
  return figure ? `${pressureText(figure.value, units)}, ${figure.source}, ${figure.status}` : UNKNOWN;
}

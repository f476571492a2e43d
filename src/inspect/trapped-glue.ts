import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { glueSum } from './sums/glue.js';

/** A coat by brush is known to no better than a quarter: only what is wanting beyond that counts. Our own choice. */
const SPREAD = 1.25;

/** A glue gap too small for the glue that a blind pocket traps. */
export function trappedGlue({ recipe, pair }: Setup): Finding[] {
  const { fit, units } = recipe;
  const { worst, coat, open, squeezedOut } = glueSum(recipe, pair);
  if (open || !worst || (worst.gap !== null && worst.gap <= fit.glueGap * SPREAD + 1e-6)) return [];
  const text = (mm: number): string => lengthText(mm, units);
  const room =
    worst.gap === null
      ? 'no glue gap takes it up'
      : `a glue gap of ${text(inwards(worst.gap, units, Math.ceil))} takes it up`;
  return [
    {
      code: 'trapped-glue',
      severity: 'warn',
      where: worst.at,
      numbers: {
        glueGap: fit.glueGap,
        ...(worst.gap === null ? {} : { needed: worst.gap }),
        coat,
        squeezedOut,
      },
      do: `A coat of ${text(coat)} on walls and floor is more glue than the gaps of this part hold (estimate): it works as hydraulics under the plug. Coat the walls alone, or more thinly; ${room}.`,
    },
  ];
}

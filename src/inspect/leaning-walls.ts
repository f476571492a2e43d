import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { leanSum } from './sums/lean.js';

/** Walls that lean so much that nothing is left of the clearance. */
export function leaningWalls({ recipe }: Setup): Finding[] {
  const { cutter, fit, units } = recipe;
  // A clearance of nothing is the maker's own choice; there is nothing to eat.
  if (fit.clearance === 0) return [];
  const lean = leanSum(recipe);
  if (lean.least > 0) return [];
  const text = (mm: number): string => lengthText(mm, units);
  const wedge = lean.leans === 'wedge';
  return [
    {
      code: wedge ? 'leans-wedge' : 'leans-tight',
      severity: 'warn',
      where: null,
      numbers: { mouth: lean.mouth, foot: lean.foot, clearance: fit.clearance, force: lean.force },
      do:
        `The cutter (${text(cutter.diameter)}, flute ${text(cutter.flute)}) bends: pocket and plug thicken towards their feet by ${text(lean.pocket.foot)} and ${text(lean.plug.foot)} (estimate at ${lean.force} N), which eats the clearance of ${text(fit.clearance)}` +
        `${wedge ? ' and wedges the plug in' : ''}. ` +
        `Take a second finishing pass, a thicker or shorter cutter, or more clearance${wedge ? '; or fit the plug face down, where the leans nest' : ''}. Gauge the coupon at mouth and foot.`,
    },
  ];
}

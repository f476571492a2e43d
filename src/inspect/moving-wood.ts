import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { movementSum } from './sums/movement.js';

/**
 * Seasonal movement that closes, or opens, the gap by more than there is of it and than glued wood takes up. What merely
 * passes the clearance is on the sheet: parts of 100 mm in woods of different movement all do that, and hold.
 */
export function movingWood({ recipe, pair }: Setup): Finding[] {
  const sum = movementSum(recipe, pair);
  if (typeof sum === 'string') return [];
  const { fit, units, woods } = recipe;
  const text = (mm: number): string => lengthText(mm, units);
  const advice =
    woods.fieldGrain === woods.plugGrain
      ? 'Use smaller parts, woods that move alike, or keep the piece at an even moisture.'
      : 'Lay both grains the same way, or use smaller parts.';
  const out: Finding[] = [];
  const numbers = { closes: sum.closes, opens: sum.opens, clearance: fit.clearance };
  if (sum.tooTight)
    out.push({
      code: 'plug-swells',
      severity: 'warn',
      where: null,
      numbers,
      do: `At ${sum.closesAt} % moisture the gap wants to close by ${text(sum.closes)} per side (estimate), and there is ${text(fit.clearance)}: the plug would push the field apart. ${advice}`,
    });
  if (sum.tooWide)
    out.push({
      code: 'gap-opens',
      severity: 'warn',
      where: null,
      numbers,
      do: `At ${sum.opensAt} % moisture the gap wants to open by ${text(sum.opens)} per side (estimate), more than the clearance of ${text(fit.clearance)}: the glue line may tear and show. ${advice}`,
    });
  return out;
}

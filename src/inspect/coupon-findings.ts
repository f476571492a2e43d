import type { SpotPlan, StepPlan } from '../fit/coupon/plan.js';
import type { SpotKind } from '../fit/coupon/spot.js';
import type { Units } from '../schema/units.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';

/** What each kind of hard spot is called. */
export const SPOT_WORDS: Readonly<Record<SpotKind, string>> = {
  'pocket-corner': 'tightest inside corner of the pocket',
  'plug-corner': 'tightest inside corner of the plug',
  wall: 'thinnest wall of field',
  limb: 'thinnest limb of plug',
  run: 'longest straight run',
};

/** In what a coupon differs from the piece it stands for. `woods`: how many plug woods the piece has. */
export function couponFindings(plan: StepPlan, woods: number, units: Units): Finding[] {
  const text = (mm: number): string => lengthText(mm, units);
  const out: Finding[] = plan.spots
    .filter((s) => !s.kept)
    .map((s) => ({
      code: 'spot-changed',
      severity: 'warn',
      where: null,
      numbers: { size: s.spot.size },
      do: `The ${SPOT_WORDS[s.spot.kind]} could not be taken over just as it is: what is cut off beside it rounds it further. Look at it on the piece as well.`,
    }));
  if (plan.harder)
    out.push({
      code: 'coupon-harder',
      severity: 'warn',
      where: null,
      numbers: {},
      do: 'Where the windows cut the pattern off, a wall or limb of the coupon is thinner than any of the piece: if that one cracks, the piece need not.',
    });
  const run = plan.spots.find(shortened);
  if (run)
    out.push({
      code: 'run-shortened',
      severity: 'note',
      where: null,
      numbers: { held: run.held!, longest: run.spot.size },
      do: `The longest straight run is ${text(run.spot.size)}; the coupon holds ${text(run.held!)} of it. For more ask for a larger --size.`,
    });
  if (woods > 1)
    out.push({
      code: 'first-wood-only',
      severity: 'note',
      where: null,
      numbers: { woods },
      do: `The piece has ${woods} plug woods; this coupon is for the first. Woods differ in how they fit: cut one of each, with woods.plug set to it and woods.plugs left out.`,
    });
  return out;
}

/** Is only a stretch of the run held? */
export function shortened({ spot, held }: SpotPlan): boolean {
  return held !== null && held < spot.size - 0.05;
}

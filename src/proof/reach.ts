import type { Drawing } from './drawing.js';
import { Search } from './search.js';

export { PRESS } from './press.js';

export interface Reach {
  /** mm. When `capped`, the reach is at least this. */
  readonly reach: number;
  /** A point of the boundary where it is taken on, mm, y up; null when capped. */
  readonly at: readonly [number, number] | null;
  readonly capped: boolean;
}

/**
 * The reach of a drawing's boundary seen from inside or outside its region: the largest rho for which every ball
 * of radius rho that rolls along that side, its centre p + rho n, stays rho - 0.0005 mm or more from the boundary.
 *
 * For a pair p, q with d = q - p and t = 0.0005 this says rho <= (d.d - t t) / (2 (d.n - t)) wherever d.n > t; so
 * each pair of edges sets one upper bound and the reach is the least of them. Centres over a straight edge lie on a
 * parallel segment, over an arc on a concentric arc, about a corner on an arc of radius rho. Whether a pair allows
 * a given rho is then the distance of two pieces, in closed form, and only a pair that does not allow the least
 * bound so far is bisected (error 1e-7 mm, from below).
 *
 * Only pairs near each other that can set a bound are looked at (see facing-pairs.ts), so the work grows with the cap:
 * `cap` (mm) stops there, and larger reaches are reported as the cap. Those pairs may give up to 1e-6 mm more than all would.
 * Without a cap every pair is looked at, for balls that start at the mean spacing of edges and grow fourfold up to the
 * drawing's diagonal, beyond which a reach is called capped too. An empty drawing has reach 0.
 */
export function reach(drawing: Drawing, side: 'inside' | 'outside', cap = Infinity): Reach {
  const index = drawing.index;
  if (index.tree === null) return { reach: 0, at: null, capped: false };
  const search = new Search(drawing, side, cap < Infinity ? cap : index.diagonal);
  if (cap < Infinity) search.belowCap(cap);
  else {
    search.curvature();
    let rho = index.diagonal / Math.sqrt(drawing.edges.count + 1);
    while (!search.below(rho)) rho *= 4;
  }
  return { reach: search.bound, at: search.place(), capped: search.capped };
}

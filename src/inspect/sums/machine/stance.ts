import { hull } from '../../../geometry/hull.js';
import { type Contour, flatten } from '../../../geometry/region.js';

type Point = readonly [number, number];

/** How far chords stray from arcs, mm: the width comes out at most twice that too small. */
const CHORD = 0.01;

/**
 * How wide a part stands, mm: the least distance between two parallel lines that hold its foot between them. It is the
 * least width of the convex hull, which lies square to one of the hull's sides (Houle and Toussaint 1988, from memory).
 * A ring or lattice of slender limbs stands as wide as it is over all.
 */
export function stance(outer: Contour): number {
  const round = hull(flatten(outer, CHORD));
  let least = Number.POSITIVE_INFINITY;
  round.forEach((p, i) => {
    const q = round[(i + 1) % round.length]!;
    const side = Math.sqrt((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]));
    let far = 0;
    for (const r of round) far = Math.max(far, turn(p, q, r) / side);
    least = Math.min(least, far);
  });
  return Number.isFinite(least) ? least : 0;
}

/** Twice the area of a triangle, positive when it turns left. */
function turn(p: Point, q: Point, r: Point): number {
  return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
}

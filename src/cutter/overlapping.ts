import { crossings, cutsAlong } from '../geometry/crossings.js';
import { type Edge, line, parameterEnd, pointAt, tangentAt } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import type { Indexed } from '../geometry/near.js';
import { distanceToEdge, windingNumber } from '../geometry/region.js';

const NONE: readonly number[] = [];

/** Positions of the bodies whose boxes come within a distance of each one's, itself not among them, in rising order. */
export function neighboursOf(bodies: readonly Indexed[], distance: number): (readonly number[])[] {
  // A box stands in the index as its diagonal.
  const index = new EdgesIndex(bodies.map(({ box }) => line(box.minX, box.minY, box.maxX, box.maxY)));
  return bodies.map((_, i) => {
    const near = index.nearEdge(i, distance);
    return near.length < 2 ? NONE : near.filter((j) => j !== i);
  });
}

/** Pairs of bodies that lie on or in one another: that share more than their boundaries. */
export function overlapping(bodies: readonly Indexed[]): [number, number][] {
  const neighbours = neighboursOf(bodies, 0);
  return neighbours.flatMap((near, i) =>
    near
      .filter((j) => j > i && (reachesInto(bodies[i]!, bodies[j]!) || reachesInto(bodies[j]!, bodies[i]!)))
      .map((j): [number, number] => [i, j]),
  );
}

/** Just inside a boundary, mm: what is there of one piece is there of another that covers it, and not of one that touches. */
const WITHIN = 1e-4;

/** Whether some stretch of a's boundary, with what lies just within it, is inside b. */
function reachesInto(a: Indexed, b: Indexed): boolean {
  let i = 0;
  for (const c of a.region.contours) {
    // An edge that is clear of b's boundary lies on one side of it, and so do clear ones that go on from it.
    let outside = false;
    for (const e of c) {
      const id = i++;
      if (!a.index.isNear(id, b.box, 0)) {
        outside = true;
        continue;
      }
      const near = b.index.nearEdge(id, 2 * WITHIN, a.index);
      if (near.length > 0) {
        if (stretchWithin(e, near, b)) return true;
        outside = false;
      } else if (!outside) {
        if (windingNumber(b.region.contours, e.x0, e.y0) > 0) return true;
        outside = true;
      }
    }
  }
  return false;
}

/** Whether b holds some stretch of an edge, cut where `near` edges of b cross it. */
function stretchWithin(e: Edge, near: readonly number[], b: Indexed): boolean {
  const points: number[] = [];
  for (const k of near) crossings(e, b.edges[k]!, (x, y) => points.push(x, y));
  const ends = [0, ...cutsAlong(e, points).map((cut) => cut.t), parameterEnd(e)];
  for (let k = 0; k + 1 < ends.length; k++) {
    const [x, y] = pointAt(e, (ends[k]! + ends[k + 1]!) / 2);
    const [tx, ty] = tangentAt(e, x, y);
    const [px, py] = [x - ty * WITHIN, y + tx * WITHIN];
    if (windingNumber(b.region.contours, px, py) <= 0) continue;
    if (b.edges.every((f) => distanceToEdge(f, px, py) > WITHIN / 2)) return true;
  }
  return false;
}

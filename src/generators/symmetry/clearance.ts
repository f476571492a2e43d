import { crossings } from '../../geometry/crossings.js';
import type { Edge } from '../../geometry/edge.js';
import { nearestPoints } from '../../geometry/nearest.js';
import { type Box, bounds, edgeBox, type Region, windingNumber } from '../../geometry/region.js';

/** Are two regions at least `gap` mm apart? Not if they touch or one holds the other, whatever the gap. */
export function apart(a: Region, b: Region, gap: number): boolean {
  const p = bounds(a.contours);
  const q = bounds(b.contours);
  if (between(p, q) > gap) return true;
  const near = (region: Region, to: Box): [Edge, Box][] =>
    region.contours
      .flat()
      .map((e): [Edge, Box] => [e, edgeBox(e)])
      .filter(([, box]) => between(box, to) <= gap);
  const second = near(b, p);
  for (const [e, box] of near(a, q))
    for (const [f, other] of second) if (between(box, other) <= gap && !edgesApart(e, f, gap)) return false;
  return !holds(a, b) && !holds(b, a);
}

/** Distance between two boxes, mm. */
function between(p: Box, q: Box): number {
  const dx = Math.max(p.minX - q.maxX, q.minX - p.maxX, 0);
  const dy = Math.max(p.minY - q.maxY, q.minY - p.maxY, 0);
  return Math.sqrt(dx * dx + dy * dy);
}

function edgesApart(e: Edge, f: Edge, gap: number): boolean {
  let met = false;
  crossings(e, f, () => {
    met = true;
  });
  return !met && nearestPoints([e], [f])!.distance >= gap;
}

/** Does the first region hold a contour of the second? */
function holds(a: Region, b: Region): boolean {
  return b.contours.some((c) => windingNumber(a.contours, c[0]!.x0, c[0]!.y0) !== 0);
}

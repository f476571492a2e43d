import Flatbush from 'flatbush';
import { edgeLength, parameterEnd, pointAt } from '../../src/geometry/edge.js';
import { type Contour, contains, distanceToEdge, edgeBox, type Region } from '../../src/geometry/region.js';
import { boundaryDistance } from './reference.js';
import { ringsOf } from './rings.js';

/** The largest distance of two boundaries, both ways, on chords that stray by 0.1 micron, mm; infinite if only one is empty. */
export function stray(a: readonly Contour[], b: readonly Contour[]): number {
  return boundaryDistance(ringsOf(a, 0.0001), ringsOf(b, 0.0001), 0.2).distance;
}

/** How far the boundary of a region strays outside another, mm; 0 where that is less than 1e-6. */
export function outside(a: Region, b: Region): number {
  const toB = meter(b);
  let worst = 0;
  for (const [x, y] of samples(a)) {
    const d = toB(x, y);
    if (d > Math.max(1e-6, worst) && !contains(b, x, y)) worst = d;
  }
  return worst;
}

/** How much the distance of one boundary from another differs from a clearance at most, mm. */
export function gapOff(a: Region, b: Region, clearance: number): number {
  const toB = meter(b);
  let worst = 0;
  for (const [x, y] of samples(a)) worst = Math.max(worst, Math.abs(toB(x, y) - clearance));
  return worst;
}

/** The exact distance of a point from a boundary, over a tree of the edges' boxes. */
function meter({ contours }: Region): (x: number, y: number) => number {
  const edges = contours.flat();
  if (edges.length === 0) return () => Number.POSITIVE_INFINITY;
  const tree = new Flatbush(edges.length);
  for (const e of edges) {
    const box = edgeBox(e);
    tree.add(box.minX, box.minY, box.maxX, box.maxY);
  }
  tree.finish();
  return (x, y) => {
    for (let reach = 0.25; ; reach *= 4) {
      let best = Number.POSITIVE_INFINITY;
      for (const i of tree.search(x - reach, y - reach, x + reach, y + reach))
        best = Math.min(best, distanceToEdge(edges[i]!, x, y));
      // What is nearer than the reach has its box in the square.
      if (best <= reach) return best;
    }
  };
}

/** Points of a boundary: every edge's start and points along it, half a millimetre apart or so, two an edge at least. */
function* samples({ contours }: Region): Generator<[number, number]> {
  for (const c of contours)
    for (const e of c) {
      const n = Math.min(40, Math.max(2, Math.ceil(2 * edgeLength(e))));
      for (let k = 0; k < n; k++) yield pointAt(e, (parameterEnd(e) * k) / n);
    }
}

import type { Piece } from '../../../geometry/artwork.js';
import { edgeLength, midpoint } from '../../../geometry/edge.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { type Contour, distanceToEdge, parts, type Region } from '../../../geometry/region.js';
import type { Stretch } from './chain.js';

/** How far from where it was drawn a boundary may come out, mm. */
const NEAR = 1e-3;

/** Each connected part of a region as a piece, named after what drew the longest edge of its outer contour. */
export function piecesOf(region: Region, loops: readonly (readonly Stretch[])[]): Piece[] {
  const drawn = loops.flat();
  const index = new EdgesIndex(drawn.map((s) => s.edge));
  const count = new Map<string, number>();
  return parts(region).map((contours) => {
    const name = nameOf(contours[0]!, drawn, index);
    const n = (count.get(name) ?? 0) + 1;
    count.set(name, n);
    return { name: n === 1 ? name : `${name}, part ${n}`, region: { contours } };
  });
}

function nameOf(outer: Contour, drawn: readonly Stretch[], index: EdgesIndex): string {
  const longest = outer.reduce((best, e) => (edgeLength(e) > edgeLength(best) ? e : best));
  const [x, y] = midpoint(longest);
  let name = 'figure';
  let least = Number.POSITIVE_INFINITY;
  for (const i of index.near({ minX: x, minY: y, maxX: x, maxY: y }, NEAR)) {
    const d = distanceToEdge(drawn[i]!.edge, x, y);
    if (d < least) [name, least] = [drawn[i]!.origin.piece, d];
  }
  return name;
}

import { distance } from '../inset.js';
import { middleOf, type Point } from '../tile.js';

/** Where a tile touches its neighbours, one point on every edge. Neighbours must agree on them. */
export type Contacts = (tile: readonly Point[]) => Point[];

/** The middles of the edges. */
export const middles: Contacts = (tile) => tile.map((p, i) => middleOf([p, tile[(i + 1) % tile.length]!]));

/** Where the edges touch the circle within the tile, for tiles that have one: those of a dual of a uniform tiling. */
export const touches: Contacts = (tile) => {
  const [cx, cy] = incentre(tile);
  return tile.map((p, i): Point => {
    const q = tile[(i + 1) % tile.length]!;
    const dx = q[0] - p[0];
    const dy = q[1] - p[1];
    const t = ((cx - p[0]) * dx + (cy - p[1]) * dy) / (dx * dx + dy * dy);
    return [p[0] + dx * t, p[1] + dy * t];
  });
};

/** The middle of the circle that touches every edge: where the bisectors at the first two corners meet. */
function incentre(tile: readonly Point[]): Point {
  const n = tile.length;
  const [o, p, q, r] = [tile[n - 1]!, tile[0]!, tile[1]!, tile[2 % n]!];
  const u = bisector(o, p, q);
  const v = bisector(p, q, r);
  const t = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / (u[0] * v[1] - u[1] * v[0]);
  return [p[0] + u[0] * t, p[1] + u[1] * t];
}

/** A direction that halves the angle at q between p and r. */
function bisector(p: Point, q: Point, r: Point): Point {
  const a = distance(q, p);
  const b = distance(q, r);
  return [(p[0] - q[0]) / a + (r[0] - q[0]) / b, (p[1] - q[1]) / a + (r[1] - q[1]) / b];
}

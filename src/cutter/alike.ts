import type { Edge } from '../geometry/edge.js';
import type { Contour } from '../geometry/region.js';
import { placedRegion } from '../geometry/transform.js';
import type { Change } from './safe.js';

/** Shapes whose sizes agree to this, mm, are one: far under every tolerance. */
const SAME = 1e-9;

/** Parts of a millimetre that sizes are told apart by at first. */
const ROUGH = 1e4;

/** What the pass made of a piece. */
interface Made {
  readonly of: readonly Contour[];
  readonly contours: readonly Contour[];
  readonly changes: readonly Change[];
}

/**
 * Does slow work on pieces once for all that are alike but for their place, as the letters of a text and the tiles of a
 * tiling are. `work` appends to the changes it is given.
 */
export function oncePerShape(
  work: (name: string, contours: readonly Contour[], changes: Change[]) => readonly Contour[],
): typeof work {
  const known = new Map<number, Made[]>();
  return (name, contours, changes) => {
    const first = contours[0]?.[0];
    if (!first) return work(name, contours, changes);
    const key = hashOf(contours);
    let alike = known.get(key);
    if (!alike) {
      alike = [];
      known.set(key, alike);
    }
    let made = alike.find((m) => sameShape(m.of, contours));
    if (!made) {
      const own: Change[] = [];
      made = { of: contours, contours: work(name, contours, own), changes: own };
      alike.push(made);
    }
    const [dx, dy] = [first.x0 - made.of[0]![0]!.x0, first.y0 - made.of[0]![0]!.y0];
    for (const c of made.changes) changes.push({ ...c, piece: name, at: [c.at[0] + dx, c.at[1] + dy] });
    return dx === 0 && dy === 0 ? made.contours : placedRegion({ contours: made.contours }, dx, dy).contours;
  };
}

/** One number for all pieces of a shape; few others share it. Sizes are taken so roughly that rounding seldom parts them. */
function hashOf(contours: readonly Contour[]): number {
  let hash = contours.length;
  for (const c of contours) {
    const { x0, y0 } = c[0]!;
    const { x0: x1, y0: y1, r } = c[c.length >> 1]!;
    hash = Math.imul(hash, 31) + c.length;
    hash = Math.imul(hash, 31) + Math.round((x1 - x0) * ROUGH);
    hash = Math.imul(hash, 31) + Math.round((y1 - y0) * ROUGH);
    hash = Math.imul(hash, 31) + Math.round(r * ROUGH);
  }
  return hash;
}

function sameShape(a: readonly Contour[], b: readonly Contour[]): boolean {
  if (a.length !== b.length) return false;
  const [p, q] = [a[0]![0]!, b[0]![0]!];
  const dx = q.x0 - p.x0;
  const dy = q.y0 - p.y0;
  return a.every((c, k) => c.length === b[k]!.length && c.every((e, i) => sameEdge(e, b[k]![i]!, dx, dy)));
}

/** Arcs of one radius between the same ends go one of two ways about. */
function sameEdge(e: Edge, f: Edge, dx: number, dy: number): boolean {
  return (
    near(f.x0 - e.x0, dx) &&
    near(f.y0 - e.y0, dy) &&
    near(f.r, e.r) &&
    (e.r === 0 || (near(f.cx - e.cx, dx) && near(f.cy - e.cy, dy)))
  );
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < SAME;
}

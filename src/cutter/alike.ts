import type { Contour } from '../geometry/region.js';
import { placedRegion } from '../geometry/transform.js';
import type { Change } from './safe.js';

/** Shapes whose sizes agree to this many parts of a millimetre are one: far under every tolerance. */
const PARTS_PER_MM = 1e9;

/** What the pass made of a piece. */
interface Made {
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
  const known = new Map<string, Made & { readonly x: number; readonly y: number }>();
  return (name, contours, changes) => {
    const first = contours[0]?.[0];
    if (!first) return work(name, contours, changes);
    const { x0: x, y0: y } = first;
    const key = shapeOf(contours, x, y);
    let made = known.get(key);
    if (!made) {
      const own: Change[] = [];
      made = { contours: work(name, contours, own), changes: own, x, y };
      known.set(key, made);
    }
    const [dx, dy] = [x - made.x, y - made.y];
    for (const c of made.changes) changes.push({ ...c, piece: name, at: [c.at[0] + dx, c.at[1] + dy] });
    return dx === 0 && dy === 0 ? made.contours : placedRegion({ contours: made.contours }, dx, dy).contours;
  };
}

function shapeOf(contours: readonly Contour[], x: number, y: number): string {
  const sizes: number[] = [];
  const put = (v: number): number => sizes.push(Math.round(v * PARTS_PER_MM));
  for (const c of contours) {
    sizes.push(c.length);
    for (const e of c) {
      put(e.x0 - x);
      put(e.y0 - y);
      put(e.r);
      // Arcs of one radius between the same ends go one of two ways about.
      if (e.r !== 0) {
        put(e.cx - x);
        put(e.cy - y);
      }
    }
  }
  return sizes.join();
}

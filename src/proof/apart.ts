import Flatbush from 'flatbush';
import { pieceToPiece2 } from './distance.js';
import type { Drawing } from './drawing.js';
import { STRIDE } from './edge-index.js';
import { boxOf } from './pieces.js';

/** The least distance between any two of the drawings, mm, as far as it is under `range`; else `range`. */
export function apart(
  drawings: readonly Drawing[],
  range: number,
): { least: number; pair: [number, number] } {
  let least2 = range * range;
  let pair: [number, number] = [0, 0];
  if (drawings.length > 1) {
    const tree = new Flatbush(drawings.length);
    for (const d of drawings) tree.add(...boxOf(d));
    tree.finish();
    drawings.forEach((d, i) => {
      const [x0, y0, x1, y1] = boxOf(d);
      for (const j of tree.search(x0 - range, y0 - range, x1 + range, y1 + range)) {
        if (j <= i) continue;
        const d2 = between2(d, drawings[j]!, least2);
        if (d2 < least2) {
          least2 = d2;
          pair = [i, j];
        }
      }
    });
  }
  return { least: Math.sqrt(least2), pair };
}

/** Squared least distance of two boundaries as far as it is under `top2`. */
function between2(a: Drawing, b: Drawing, top2: number): number {
  let least2 = top2;
  const { boxes, pieces } = a.index;
  const q = b.index;
  for (let i = 0; i < a.edges.count; i++) {
    const r = Math.sqrt(least2);
    const k = 4 * i;
    for (const block of q.tree!.search(
      boxes[k]! - r,
      boxes[k + 1]! - r,
      boxes[k + 2]! + r,
      boxes[k + 3]! + r,
    )) {
      for (let j = q.blocks[block]!; j < q.blocks[block + 1]!; j++) {
        const d = pieceToPiece2(pieces, i * STRIDE, q.pieces, j * STRIDE, 0);
        if (d < least2) least2 = d;
      }
    }
  }
  return least2;
}

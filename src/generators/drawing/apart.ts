import Flatbush from 'flatbush';
import type { Box } from '../../geometry/region.js';

/** Boxes nearer than this, mm, may hold shapes that touch. */
const NEAR = 0.01;

/** Does no box come near another? Then what they hold cannot meet. */
export function allApart(boxes: readonly Box[]): boolean {
  if (boxes.length < 2) return true;
  const index = new Flatbush(boxes.length);
  for (const { minX, minY, maxX, maxY } of boxes) index.add(minX, minY, maxX, maxY);
  index.finish();
  return boxes.every((box, k) => {
    let met = false;
    // Nothing is listed: only whether another was met.
    index.search(box.minX - NEAR, box.minY - NEAR, box.maxX + NEAR, box.maxY + NEAR, (other) => {
      met ||= other !== k;
      return false;
    });
    return !met;
  });
}

import type { Box } from '../geometry/region.js';

/** The middle of a box: where a message about what is in it points. */
export function middleOf(b: Box): [number, number] {
  return [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
}

/** The longer side of a box, mm. */
export function extentOf(b: Box): number {
  return Math.max(b.maxX - b.minX, b.maxY - b.minY);
}

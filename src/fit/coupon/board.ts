import type { Box } from '../../geometry/region.js';

/** Room left between two steps for the saw that parts them, mm: a table saw's blade cuts some 3 mm (common practice, no source). */
export const SAW_KERF = 3;

/** Of layouts that take up to this many times the least wood, the least long one is taken: it lies better on a small machine. */
const AS_LITTLE = 1.05;

/** The wood of each step, first to last as one reads, and the box round all of them; middle at (0, 0). mm. */
export interface Board {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly Box[];
}

/** Steps of one size side by side in rows, with room for the saw: hardly more than the least wood, and not long. */
export function boardOf(count: number, width: number, height: number): Board {
  const ways = Array.from({ length: count }, (_, k) => {
    const columns = k + 1;
    return { columns, w: span(columns, width), h: span(Math.ceil(count / columns), height) };
  });
  const least = Math.min(...ways.map(({ w, h }) => w * h));
  const best = ways
    .filter(({ w, h }) => w * h <= AS_LITTLE * least)
    .reduce((a, b) => (Math.max(b.w, b.h) < Math.max(a.w, a.h) - 1e-9 ? b : a));
  const { columns, w, h } = best;
  const boxes = Array.from({ length: count }, (_, k): Box => {
    const minX = -w / 2 + (k % columns) * (width + SAW_KERF);
    const maxY = h / 2 - Math.floor(k / columns) * (height + SAW_KERF);
    return { minX, maxX: minX + width, minY: maxY - height, maxY };
  });
  return { width: w, height: h, boxes };
}

function span(count: number, size: number): number {
  return count * size + (count - 1) * SAW_KERF;
}

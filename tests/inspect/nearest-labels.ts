import type { Contour } from '../../src/geometry/region.js';

/**
 * The least distance between any two of some shapes, mm, found without any geometry of ours but polygons: each shape is
 * filled on a grid, its exact distance transform made (Felzenszwalb and Huttenlocher 2012), and the sum of the two least
 * transforms of a point between the shapes is least where they are nearest. Good to about a grid step and a half.
 */
export function leastDistance(shapes: readonly Inside[], half: number, step: number): number {
  const n = Math.round((2 * half) / step);
  const maps = shapes.map((inside) => {
    const grid = new Float64Array(n * n);
    for (let j = 0; j < n; j++)
      for (let i = 0; i < n; i++)
        grid[j * n + i] = inside(-half + (i + 0.5) * step, -half + (j + 0.5) * step) ? 0 : 1e12;
    return transformed(grid, n);
  });
  let best = Number.POSITIVE_INFINITY;
  for (let k = 0; k < n * n; k++) {
    let first = Number.POSITIVE_INFINITY;
    let second = Number.POSITIVE_INFINITY;
    for (const map of maps) {
      const d = map[k]!;
      if (d < first) [first, second] = [d, first];
      else if (d < second) second = d;
    }
    if (first > 0) best = Math.min(best, Math.sqrt(first) + Math.sqrt(second));
  }
  // From the middle of a shape's last cell to the middle of the other's first: half a step too far at either end.
  return (best - 1) * step;
}

export type Inside = (x: number, y: number) => boolean;

/** Even-odd test of a polygon. */
export function insidePolygon(c: Contour): Inside {
  return (x, y) => {
    let odd = false;
    for (const { x0, y0, x1, y1 } of c)
      if (y0 > y !== y1 > y && x < ((x1 - x0) * (y - y0)) / (y1 - y0) + x0) odd = !odd;
    return odd;
  };
}

/** Squared distances in cells to the nearest zero: the lower envelope of parabolas, along columns, then rows. */
function transformed(grid: Float64Array, n: number): Float64Array {
  const f = new Float64Array(n);
  const v = new Int32Array(n);
  const z = new Float64Array(n + 1);
  const line = (start: number, stride: number): void => {
    for (let q = 0; q < n; q++) f[q] = grid[start + q * stride]!;
    let k = 0;
    v[0] = 0;
    z[0] = -1e20;
    z[1] = 1e20;
    for (let q = 1; q < n; q++) {
      let s = 0;
      for (; ; k--) {
        const p = v[k]!;
        s = (f[q]! + q * q - (f[p]! + p * p)) / (2 * q - 2 * p);
        if (s > z[k]!) break;
      }
      k++;
      v[k] = q;
      z[k] = s;
      z[k + 1] = 1e20;
    }
    k = 0;
    for (let q = 0; q < n; q++) {
      while (z[k + 1]! < q) k++;
      const p = v[k]!;
      grid[start + q * stride] = (q - p) * (q - p) + f[p]!;
    }
  };
  for (let i = 0; i < n; i++) line(i, n);
  for (let j = 0; j < n; j++) line(j * n, 1);
  return grid;
}

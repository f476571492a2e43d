import { type Contour, circle, polygon, type Region, reversedContour } from '../../../src/geometry/region.js';

/** A rectangle with arcs of radius r in its corners, counter-clockwise, lower left corner of its box at (x, y). */
export function slab(x: number, y: number, w: number, h: number, r: number): Contour {
  const line = (x0: number, y0: number, x1: number, y1: number) => ({ x0, y0, x1, y1, cx: 0, cy: 0, r: 0 });
  const arc = (x0: number, y0: number, x1: number, y1: number, cx: number, cy: number) => ({
    x0,
    y0,
    x1,
    y1,
    cx,
    cy,
    r,
  });
  return [
    line(x + r, y, x + w - r, y),
    arc(x + w - r, y, x + w, y + r, x + w - r, y + r),
    line(x + w, y + r, x + w, y + h - r),
    arc(x + w, y + h - r, x + w - r, y + h, x + w - r, y + h - r),
    line(x + w - r, y + h, x + r, y + h),
    arc(x + r, y + h, x, y + h - r, x + r, y + h - r),
    line(x, y + h - r, x, y + r),
    arc(x, y + r, x + r, y, x + r, y + r),
  ];
}

/** A convex polygon, counter-clockwise, grown by 2 mm: its sides moved out, an arc of 2 mm about each corner. */
export function puffed(points: readonly (readonly [number, number])[]): Contour {
  const n = points.length;
  const out = (i: number): [number, number] => {
    const [x, y] = points[i % n]!;
    const [u, v] = points[(i + 1) % n]!;
    const l = Math.sqrt((u - x) * (u - x) + (v - y) * (v - y));
    return [(2 * (v - y)) / l, (2 * (x - u)) / l];
  };
  return points.flatMap(([x, y], i) => {
    const [u, v] = points[(i + 1) % n]!;
    const [nx, ny] = out(i);
    const [mx, my] = out(i + 1);
    return [
      { x0: x + nx, y0: y + ny, x1: u + nx, y1: v + ny, cx: 0, cy: 0, r: 0 },
      { x0: u + nx, y0: v + ny, x1: u + mx, y1: v + my, cx: u, cy: v, r: 2 },
    ];
  });
}

export function hole(c: Contour): Contour {
  return reversedContour(c);
}

export { circle, polygon, type Region };

import { line } from '../../geometry/edge.js';
import type { Box, Region } from '../../geometry/region.js';

/** Boxes, mm: the windows that a coupon is cut from. */

export function grown(b: Box, by: number): Box {
  return { minX: b.minX - by, minY: b.minY - by, maxX: b.maxX + by, maxY: b.maxY + by };
}

export function joined(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

export function boxOf(points: readonly (readonly [number, number])[]): Box {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

export function within(b: Box, x: number, y: number): boolean {
  return x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;
}

/** Is a within b? */
export function inside(a: Box, b: Box): boolean {
  return a.minX >= b.minX && a.maxX <= b.maxX && a.minY >= b.minY && a.maxY <= b.maxY;
}

export function overlap(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

/** The box as a region: one contour, counter-clockwise. */
export function boxRegion({ minX, minY, maxX, maxY }: Box): Region {
  return {
    contours: [
      [
        line(minX, minY, maxX, minY),
        line(maxX, minY, maxX, maxY),
        line(maxX, maxY, minX, maxY),
        line(minX, maxY, minX, minY),
      ],
    ],
  };
}

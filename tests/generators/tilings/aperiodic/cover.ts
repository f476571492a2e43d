import { expect } from 'vitest';
import type { LaidTile } from '../../../../src/generators/tilings/tile.js';
import { intersect, union } from '../../../../src/geometry/boolean.js';
import { area, circle, polygon } from '../../../../src/geometry/region.js';

/** The tiles cover the disc about (0, 0) once: areas add up to the disc's, and so does the area of their union. */
export function expectCovered(tiles: readonly LaidTile[], radius: number): void {
  const disc = { contours: [circle(0, 0, radius)] };
  const shares = tiles.map((t) => intersect({ contours: [polygon(t.points)] }, disc));
  const full = Math.PI * radius * radius;
  expect(shares.reduce((sum, s) => sum + area(s), 0) / full).toBeCloseTo(1, 8);
  expect(area(union(shares)) / full).toBeCloseTo(1, 8);
}

/** Interior angles of a counter-clockwise polygon, degrees. */
export function angles(points: LaidTile['points']): number[] {
  return points.map((p, i) => {
    const q = points[(i + points.length - 1) % points.length];
    const r = points[(i + 1) % points.length];
    const [ax, ay, bx, by] = [r[0] - p[0], r[1] - p[1], q[0] - p[0], q[1] - p[1]];
    const a = (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI;
    return a < 0 ? a + 360 : a;
  });
}

export function sides(points: LaidTile['points']): number[] {
  return points.map((p, i) => {
    const q = points[(i + 1) % points.length];
    return Math.hypot(q[0] - p[0], q[1] - p[1]);
  });
}

export function box(half: number): { minX: number; minY: number; maxX: number; maxY: number } {
  return { minX: -half, minY: -half, maxX: half, maxY: half };
}

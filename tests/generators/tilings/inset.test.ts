import { describe, expect, it } from 'vitest';
import { depth, insetTile } from '../../../src/generators/tilings/inset.js';
import type { Point } from '../../../src/generators/tilings/tile.js';
import { area } from '../../../src/geometry/region.js';
import { expectSound } from '../../support/artwork.js';

const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const ell: Point[] = [
  [0, 0],
  [20, 0],
  [20, 8],
  [8, 8],
  [8, 20],
  [0, 20],
];

describe('a tile moved in', () => {
  it('keeps sharp corners, those that turn in too', () => {
    const { contours } = insetTile(ell, 2);
    expect(contours).toHaveLength(1);
    expect(contours[0].map((e) => [e.x0, e.y0])).toEqual([
      [2, 2],
      [18, 2],
      [18, 6],
      [6, 6],
      [6, 18],
      [2, 18],
    ]);
    expect(insetTile(square, 0).contours[0]).toHaveLength(4);
  });

  it('is fine with corners in line', () => {
    const points: Point[] = [
      [0, 0],
      [4, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    expect(area(insetTile(points, 1))).toBeCloseTo(64, 12);
  });

  it('loses sides that vanish and keeps what is left', () => {
    // A square of 10 with its corner cut by a side of sqrt 2: at 2 mm in, that side would be shorter than nothing.
    const points: Point[] = [
      [0, 0],
      [10, 0],
      [10, 9],
      [9, 10],
      [0, 10],
    ];
    const left = insetTile(points, 3);
    expect(area(left)).toBeCloseTo(16, 9);
    expect(left.contours[0]).toHaveLength(4);
  });

  it('may fall in two, or to nothing', () => {
    // Two squares of 10 joined by a neck 2 high.
    const dumbbell: Point[] = [
      [0, 0],
      [10, 0],
      [10, 4],
      [20, 4],
      [20, 0],
      [30, 0],
      [30, 10],
      [20, 10],
      [20, 6],
      [10, 6],
      [10, 10],
      [0, 10],
    ];
    const two = insetTile(dumbbell, 2);
    expectSound(two);
    expect(two.contours).toHaveLength(2);
    expect(area(two)).toBeGreaterThan(2 * 36);
    expect(insetTile(square, 5.5).contours).toHaveLength(0);
    expect(insetTile(ell, 6).contours).toHaveLength(0);
  });

  it('is nothing at the radius of the largest circle within', () => {
    // In a 3-4-5 triangle, 1; in the square, 5; the deepest of several counts.
    const triangle: Point[] = [
      [0, 0],
      [4, 0],
      [0, 3],
    ];
    expect(depth([triangle])).toBeCloseTo(1, 3);
    expect(depth([triangle, square])).toBeCloseTo(5, 3);
    expect(depth([square, triangle])).toBeCloseTo(5, 3);
  });
});

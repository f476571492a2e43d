import { describe, expect, it } from 'vitest';
import { circle, polygon } from '../../src/geometry/region.js';
import { thinnestWall } from '../../src/inspect/sums/wall.js';
import { outlineWith } from '../support/artwork.js';

const face = outlineWith('circle', { diameter: 96, margin: 0 });

describe('the thinnest wall of field', () => {
  it('is found between a pocket and the edge, with the length it stays thin', () => {
    const wall = thinnestWall(face, { contours: [circle(20, 0, 20)] }, 100)!;
    expect(wall.beside).toBe('edge');
    expect(wall.thickness).toBeCloseTo(8, 9);
    expect(wall.at[0]).toBeCloseTo(44, 6);
    // Under 12 mm while cos(angle) >= 0.62 on the pocket's circle: 20 x 0.902 each way. Walked in steps of 2 mm.
    const each = 20 * Math.acos(0.62);
    expect(wall.length).toBeLessThanOrEqual(2 * each + 1e-6);
    expect(wall.length).toBeGreaterThan(2 * each - 4);
  });
  it('is found between two pockets, the one that is nearest', () => {
    const contours = [circle(-20, 0, 9), circle(3, 0, 9), circle(26, 1, 9)];
    const wall = thinnestWall(face, { contours }, 100)!;
    expect(wall.beside).toBe('pocket');
    expect(wall.thickness).toBeCloseTo(5, 9);
    expect(wall.at[0]).toBeCloseTo(-8.5, 6);
  });
  it('is long without end where it is longer than matters', () => {
    const strip = (x: number) =>
      polygon([
        [x, -30],
        [x + 8, -30],
        [x + 8, 30],
        [x, 30],
      ]);
    expect(thinnestWall(face, { contours: [strip(-10), strip(2)] }, 16)).toMatchObject({
      thickness: 4,
      length: Number.POSITIVE_INFINITY,
    });
  });
  it('is none where a pocket runs over the edge', () => {
    const band = polygon([
      [-60, -5],
      [60, -5],
      [60, 5],
      [-60, 5],
    ]);
    expect(thinnestWall(face, { contours: [band] }, 16)).toBeNull();
    expect(thinnestWall(face, { contours: [] }, 16)).toBeNull();
  });
});

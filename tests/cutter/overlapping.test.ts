import { describe, expect, it } from 'vitest';
import { overlapping } from '../../src/cutter/overlapping.js';
import { Indexed } from '../../src/geometry/near.js';
import { type Contour, circle, polygon, type Region, reversedContour } from '../../src/geometry/region.js';
import { randomPolygon, seeded } from '../support/random.js';
import { combined, polygonArea } from '../support/reference.js';
import { ringsOf } from '../support/rings.js';

const overlap = (a: Region, b: Region): boolean => overlapping([new Indexed(a), new Indexed(b)]).length === 1;

const box = (x0: number, y0: number, x1: number, y1: number): Contour =>
  polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);

describe('pieces that share more than their boundaries', () => {
  const plate = { contours: [box(0, 0, 20, 20)] };
  const ring = { contours: [box(0, 0, 20, 20), reversedContour(box(5, 5, 15, 15))] };

  it.each<[string, Region, Region, boolean]>([
    ['one in the other', plate, { contours: [box(8, 8, 12, 12)] }, true],
    ['one in the hole of the other', ring, { contours: [box(8, 8, 12, 12)] }, false],
    ['one that fills the hole of the other', ring, { contours: [box(5, 5, 15, 15)] }, false],
    ['side by side, touching', plate, { contours: [box(20, 0, 40, 20)] }, false],
    ['corner to corner', plate, { contours: [box(20, 20, 40, 40)] }, false],
    ['over each other by a thousandth', plate, { contours: [box(19.999, 5, 40, 15)] }, true],
    ['the same twice', plate, plate, true],
    ['crossing bars, no corner of which is in the other', plate, { contours: [box(-5, 8, 25, 12)] }, true],
    ['a disc that dips in between two corners', plate, { contours: [circle(10, -4.9, 5)] }, true],
    ['a disc that only touches', plate, { contours: [circle(10, -5, 5)] }, false],
    [
      'a second contour that lies in the other',
      plate,
      { contours: [box(30, 0, 40, 20), box(8, 8, 12, 12)] },
      true,
    ],
  ])('%s', (_, a, b, is) => {
    expect(overlap(a, b)).toBe(is);
    expect(overlap(b, a)).toBe(is);
  });

  it('of random outlines are those whose common part has an area, as an engine measures it', () => {
    const random = seeded(77);
    const seen = [0, 0];
    for (let k = 0; k < 400; k++) {
      const of = (): Region => {
        const [x, y, d] = [random() * 18, random() * 18, 1 + random() * 8];
        const hole = reversedContour(circle(x, y, d * 0.4));
        return { contours: random() < 0.5 ? [circle(x, y, d), hole] : [randomPolygon(random, x, y, d)] };
      };
      const [a, b] = [of(), of()];
      const common = polygonArea(
        combined('intersection', ringsOf(a.contours, 1e-4), ringsOf(b.contours, 1e-4)),
      );
      // Too little to tell from the engine's chords.
      if (common > 0 && common < 0.01) continue;
      expect([k, overlap(a, b)]).toEqual([k, common > 0]);
      seen[common > 0 ? 1 : 0]!++;
    }
    expect(Math.min(...seen)).toBeGreaterThan(100);
  });
});

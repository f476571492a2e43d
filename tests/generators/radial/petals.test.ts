import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compassPetals, compassRim } from '../../../src/generators/radial/compass-figure.js';
import { heart, rhomb, widestHeart, widestRhomb } from '../../../src/generators/radial/petal.js';
import { endTangent, startTangent } from '../../../src/geometry/edge.js';
import { area, type Contour, contourArea, flatten } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { all, groupOf } from './symmetry.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

describe('the compass flower', () => {
  it('of six has petals of the area where two of the circles meet', () => {
    // Two segments of 60 degrees: R^2 (pi / 3 - sin 60), the lens of two circles through each other's points.
    const exact = 40 * 40 * (Math.PI / 3 - Math.sqrt(3) / 2);
    const figure = { n: 6, radius: 40, gap: 0 };
    for (const c of [...compassPetals(figure, 0.2), ...compassRim(figure, 0.2)])
      expect(contourArea(c)).toBeCloseTo(exact, 8);
  });

  it('keeps one gap between all neighbours', () => {
    for (const n of [5, 6, 8]) {
      const figure = { n, radius: 60, gap: 4 };
      const petals = [...compassPetals(figure, 0), ...(n >= 6 ? compassRim(figure, 0) : [])];
      expect(petals.length).toBe(n >= 6 ? 2 * n : n);
      const [first, ...rest] = petals.map((c): { contours: Contour[] } => ({ contours: [c] }));
      const apart = Math.min(...rest.map((r) => distanceBetween(first, r)));
      expect(apart).toBeGreaterThan(4);
      expect(apart).toBeLessThan(4.6);
    }
  });

  it('reaches the size asked for, with rim petals and without', () => {
    const cases: Values[] = [{ petals: 6 }, { petals: 6, rim: false }, { petals: 4 }];
    for (const values of cases) {
      const { contours } = all(artworkWith('petals', { shape: 'compass', size: 80, ...values }, lid));
      const points = contours.flatMap((c) => flatten(c, 0.0001));
      expect(Math.max(...points.map(([x, y]) => Math.hypot(x, y)))).toBeCloseTo(40, 3);
    }
  });
});

describe('hearts and rhombs', () => {
  it('a heart has smooth sides, one point and one cleft, and touches its circle', () => {
    const c = heart({ from: 10, to: 40, lobe: 6 }, 0.7);
    expectSound({ contours: [c] });
    const corners = c.filter((e, i) => {
      const a = endTangent(c[(i + c.length - 1) % c.length]);
      const b = startTangent(e);
      return Math.abs(a[0] * b[1] - a[1] * b[0]) > 1e-9;
    });
    expect(corners).toHaveLength(2);
    const farthest = c.filter((e) => e.r > 0).map((e) => Math.hypot(e.cx, e.cy) + e.r);
    for (const f of farthest) expect(f).toBeCloseTo(40, 9);
  });

  it('a rhomb has half the product of its diagonals', () => {
    expect(contourArea(rhomb(10, 40, 12, 1))).toBeCloseTo((30 * 12) / 2, 9);
  });

  it('are as wide as the gap lets them be', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 30 }),
        fc.double({ min: 6, max: 60, noNaN: true }),
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        (n, from, long, gap) => {
          if (from * Math.sin(Math.PI / n) < gap / 2 + 0.01) return;
          const to = from + long;
          const step = (2 * Math.PI) / n;
          const shape = widestHeart(n, from, to, gap);
          const hearts = [0.2, 0.2 + step].map((a) => ({ contours: [heart(shape, a)] }));
          const apart = distanceBetween(hearts[0], hearts[1]);
          expect(apart).toBeGreaterThan(gap - 1e-6);
          if (shape.lobe < 0.299 * long) expect(apart).toBeLessThan(gap + 0.01);
          const width = widestRhomb(n, from, to, gap);
          const rhombs = [0.2, 0.2 + step].map((a) => ({ contours: [rhomb(from, to, width, a)] }));
          expect(distanceBetween(rhombs[0], rhombs[1])).toBeGreaterThan(gap - 1e-6);
        },
      ),
      { seed: 12, numRuns: 40 },
    );
  });
});

describe('petals', () => {
  it('draws its rows with more petals outwards, symmetric as D_n', () => {
    const art = artworkWith('petals', { petals: 7, rows: 2, more: 7, eye: 24 }, lid);
    expect(art.pieces).toHaveLength(7 + 14 + 1);
    expect(groupOf(all(art), 44)).toBe('D7');
    for (const shape of ['lens', 'drop', 'heart', 'rhomb', 'compass'])
      expect(groupOf(all(artworkWith('petals', { shape, petals: 9, rows: 1, rim: false }, lid)), 44)).toBe(
        'D9',
      );
  });

  it('is sound and inside the margin on every outline', () => {
    const outlines = [lid, outlineWith('ring'), outlineWith('stave')];
    for (const shape of ['lens', 'drop', 'heart', 'rhomb'])
      for (const outline of outlines)
        for (const p of artworkWith('petals', { shape }, outline).pieces) {
          expectSound(p.region);
          expect(area(p.region)).toBeGreaterThan(1);
          expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-5);
        }
  });

  it('says in one line what is wrong and what would do', () => {
    const draw = (values: Values): unknown => artworkWith('petals', values, lid);
    expect(() => draw({ petals: 40 })).toThrow('pattern.petals: a row of 40 petals is too crowded');
    expect(() => draw({ gap: 40 })).toThrow(/^pattern.rows: 2 rows leave no room .* use 1 at most/);
    expect(() => draw({ disc: 30 })).toThrow('pattern.disc: 30 mm fills the eye; make it less than 20 mm');
    expect(() => draw({ shape: 'compass', petals: 30 })).toThrow(
      /^pattern.petals: 30 compass petals are thinner/,
    );
    expect(() => artworkWith('petals', { shape: 'compass' }, outlineWith('ring'))).toThrow(
      'pattern.shape: a compass flower needs wood',
    );
  });
});

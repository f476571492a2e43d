import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drop, petal, widestDrop, widestPetal } from '../../../src/generators/radial/petal.js';
import { nestedStars, starOutline, starStraps } from '../../../src/generators/radial/star.js';
import { endTangent, startTangent } from '../../../src/geometry/edge.js';
import { area, bounds, contains, distanceToBoundary } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';

const face = outlineWith('circle', { diameter: 96, margin: 6 });

/** Interior angle at the start of edge i of a contour, degrees. */
function angleAt(c: ReturnType<typeof starOutline>, i: number): number {
  const a = endTangent(c[(i + c.length - 1) % c.length]);
  const b = startTangent(c[i]);
  return 180 - (Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]) * 180) / Math.PI;
}

describe('star polygons', () => {
  // Point angle of {n/m}, 180 (n - 2m) / n: Coxeter, Regular Polytopes, 2.8 (from memory); values by hand.
  const angles: [n: number, m: number, degrees: number][] = [
    [5, 2, 36],
    [6, 2, 60],
    [7, 2, 77.142857],
    [7, 3, 25.714286],
    [8, 2, 90],
    [8, 3, 45],
    [10, 3, 72],
    [12, 5, 30],
  ];
  for (const [n, m, degrees] of angles)
    it(`{${n}/${m}} has ${n} points of ${degrees} degrees at the radius, on ${n} lines`, () => {
      const c = starOutline({ n, m }, 40, 0.3);
      expect(c).toHaveLength(2 * n);
      const lines = new Set<string>();
      c.forEach((e, i) => {
        const radius = Math.sqrt(e.x0 ** 2 + e.y0 ** 2);
        if (i % 2 === 0) {
          expect(angleAt(c, i)).toBeCloseTo(degrees, 5);
          expect(radius).toBeCloseTo(40, 9);
        }
        // Every side lies on a chord that joins points m apart: n chords, two sides each.
        const [tx, ty] = startTangent(e);
        const out = Math.atan2(-tx, ty);
        lines.add(((out * 180) / Math.PI + 720).toFixed(4));
        expect(Math.abs(e.x0 * ty - e.y0 * tx)).toBeCloseTo(40 * Math.cos((Math.PI * m) / n), 9);
      });
      expect(lines.size).toBe(n);
    });

  it('straps run along all chords with the width asked for', () => {
    const region = starStraps({ n: 8, m: 3 }, 40, 0, 4);
    expectSound(region);
    const side = 40 * Math.cos((3 * Math.PI) / 8);
    // The middle opening is the octagon inside all eight straps; by hand 8 a^2 tan(22.5 degrees).
    const middle = region.contours.reduce((a, b) =>
      distanceToBoundary({ contours: [b] }, 0, 0) < distanceToBoundary({ contours: [a] }, 0, 0) ? b : a,
    );
    expect(area({ contours: [middle] })).toBeCloseTo(-8 * (side - 4) ** 2 * Math.tan(Math.PI / 8), 8);
    for (let i = 0; i < 8; i++) {
      const a = (i * Math.PI) / 4 + Math.PI / 8;
      expect(contains(region, (side - 0.01) * Math.cos(a), (side - 0.01) * Math.sin(a))).toBe(true);
      expect(contains(region, (side - 3.99) * Math.cos(a), (side - 3.99) * Math.sin(a))).toBe(true);
      expect(contains(region, (side - 4.01) * Math.cos(a), (side - 4.01) * Math.sin(a))).toBe(false);
    }
  });

  it('nested outlines lie one gap apart', () => {
    const { contours } = nestedStars({ n: 8, m: 3 }, 60, 0, 1, 5, 4);
    expect(distanceBetween({ contours: [contours[0]] }, { contours: [contours[1]] })).toBeCloseTo(5, 9);
    expect(distanceBetween({ contours: [contours[1]] }, { contours: [contours[2]] })).toBeCloseTo(4, 9);
  });
});

describe('petals and drops', () => {
  it('a petal is the lens of two circular segments', () => {
    // Segment of chord c and sagitta s: r = (c^2 / 4 + s^2) / 2s, area r^2 acos(1 - s / r) - (r - s) c / 2.
    const r = (15 ** 2 + 25) / 10;
    const segment = r * r * Math.acos(1 - 5 / r) - (r - 5) * 15;
    expect(area({ contours: [petal(10, 40, 10, 1)] })).toBeCloseTo(2 * segment, 8);
  });

  it('a drop is a circle and the two tangents from a point', () => {
    const c = drop({ from: 10, to: 40, round: 6 }, 2);
    // Two right triangles and the sector of 180 degrees and the point angle.
    const half = Math.asin(6 / 24);
    expect(area({ contours: [c] })).toBeCloseTo(6 * Math.sqrt(24 ** 2 - 36) + 36 * (Math.PI / 2 + half), 8);
    for (let i = 1; i < c.length; i++) {
      const a = endTangent(c[i - 1]);
      const b = startTangent(c[i]);
      expect(a[0] * b[1] - a[1] * b[0]).toBeCloseTo(0, 12);
    }
  });

  it('are as wide as the gap lets them be', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 40 }),
        fc.double({ min: 6, max: 60, noNaN: true }),
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        (n, from, long, gap) => {
          if (from * Math.sin(Math.PI / n) < gap / 2 + 0.01) return;
          const to = from + long;
          const step = (2 * Math.PI) / n;
          const width = widestPetal(n, from, to, gap);
          const lens = (a: number): { contours: ReturnType<typeof petal>[] } => ({
            contours: [petal(from, to, width, a)],
          });
          const apart = distanceBetween(lens(0.2), lens(0.2 + step));
          expect(apart).toBeGreaterThan(gap - 1e-6);
          if (width < long - 1e-9) expect(apart).toBeLessThan(gap + 0.01);
          const shape = widestDrop(n, from, to, gap);
          const one = (a: number): { contours: ReturnType<typeof drop>[] } => ({
            contours: [drop(shape, a)],
          });
          const between = distanceBetween(one(0.2), one(0.2 + step));
          expect(between).toBeGreaterThan(gap - 1e-6);
          if (shape.round < 0.449 * long) expect(between).toBeLessThan(gap + 0.01);
        },
      ),
      { seed: 11, numRuns: 60 },
    );
  });
});

describe('rosette', () => {
  it('by default is cuttable as it stands: gaps and limbs of 3.8 mm, the tips of the drops apart', () => {
    const { pieces } = artworkWith('rosette', {}, face);
    expect(pieces.map((p) => p.name).filter((n) => !n.startsWith('drop'))).toEqual(['ring 1', 'disc']);
    expect(pieces).toHaveLength(14);
    const find = (name: string) => pieces.find((p) => p.name === name)!.region;
    expect(distanceBetween(find('drop 1'), find('drop 2'))).toBeGreaterThan(3.8);
    expect(distanceBetween(find('drop 1'), find('ring 1'))).toBeGreaterThan(3.8);
    expect(bounds(pieces.flatMap((p) => p.region.contours)).maxX).toBeCloseTo(42, 9);
  });

  const all: Values[] = [
    {},
    { style: 'petals', points: 7, pip: 5 },
    { style: 'petals', points: 24, rings: 0, eye: 40 },
    { style: 'star', eye: 6, disc: 0, points: 5 },
    { style: 'star', points: 9, step: 2, eye: 10, disc: 5, bands: 1 },
    { style: 'straps', points: 8, step: 3, disc: 4 },
    { style: 'drops', points: 3, rings: 2 },
    { style: 'drops', size: 70, turn: 0.4 },
  ];
  const outlines = [face, outlineWith('polygon', { sides: 5, across: 100, turn: 0.2 }), outlineWith('stave')];
  for (const values of all)
    it(`${JSON.stringify(values)}: sound, inside the margin, the same every time`, () => {
      for (const outline of outlines) {
        const art = artworkWith('rosette', values, outline);
        for (const p of art.pieces) {
          expectSound(p.region);
          expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-5);
        }
        expect(artworkWith('rosette', values, outline)).toEqual(art);
      }
    });

  it('fills the largest circle of the outline: the incircle of a triangle', () => {
    const triangle = outlineWith('polygon', { sides: 3, across: 90, margin: 5 });
    const box = bounds(
      artworkWith('rosette', { rings: 1 }, triangle).pieces.flatMap((p) => p.region.contours),
    );
    expect(box.maxX - box.minX).toBeCloseTo(80, 5);
    // Incentre of the triangle: a third of its height up; its box is centred, so at -h / 6, h = 135 mm.
    expect((box.maxY + box.minY) / 2).toBeCloseTo(-22.5, 4);
  });

  it('goes round the opening of a ring', () => {
    const ring = outlineWith('ring', { diameter: 200, bore: 120, margin: 6 });
    const { pieces } = artworkWith('rosette', { points: 24, rings: 0 }, ring);
    expect(pieces).toHaveLength(24);
    for (const p of pieces) expect(pokesOut(p.region, ring.inner)).toBeLessThan(1e-5);
    expect(() => artworkWith('rosette', { style: 'star', rings: 0 }, ring)).toThrow(
      'pattern.style: a star needs wood',
    );
  });

  it('says in one line what is wrong and what would do', () => {
    const draw = (values: Values): unknown => artworkWith('rosette', values, face);
    expect(() => draw({ size: 90 })).toThrow(
      'pattern.size: 90 mm is too large for the outline; use 84 mm at most',
    );
    expect(() => draw({ style: 'star', points: 8, step: 4 })).toThrow(
      'pattern.step: 4 is too far for 8 points; use 3 at most',
    );
    expect(() => draw({ rings: 9 })).toThrow(/^pattern.rings: 9 leave no room .* use 3 at most/);
    expect(() => draw({ rings: 3 })).not.toThrow();
    expect(() => draw({ points: 40 })).toThrow('pattern.points: 40 drops crowd the eye');
    expect(() => draw({ disc: 30 })).toThrow('pattern.disc: 30 mm fills the eye; make it less than 17 mm');
    expect(() => draw({ eye: 80 })).toThrow(
      'pattern.eye: 80 mm leaves no room for the figure; make it less than 75.6 mm',
    );
    expect(() => draw({ style: 'star', eye: 52, disc: 0 })).toThrow(
      /^pattern.eye: 52 mm cuts the star apart/,
    );
    expect(() => draw({ style: 'star', bands: 9 })).toThrow(
      /^pattern.bands: 9 nested outlines fill the star; use \d at most/,
    );
    expect(() => draw({ petal: 20 })).toThrow(
      /^pattern.petal: 20 mm leaves no gap between drops; use [\d.]+ mm at most/,
    );
  });
});

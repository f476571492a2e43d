import { describe, expect, it } from 'vitest';
import { placedSeeds } from '../../../src/generators/radial/seeds.js';
import { bounds } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';

const large = outlineWith('circle', { diameter: 320, margin: 10 });

/** Middles of the drawn discs, in order. */
function middles(values: Values): [number, number][] {
  return artworkWith('phyllotaxis', values, large).pieces.map(({ region }) => {
    const b = bounds(region.contours);
    return [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
  });
}

describe('phyllotaxis', () => {
  it('sets each seed 137.508 degrees on from the last: 360 / phi^2 (Vogel 1979, from memory)', () => {
    const points = middles({});
    expect(points.length).toBeGreaterThan(300);
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]].map(([x, y]) => (Math.atan2(y, x) * 180) / Math.PI);
      expect((b - a + 720) % 360).toBeCloseTo(137.507764, 5);
    }
    const right = middles({ hand: 'right' });
    right.forEach(([x, y], i) => {
      expect(x).toBeCloseTo(-points[i][0], 9);
      expect(y).toBeCloseTo(points[i][1], 9);
    });
  });

  it('has a Fibonacci number of spirals: the nearest seeds are that many apart in order', () => {
    // Counts of visible spirals in a sunflower head (Vogel 1979, from memory).
    const fibonacci = [1, 2, 3, 5, 8, 13, 21, 34, 55, 89];
    const points = middles({ inner: 5, outer: 5 });
    const counts = new Set<number>();
    points.forEach(([x, y], i) => {
      if (i < 5 || i > points.length - 60) return;
      const near = points
        .map(([u, v], j) => [Math.hypot(u - x, v - y), Math.abs(j - i)])
        .filter(([, d]) => d > 0)
        .sort((a, b) => a[0] - b[0]);
      for (const [, d] of near.slice(0, 2)) counts.add(d);
    });
    for (const d of counts) expect(fibonacci).toContain(d);
    expect(counts.size).toBeGreaterThan(2);
  });

  it('keeps the gap between all seeds, and some just that', () => {
    for (const [size0, size1] of [
      [2.5, 2.5],
      [2, 4],
      [4, 2],
    ]) {
      const seeds = placedSeeds({ eye: 0, outer: 90, gap: 3, size0, size1 });
      expect(seeds.length).toBeGreaterThan(90);
      let least = Number.POSITIVE_INFINITY;
      seeds.forEach((a, i) => {
        for (const b of seeds.slice(i + 1)) {
          const x = a.radius * Math.cos(a.angle) - b.radius * Math.cos(b.angle);
          const y = a.radius * Math.sin(a.angle) - b.radius * Math.sin(b.angle);
          least = Math.min(least, Math.hypot(x, y) - a.size - b.size);
        }
      });
      expect(least).toBeGreaterThan(3 - 1e-9);
      expect(least).toBeLessThan(3.001);
      // Equal discs by the golden angle fill nearly as well as the hexagonal packing: 0.74 of the area against 0.907.
      if (size0 === size1) {
        const share = (seeds.length * (size0 + 1.5) ** 2) / 90 ** 2;
        expect(share).toBeGreaterThan(0.6);
        expect(share).toBeLessThan(Math.PI / Math.sqrt(12));
      }
    }
  });

  it('is sound, inside the margin, and leaves the opening of a ring', () => {
    for (const outline of [outlineWith('stave'), outlineWith('ring'), outlineWith('rectangle')])
      for (const shape of ['disc', 'drop', 'rhomb'])
        for (const p of artworkWith('phyllotaxis', { shape, rings: 1 }, outline).pieces) {
          expectSound(p.region);
          expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-5);
        }
  });

  it('refuses too many seeds with a size that works, and seeds that do not fit', () => {
    const vast = outlineWith('circle', { diameter: 1000 });
    const draw = (values: Values): unknown => artworkWith('phyllotaxis', values, vast);
    expect(() => draw({ inner: 2, outer: 2, gap: 4 })).toThrow(
      /^pattern.inner: some \d+ seeds are more than 2000; make seeds and gap ([\d.]+) times as large/,
    );
    expect(() => draw({ inner: 8, outer: 8, gap: 16 })).not.toThrow();
    expect(() => artworkWith('phyllotaxis', { eye: 295 }, large)).toThrow(
      'pattern.inner: no seed fits round the eye',
    );
  });
});

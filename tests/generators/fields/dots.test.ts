import { describe, expect, it } from 'vitest';
import {
  cellArea,
  type LatticeKind,
  latticePoints,
  reduced,
  unitLattice,
} from '../../../src/generators/fields/lattice.js';
import { area, bounds } from '../../../src/geometry/region.js';
import { Refusal } from '../../../src/schema/fault.js';
import { artworkWith, distanceBetween, outlineWith } from '../../support/artwork.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const right = Math.PI / 2;

/** Share of the plane under touching discs: pi / sqrt 12 hexagonal (Thue 1890), pi / 4 square (MathWorld, Circle Packing). */
describe('lattices', () => {
  it.each([
    ['hexagonal', Math.PI / Math.sqrt(12)],
    ['square', Math.PI / 4],
    ['quincunx', Math.PI / 4],
  ] as [LatticeKind, number][])('%s: touching discs cover the known share', (kind, share) => {
    const unit = unitLattice(kind, right, 1);
    expect(Math.PI / 4 / cellArea(unit)).toBeCloseTo(share, 12);
    // By count as well: points in a large square.
    const side = 300;
    const box = { minX: -side / 2, maxX: side / 2, minY: -side / 2, maxY: side / 2 };
    const points = latticePoints(unit, [0.3, 0.1], box);
    expect((points.length * Math.PI) / 4 / side ** 2).toBeCloseTo(share, 2);
  });

  it('oblique: 60 degrees with even steps is hexagonal, 90 square; the nearest always lie 1 apart', () => {
    expect(cellArea(unitLattice('oblique', Math.PI / 3, 1))).toBeCloseTo(Math.sqrt(3) / 2, 12);
    expect(cellArea(unitLattice('oblique', right, 1))).toBeCloseTo(1, 12);
    for (const angle of [0.3, 0.9, 2, 2.8])
      for (const ratio of [0.25, 0.7, 1, 3.3]) {
        const unit = unitLattice('oblique', angle, ratio);
        let least = Number.POSITIVE_INFINITY;
        for (let i = -12; i <= 12; i++)
          for (let j = -12; j <= 12; j++)
            if (i !== 0 || j !== 0)
              least = Math.min(
                least,
                Math.hypot(i * unit[0][0] + j * unit[1][0], i * unit[0][1] + j * unit[1][1]),
              );
        expect(least).toBeCloseTo(1, 9);
        expect(Math.hypot(...reduced(unit)[0])).toBeCloseTo(1, 9);
      }
  });
});

describe('dots', () => {
  it.each(['disc', 'square', 'diamond', 'ring'])('of shape %s keep the gap on every lattice', (shape) => {
    for (const lattice of ['square', 'hexagonal', 'quincunx', 'oblique']) {
      const { pieces } = artworkWith('dots', { shape, lattice, gap: 5 }, lid);
      expect(pieces.length).toBeGreaterThan(12);
      let least = Number.POSITIVE_INFINITY;
      for (let i = 1; i < pieces.length; i++)
        least = Math.min(least, distanceBetween(pieces[0]!.region, pieces[i]!.region));
      expect(least).toBeCloseTo(5, 3);
    }
  });

  it('are whole, or cut by the edge', () => {
    const whole = artworkWith('dots', { size: 8 }, lid).pieces;
    for (const p of whole) expect(area(p.region)).toBeCloseTo(16 * Math.PI, 6);
    const clipped = artworkWith('dots', { size: 8, fill: 'clip', centre: 'gap' }, lid).pieces;
    expect(clipped.some((p) => area(p.region) < 49)).toBe(true);
    for (const p of clipped) expect(bounds(p.region.contours).maxX).toBeLessThan(44 + 1e-6);
  });

  it('fade from one size to the other', () => {
    const { pieces } = artworkWith('dots', { size: 10, to: 5, fade: 'up', lattice: 'square' }, lid);
    const sizes = pieces.map((p) => {
      const b = bounds(p.region.contours);
      return { y: (b.minY + b.maxY) / 2, size: b.maxX - b.minX };
    });
    for (const { y, size } of sizes) expect(size).toBeCloseTo(10 - (5 * (y + 44)) / 88, 6);
  });

  it('with something in the middle: a dot, or the gap between three', () => {
    const near = (centre: string): number => {
      const middles = artworkWith('dots', { centre, size: 8, gap: 5 }, lid).pieces.map((p) => {
        const b = bounds(p.region.contours);
        return Math.hypot(b.minX + b.maxX, b.minY + b.maxY) / 2;
      });
      return Math.min(...middles);
    };
    expect(near('figure')).toBeCloseTo(0, 9);
    expect(near('gap')).toBeCloseTo(13 / Math.sqrt(3), 9);
  });

  it('refuse what cannot be, with what can', () => {
    expect(() => artworkWith('dots', { shape: 'ring', size: 8, ring: 4.2 }, lid)).toThrow(
      /pattern\.size: 8 mm leaves no opening in a ring; make it more than 8\.4 mm/,
    );
    expect(() => artworkWith('dots', { size: 200 }, lid)).toThrow(Refusal);
    expect(() => artworkWith('dots', { size: 0.2, gap: 0.2 }, lid)).toThrow(
      /pattern\.size: .* use [\d.]+ mm or more/,
    );
  });
});

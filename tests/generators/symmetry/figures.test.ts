import { describe, expect, it } from 'vitest';
import { motifNamed, motifParameter, unitMotif } from '../../../src/generators/symmetry/motifs.js';
import type { Piece } from '../../../src/geometry/artwork.js';
import { nearestPoints } from '../../../src/geometry/nearest.js';
import {
  area,
  bounds,
  circle,
  contains,
  distanceToBoundary,
  perimeter,
} from '../../../src/geometry/region.js';
import { artworkWith, expectSound, outlineWith } from '../../support/artwork.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

function leastGap(pieces: readonly Piece[]): number {
  const boxes = pieces.map((p) => bounds(p.region.contours));
  let least = Number.POSITIVE_INFINITY;
  pieces.forEach((p, i) => {
    for (let j = i + 1; j < pieces.length; j++) {
      const [a, b] = [boxes[i], boxes[j]];
      const dx = Math.max(a.minX - b.maxX, b.minX - a.maxX, 0);
      const dy = Math.max(a.minY - b.maxY, b.minY - a.maxY, 0);
      if (Math.hypot(dx, dy) > least) continue;
      const near = nearestPoints(p.region.contours.flat(), pieces[j].region.contours.flat())!;
      least = Math.min(least, near.distance);
    }
  });
  return least;
}

describe('built-in motifs', () => {
  for (const { value } of motifParameter.options.filter((o) => o.value !== 'drawing'))
    it(`${value}: sound, in one part, in a unit square about (0, 0)`, () => {
      const motif = motifNamed(value);
      expectSound(motif);
      expect(motif.contours).toHaveLength(1);
      expect(area(motif)).toBeGreaterThan(0.15);
      const { minX, minY, maxX, maxY } = bounds(motif.contours);
      expect(Math.max(maxX - minX, maxY - minY)).toBeCloseTo(1, 12);
      expect(minX + maxX).toBeCloseTo(0, 12);
      expect(minY + maxY).toBeCloseTo(0, 12);
    });

  it('a region of any size and place becomes one', () => {
    const box = bounds(unitMotif({ contours: [circle(70, -30, 12)] }).contours);
    expect(box.minX).toBeCloseTo(-0.5, 12);
    expect(box.maxY).toBeCloseTo(0.5, 12);
  });
});

describe('figures of a wallpaper pattern', () => {
  for (const group of ['p1', 'pgg', 'p4g', 'p31m', 'p6'])
    it(`${group}: copies are rigid, keep the gap and come as near to it as they can`, () => {
      const { pieces } = artworkWith('wallpaper', { group, gap: 4 }, lid);
      expect(leastGap(pieces)).toBeGreaterThanOrEqual(4 - 1e-9);
      expect(leastGap(pieces)).toBeLessThan(4.05);
      const leaves = pieces.filter((p) => p.name.startsWith('leaf'));
      expect(leaves.length).toBeGreaterThan(8);
      for (const { region } of leaves) {
        expect(area(region)).toBeCloseTo(area(leaves[0].region), 9);
        expect(perimeter(region)).toBeCloseTo(perimeter(leaves[0].region), 9);
        for (const e of region.contours.flat()) expect(contains(lid.inner, e.x0, e.y0)).toBe(true);
      }
    });

  it('a drop on its own mirror is drawn once', () => {
    const given = { group: 'pm', motif: 'drop', place: 'apart', cell: 40, size: 20, disc: 0, proportion: 1 };
    const beside = artworkWith('wallpaper', given, lid).pieces;
    const on = artworkWith('wallpaper', { ...given, x: -10 }, lid).pieces;
    expect(beside).toHaveLength(8);
    // In the cell's first place at x = 10, the drop moved by -10 lies on the mirror x = 0.
    expect(on.length).toBeGreaterThan(0);
    for (const p of on) expect(area(p.region)).toBeCloseTo(area(beside[0].region), 6);
    for (const p of on) expectSound(p.region);
  });

  it('a leaf on a mirror and its image are one figure with that mirror', () => {
    const given = { group: 'pm', place: 'mirror', cell: 40, disc: 0 };
    const { pieces } = artworkWith('wallpaper', given, lid);
    expect(leastGap(pieces)).toBeGreaterThan(4.4 - 1e-9);
    const { region } = pieces.find(({ region: r }) =>
      contains(r, 0, (bounds(r.contours).maxY + bounds(r.contours).minY) / 2),
    )!;
    expectSound(region);
    const { minX, minY, maxX, maxY } = bounds(region.contours);
    let inside = 0;
    for (let i = 0; i < 40; i++)
      for (let j = 0; j < 40; j++) {
        const x = minX + ((maxX - minX) * (i + 0.5)) / 40;
        const y = minY + ((maxY - minY) * (j + 0.5)) / 40;
        if (distanceToBoundary(region, x, y) < 0.001) continue;
        expect(contains(region, -x, y)).toBe(contains(region, x, y));
        if (contains(region, x, y)) inside++;
      }
    expect(inside).toBeGreaterThan(400);
  });

  it('feet on a centre of sixth turns make one flower of six', () => {
    const given = { group: 'p6', place: 'centre', cell: 60, disc: 0 };
    const { pieces } = artworkWith('wallpaper', given, lid);
    expect(pieces).toHaveLength(1);
    const { region } = pieces[0];
    for (const e of region.contours.flat()) {
      const [c, s] = [0.5, Math.sqrt(3) / 2];
      expect(distanceToBoundary(region, c * e.x0 - s * e.y0, s * e.x0 + c * e.y0)).toBeLessThan(1e-6);
    }
  });

  it('clipping keeps what lies inside the margin and no more', () => {
    const whole = artworkWith('wallpaper', {}, lid).pieces;
    const clipped = artworkWith('wallpaper', { fill: 'clip' }, lid).pieces;
    expect(clipped.length).toBeGreaterThan(whole.length);
    const box = bounds(clipped.flatMap((p) => p.region.contours));
    expect([box.minX, box.minY, box.maxX, box.maxY].map((v) => Number(v.toFixed(9)))).toEqual([
      -44, -44, 44, 44,
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { superellipseContour } from '../../../src/generators/fields/lame.js';
import { endTangent, midpoint, startTangent } from '../../../src/geometry/edge.js';
import { area, bounds, contourArea } from '../../../src/geometry/region.js';
import { artworkWith, distanceBetween, outlineWith } from '../../support/artwork.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

/** 4ab Gamma(1 + 1/n)^2 / Gamma(1 + 2/n); per ab: 2, pi, 3.380935, 3.708149. Gamma worked out apart from the sources. */
describe('superellipse', () => {
  it.each([
    [0.5, 4 * (2 ** 2 / 24)],
    // n = 2/3 is the astroid: 3 pi / 8.
    [2 / 3, (3 * Math.PI) / 8],
    [1, 2],
    [1.5, 2.7383],
    [2, Math.PI],
    [2.5, 3.380935],
    [4, 3.708149],
    [12, 4 * 0.98893],
  ])('of exponent %f has the area of the closed form', (n, share) => {
    const measured = contourArea(superellipseContour(40, 25, n)) / (40 * 25);
    expect(measured).toBeCloseTo(share, n === 12 || n === 1.5 ? 2 : 4);
    expect(measured).toBeCloseTo((4 * gamma(1 + 1 / n) ** 2) / gamma(1 + 2 / n), 4);
  });

  it.each([0.6, 1.4, 2, 3, 7])('of exponent %f lies on its equation within 0.002 mm', (n) => {
    for (const e of superellipseContour(44, 30, n))
      for (const [x, y] of [[e.x0, e.y0], midpoint(e)]) {
        const [u, v] = [Math.abs(x) / 44, Math.abs(y) / 30];
        const off = u ** n + v ** n - 1;
        // First-order distance: value over slope; on an axis of n < 1 the slope is endless.
        const slope = Math.hypot((n * u ** (n - 1)) / 44, (n * v ** (n - 1)) / 30);
        expect(Math.abs(off / slope)).toBeLessThan(0.002);
      }
  });

  it.each([0.6, 1.4, 3])('of exponent %f runs along its own tangent between the axes', (n) => {
    for (const e of superellipseContour(44, 30, n)) {
      const [u, v] = [Math.abs(e.x0) / 44, Math.abs(e.y0) / 30];
      if (u < 0.05 || v < 0.05) continue;
      // Across the slope of the equation.
      const [gx, gy] = [(Math.sign(e.x0) * u ** (n - 1)) / 44, (Math.sign(e.y0) * v ** (n - 1)) / 30];
      const [tx, ty] = startTangent(e);
      expect(Math.abs(tx * gx + ty * gy) / Math.hypot(gx, gy)).toBeLessThan(0.01);
    }
  });

  it('is smooth all round from n = 2 on, corners on the axes apart below', () => {
    const c = superellipseContour(44, 30, 3);
    c.forEach((e, i) => {
      const [ax, ay] = endTangent(e);
      const [bx, by] = startTangent(c[(i + 1) % c.length]!);
      expect(Math.abs(ax * by - ay * bx)).toBeLessThan(1e-5);
    });
  });

  it('nests straps of one width, one gap apart', () => {
    const { pieces } = artworkWith('superellipse', { exponent: 2, rings: 3, strap: 5, gap: 4 }, lid);
    expect(pieces).toHaveLength(3);
    // Circles of 44: the rings' areas.
    pieces.forEach((p, k) => {
      const r = 44 - 9 * k;
      expect(area(p.region)).toBeCloseTo(Math.PI * (r * r - (r - 5) * (r - 5)), 0);
    });
    expect(distanceBetween(pieces[0]!.region, pieces[1]!.region)).toBeCloseTo(4, 2);
  });

  it('fits a given size and refuses one too large with the size that fits', () => {
    const { pieces } = artworkWith('superellipse', { width: 60, height: 40, rings: 1 }, lid);
    const b = bounds(pieces[0]!.region.contours);
    expect(b.maxX - b.minX).toBeCloseTo(60, 2);
    expect(b.maxY - b.minY).toBeCloseTo(40, 2);
    expect(() => artworkWith('superellipse', { width: 90 }, lid)).toThrow(
      /pattern\.width: .* use 87\.99 mm at most/,
    );
    expect(() => artworkWith('superellipse', { rings: 9 }, lid)).toThrow(/pattern\.rings: .* use 5 at most/);
  });

  it('fills a field with whole figures a gap apart', () => {
    const { pieces } = artworkWith('superellipse', { layout: 'field', width: 15, gap: 5 }, lid);
    expect(pieces).toHaveLength(16);
    expect(distanceBetween(pieces[0]!.region, pieces[1]!.region)).toBeCloseTo(5, 3);
  });
});

/** Lanczos' approximation, g = 7 (C. Lanczos, SIAM Journal on Numerical Analysis 1, 1964), right to 1e-13. */
function gamma(z: number): number {
  const c = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const x = z - 1;
  const sum = c.slice(1).reduce((s, v, i) => s + v / (x + i + 1), c[0]!);
  const t = x + 7.5;
  return Math.sqrt(2 * Math.PI) * t ** (x + 0.5) * Math.exp(-t) * sum;
}

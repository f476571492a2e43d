import { describe, expect, it } from 'vitest';
import { starStraps } from '../../../src/generators/radial/star.js';
import { leastWovenRadius, wovenStraps } from '../../../src/generators/radial/weave.js';
import { contains, distanceToBoundary, type Region } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { all, groupOf } from './symmetry.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const large = outlineWith('circle', { diameter: 320, margin: 10 });

function inAny(regions: readonly Region[], x: number, y: number): boolean {
  return regions.some((r) => contains(r, x, y));
}

/**
 * The corners, just within, of the rhombs where the straps along the chords of {n/m} cross: each strap lies between
 * its chord and a line `width` nearer the middle.
 */
function crossings(n: number, m: number, radius: number, width: number): [number, number][][] {
  const side = radius * Math.cos((Math.PI * m) / n);
  const out: [number, number][][] = [];
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const [a, b] = [i, j].map((k) => Math.PI / 2 + (Math.PI * (2 * k + m)) / n);
      // Chords whose normals are 2 pi d / n apart meet within the star when d < m.
      const d = Math.min(j - i, n - j + i);
      if (d >= m) continue;
      const det = Math.sin(b - a);
      const meet = (p: number, q: number): [number, number] => [
        (p * Math.sin(b) - q * Math.sin(a)) / det,
        (q * Math.cos(a) - p * Math.cos(b)) / det,
      ];
      const [near, far] = [side - width + 0.001, side - 0.001];
      out.push([meet(near, near), meet(near, far), meet(far, near), meet(far, far)]);
    }
  return out;
}

describe('star-polygon', () => {
  // {n/m} with g = gcd(n, m) > 1 is g copies of {n/g over m/g}, turned by 360/n: Coxeter, Regular Polytopes, 2.8 (from memory).
  const compounds: [n: number, m: number, g: number][] = [
    [6, 2, 2],
    [8, 2, 2],
    [9, 3, 3],
    [10, 4, 2],
    [12, 4, 4],
    [15, 6, 3],
  ];
  for (const [n, m, g] of compounds)
    it(`{${n}/${m}} is ${g} copies of {${n / g}/${m / g}}`, () => {
      const whole = all(
        artworkWith('star-polygon', { style: 'straps', points: n, step: m, strap: 4.4 }, large),
      );
      const copies = Array.from({ length: g }, (_, i) =>
        starStraps({ n: n / g, m: m / g }, 150, (2 * Math.PI * i) / n, 4.4),
      );
      let inside = 0;
      for (let i = 0; i < 900; i++) {
        const [r, a] = [150 * Math.sqrt(i / 900), i * 2.4];
        const [x, y] = [r * Math.cos(a), r * Math.sin(a)];
        if (distanceToBoundary(whole, x, y) < 1e-6) continue;
        expect(contains(whole, x, y)).toBe(inAny(copies, x, y));
        if (contains(whole, x, y)) inside++;
      }
      expect(inside).toBeGreaterThan(50);
    });

  // An alternating diagram with c crossings has c arcs, each from one undercrossing to the next (Adams, The Knot Book,
  // ch. 1, from memory). The chords of {n/m} cross n (m - 1) times: each meets 2 (m - 1) others.
  for (const [n, m] of [
    [5, 2],
    [7, 2],
    [8, 2],
    [7, 3],
    [8, 3],
    [9, 4],
  ] as const)
    it(`{${n}/${m}} woven falls into ${n * (m - 1)} pieces, one gap apart`, () => {
      const strap = m === 2 ? 6 : 3;
      const gap = m === 2 ? 4.2 : 1;
      const { pieces } = artworkWith(
        'star-polygon',
        { style: 'woven', points: n, step: m, strap, gap },
        large,
      );
      expect(pieces).toHaveLength(n * (m - 1));
      for (const p of pieces) expectSound(p.region);
      // All pieces of m = 2 are alike; else the first two are of different lengths.
      for (const own of pieces.slice(0, 2)) {
        const others = { contours: pieces.filter((p) => p !== own).flatMap((p) => p.region.contours) };
        expect(distanceBetween(own.region, others)).toBeCloseTo(gap, 3);
      }
    });

  it('is woven over and under in turn: each piece passes over one crossing, wholly, and under none', () => {
    for (const [n, m] of [
      [7, 2],
      [8, 3],
      [9, 4],
      [11, 5],
    ]) {
      const [width, gap] = [3, 1];
      const good = (radius: number): boolean => {
        const pieces = wovenStraps({ star: { n, m }, radius, turn: 0, width, gap });
        return pieces.every((piece) => {
          const held = crossings(n, m, radius, width).filter((corners) =>
            corners.every(([x, y]) => contains(piece, x, y)),
          );
          const touched = crossings(n, m, radius, width).filter((corners) =>
            corners.some(([x, y]) => contains(piece, x, y)),
          );
          return held.length === 1 && touched.length === 1;
        });
      };
      const least = leastWovenRadius({ n, m }, width, gap);
      expect(good(least * 1.001)).toBe(true);
      // The radius named is enough; it need not be the very least, but far smaller ones fail.
      expect(good(least * 0.75)).toBe(false);
    }
  });

  it('is symmetric as D_n, and woven as C_n', () => {
    const draw = (values: Values): string =>
      groupOf(all(artworkWith('star-polygon', { style: 'woven', points: 8, strap: 6, ...values }, lid)), 44);
    expect(draw({ style: 'straps', points: 7, step: 2 })).toBe('D7');
    expect(draw({ style: 'solid', points: 9, step: 4, strap: 3, gap: 3, bands: 0 })).toBe('D9');
    expect(draw({})).toBe('C8');
    expect(draw({ points: 5, step: 2 })).toBe('C5');
  });

  it('stays inside every outline, and goes round the opening of a ring', () => {
    const ring = outlineWith('ring', { diameter: 200, bore: 110, margin: 5 });
    for (const outline of [lid, ring, outlineWith('stave'), outlineWith('polygon', { sides: 3, across: 90 })])
      for (const p of artworkWith(
        'star-polygon',
        { style: 'woven', points: 12, step: 2, strap: 2.4, gap: 1.6 },
        outline,
      ).pieces)
        expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-5);
    expect(() =>
      artworkWith('star-polygon', { style: 'straps', points: 12, step: 4, strap: 6 }, ring),
    ).toThrow(/^pattern.step: the star's opening of 83 mm is smaller than the outline's of 120 mm/);
  });

  it('says what would do when straps crowd: the size named can be woven', () => {
    expect(() => artworkWith('star-polygon', { style: 'woven', points: 9, step: 4, strap: 6 }, lid)).toThrow(
      /^pattern.style: the crossings of \{9\/4\} are too near .* that needs a star of ([\d.]+) mm/,
    );
    const needs = /star of ([\d.]+) mm/;
    const draw = (size: number): unknown =>
      artworkWith(
        'star-polygon',
        { style: 'woven', points: 8, step: 3, strap: 6, size },
        outlineWith('circle', { diameter: 400 }),
      );
    let message = '';
    try {
      draw(150);
    } catch (e) {
      message = String(e);
    }
    const size = Number(needs.exec(message)?.[1]);
    expect(() => draw(size)).not.toThrow();
    expect(() => draw(size - 0.02)).toThrow();
  });
});

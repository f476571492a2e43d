import { describe, expect, it } from 'vitest';
import { rosePath } from '../../../src/generators/radial/rose-curve.js';
import { closure, reach, trochoidPath, type Wheel } from '../../../src/generators/radial/trochoid.js';
import { type Edge, endTangent, startTangent } from '../../../src/geometry/edge.js';
import { contourArea, windingNumber } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { all, groupOf } from './symmetry.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

/** Outermost points of a path, within 0.01 mm of its greatest radius, each counted once. */
function tips(path: readonly Edge[]): number {
  const radii = path.map((e) => Math.hypot(e.x0, e.y0));
  const most = Math.max(...radii);
  let count = 0;
  radii.forEach((r, i) => {
    const before = radii[(i + radii.length - 1) % radii.length];
    if (r > most - 0.01 && before <= r && radii[(i + 1) % radii.length] < r) count++;
  });
  return count;
}

function expectSmoothAndClosed(path: readonly Edge[]): void {
  path.forEach((e, i) => {
    const next = path[(i + 1) % path.length];
    expect([next.x0, next.y0]).toEqual([e.x1, e.y1]);
    const [a, b] = [endTangent(e), startTangent(next)];
    expect(a[0] * b[1] - a[1] * b[0]).toBeCloseTo(0, 4);
    expect(a[0] * b[0] + a[1] * b[1]).toBeGreaterThan(0);
  });
}

describe('rose curves', () => {
  // r = a cos k t: k petals for odd k, 2k for even; area pi a^2 / 4 or pi a^2 / 2 (Weisstein, MathWorld, "Rose Curve", from memory).
  for (const k of [1, 2, 3, 4, 5, 6, 9])
    it(`k = ${k} has ${k % 2 ? k : 2 * k} petals and its area`, () => {
      const path = rosePath({ n: k, d: 1 }, 40, 0.3);
      expectSmoothAndClosed(path);
      expect(tips(path)).toBe(k % 2 ? k : 2 * k);
      const exact = (Math.PI * 1600) / (k % 2 ? 4 : 2);
      // Arcs within 0.0015 mm of a curve some 500 mm long.
      expect(Math.abs(contourArea(path) - exact)).toBeLessThan(0.5);
    });

  // k = n/d in lowest terms: n petals when n and d are odd, else 2n.
  for (const [n, d, petals] of [
    [5, 3, 5],
    [3, 2, 6],
    [4, 3, 8],
    [7, 3, 7],
    [1, 2, 2],
    [1, 3, 1],
    [6, 4, 6],
    [9, 3, 3],
  ] as const)
    it(`k = ${n}/${d} has ${petals} petals`, () => {
      const path = rosePath({ n, d }, 40, 0);
      expectSmoothAndClosed(path);
      expect(tips(path)).toBe(petals);
    });

  it('is drawn as fields or as a strap, symmetric as D_n', () => {
    const draw = (values: Values) => artworkWith('rose-curve', { eye: 0, ...values }, lid);
    const art = draw({ n: 4, d: 1 });
    expect(art.pieces).toHaveLength(8);
    expect(groupOf(all(art), 44)).toBe('D8');
    expect(groupOf(all(draw({ n: 5, d: 3 })), 44)).toBe('D5');
    expect(groupOf(all(draw({ n: 3, d: 1, style: 'strap' })), 44)).toBe('D3');
  });
});

describe('trochoids', () => {
  const inside = (ring: number, wheel: number, arm = wheel): Wheel => ({ ring, wheel, arm, inside: true });
  const outside = (ring: number, wheel: number, arm = wheel): Wheel => ({ ring, wheel, arm, inside: false });

  // Closes after wheel / gcd turns with ring / gcd lobes; the table is worked by hand.
  for (const [ring, wheel, turns, lobes] of [
    [5, 3, 3, 5],
    [96, 52, 13, 24],
    [7, 2, 2, 7],
  ] as const)
    it(`a wheel of ${wheel} in a ring of ${ring} closes after ${turns} turns with ${lobes} lobes`, () => {
      expect(closure(inside(ring, wheel))).toEqual({ turns, lobes });
      // An arm short enough for the curve to go round the middle.
      const w = inside(ring, wheel, 0.6 * (ring - wheel));
      const path = trochoidPath(w, 40 / reach(w).most, 0.2);
      expectSmoothAndClosed(path);
      expect(tips(path)).toBe(lobes);
      expect(windingNumber([path], 0.001, 0.002)).toBe(turns);
    });

  // Hypocycloid of a ring k wheels large: area pi r^2 (k - 1)(k - 2); epicycloid pi r^2 (k + 1)(k + 2)
  // (Weisstein, MathWorld, "Hypocycloid", "Epicycloid", from memory).
  for (const k of [3, 4, 5, 7])
    it(`a cycloid of ${k} cusps has its area`, () => {
      const hypo = trochoidPath(inside(k, 1), 8, 0);
      expect(Math.abs(contourArea(hypo) - 64 * Math.PI * (k - 1) * (k - 2))).toBeLessThan(0.4);
      const epi = trochoidPath(outside(k, 1), 8, 0);
      expect(Math.abs(contourArea(epi) - 64 * Math.PI * (k + 1) * (k + 2))).toBeLessThan(0.8);
      expect(tips(hypo)).toBe(k);
    });

  it('a wheel half as large as its ring draws an ellipse (the Tusi couple, al-Tusi 1247, from memory)', () => {
    const path = trochoidPath(inside(2, 1, 0.5), 20, 0);
    for (const e of path) expect((e.x0 / 30) ** 2 + (e.y0 / 10) ** 2).toBeCloseTo(1, 9);
    expect(Math.abs(contourArea(path) - Math.PI * 300)).toBeLessThan(0.2);
  });

  it('draws straps and fields, symmetric as D_n, inside the margin', () => {
    const cases: Values[] = [{}, { style: 'solid' }, { rolls: 'inside', fixed: 8, rolling: 3, arm: 1 }];
    for (const outline of [lid, outlineWith('stave')])
      for (const values of cases)
        for (const p of artworkWith('trochoid', values, outline).pieces) {
          expectSound(p.region);
          expect(pokesOut(p.region, outline.inner)).toBeLessThan(0.004);
        }
    expect(groupOf(all(artworkWith('trochoid', {}, lid)), 44)).toBe('D6');
    expect(
      groupOf(all(artworkWith('trochoid', { rolls: 'inside', fixed: 7, rolling: 2, arm: 1 }, lid)), 44),
    ).toBe('D7');
  });

  it('goes round the opening of a ring or says what to change', () => {
    const ring = outlineWith('ring', { diameter: 200, bore: 110, margin: 5 });
    for (const p of artworkWith('trochoid', { rolls: 'inside', fixed: 12, rolling: 1, arm: 1.5 }, ring)
      .pieces)
      expect(pokesOut(p.region, ring.inner)).toBeLessThan(0.004);
    expect(() => artworkWith('trochoid', {}, ring)).toThrow(
      /^pattern.arm: the curve would cross the opening of 120 mm/,
    );
    expect(() => artworkWith('trochoid', { rolls: 'inside', fixed: 5, rolling: 5 }, lid)).toThrow(
      'pattern.rolling: a circle of 5 does not roll inside one of 5; use 4 at most',
    );
    // Turns that run together are a plain ring; a strap of the width named leaves fields.
    const dense = { rolls: 'inside', fixed: 24, rolling: 11, arm: 1 } as const;
    const most = /^pattern.strap: 9 mm leaves no field between the turns; use ([\d.]+) mm at most/;
    let said = '';
    try {
      artworkWith('trochoid', { ...dense, strap: 9 }, lid);
    } catch (e) {
      said = String((e as Error).message);
    }
    const strap = Number(most.exec(said)?.[1]);
    expect(
      artworkWith('trochoid', { ...dense, strap }, lid).pieces[0].region.contours.length,
    ).toBeGreaterThan(20);
    expect(() => artworkWith('trochoid', { fixed: 72, rolling: 71 }, lid)).toThrow(
      /^pattern.strap: 4.4 mm leaves no field between the turns; use circles that close in fewer turns/,
    );
    expect(() => artworkWith('rose-curve', {}, ring)).toThrow('needs wood in the middle');
  });
});

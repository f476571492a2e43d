import { describe, expect, it } from 'vitest';
import {
  innerBend,
  type RosetteKnot,
  rosetteStrands,
} from '../../../src/generators/knots/rosette-strands.js';
import { endTangent, startTangent } from '../../../src/geometry/edge.js';
import { area } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith } from '../../support/artwork.js';
import { crossingsOf, expectAlternating, gcd } from './strands.js';

const face = outlineWith('circle', { diameter: 100, margin: 5 });

function knot(strands: number, lobes: number): RosetteKnot {
  return { strands, lobes, mean: 30, swing: 12, middle: [1, 2], turn: 0.3 };
}

function drawn(given: Values): ReturnType<typeof artworkWith>['pieces'] {
  return artworkWith('torus-knot', given, face).pieces;
}

describe('rosette knots', () => {
  // The plane curve of the torus link T(p, q): gcd(p, q) components, and (p - 1) q crossings, which is the crossing
  // number for p < q (Murasugi 1991, from memory).
  it('of p strands and q lobes have gcd(p, q) components and (p - 1) q crossings', () => {
    for (let p = 2; p <= 6; p++)
      for (let q = 2; q <= 13; q++) {
        const strands = rosetteStrands(knot(p, q));
        expect(strands).toHaveLength(gcd(p, q));
        expect(crossingsOf(strands)).toBe((p - 1) * q);
        expectAlternating(strands);
      }
  });

  it('cross where they say they do', () => {
    for (const [p, q] of [
      [2, 3],
      [3, 8],
      [4, 6],
    ]) {
      const at = new Map<string, [number, number]>();
      for (const { nodes, stretches } of rosetteStrands(knot(p, q)))
        nodes.forEach(({ crossing }, k) => {
          const { x0, y0 } = stretches[k][0];
          const other = at.get(crossing);
          if (other) expect(Math.hypot(other[0] - x0, other[1] - y0)).toBeLessThan(1e-6);
          at.set(crossing, [x0, y0]);
        });
      const places = [...at.values()];
      places.forEach(([x, y], k) => {
        for (const [u, v] of places.slice(k + 1)) expect(Math.hypot(x - u, y - v)).toBeGreaterThan(1);
      });
    }
  });

  it('run smoothly and close', () => {
    for (const { stretches } of rosetteStrands(knot(3, 7))) {
      const path = stretches.flat();
      path.forEach((e, k) => {
        const next = path[(k + 1) % path.length];
        expect(Math.hypot(next.x0 - e.x1, next.y0 - e.y1)).toBeLessThan(1e-6);
        const [a, b] = [endTangent(e), startTangent(next)];
        expect(a[0] * b[0] + a[1] * b[1]).toBeGreaterThan(1 - 1e-6);
      });
    }
  });

  it('bend at an inner lobe as the curve does there', () => {
    const k = knot(2, 5);
    const tightest = Math.min(
      ...rosetteStrands(k).flatMap((s) => s.stretches.flat().map((e) => Math.abs(e.r))),
    );
    expect(tightest / innerBend(k)).toBeCloseTo(1, 1);
  });
});

describe('torus-knot', () => {
  for (const [strands, lobes] of [
    [2, 3],
    [2, 5],
    [3, 3],
    [3, 8],
    [4, 6],
  ])
    it(`${strands} strands, ${lobes} lobes: a piece a crossing, gaps as wide as asked, within the circle`, () => {
      const pieces = drawn({ strands, lobes, strap: 3.5, gap: 3.5 });
      expect(pieces).toHaveLength((strands - 1) * lobes);
      let least = Number.POSITIVE_INFINITY;
      let far = 0;
      pieces.forEach((p, a) => {
        expectSound(p.region);
        expect(p.region.contours).toHaveLength(1);
        for (const e of p.region.contours[0]) far = Math.max(far, Math.hypot(e.x0, e.y0));
        for (const q of pieces.slice(a + 1)) least = Math.min(least, distanceBetween(p.region, q.region));
      });
      expect(least).toBeCloseTo(3.5, 2);
      expect(far).toBeLessThan(45 + 1e-3);
      expect(far).toBeGreaterThan(44.9);
      // Turned by a lobe it is the same: all pieces of a kind are alike.
      const sizes = new Set(pieces.map((p) => area(p.region).toFixed(1)));
      expect(sizes.size).toBeLessThan(strands + 1);
    });

  it('winds round the opening of a ring', () => {
    const ring = outlineWith('ring', { diameter: 180, bore: 90, margin: 6 });
    const { pieces } = artworkWith('torus-knot', { lobes: 16 }, ring);
    expect(pieces).toHaveLength(32);
    for (const p of pieces)
      for (const e of p.region.contours[0]) expect(Math.hypot(e.x0, e.y0)).toBeGreaterThan(51 - 1e-3);
  });

  it('refuses what cannot be, with a number that works', () => {
    expect(() => drawn({ size: 100 })).toThrow(
      'pattern.size: 100 mm is too large for the outline; use 90 mm at most',
    );
    expect(() => drawn({ strands: 12 })).toThrow('pattern.strands: 12 with this strap and gap do not fit');
    expect(() => drawn({ lobes: 60 })).toThrow(/pattern\.lobes: 60 crowd the middle; use 15 at most/);
    expect(() => drawn({ lobes: 15 })).not.toThrow();
    expect(() => drawn({ eye: 80 })).toThrow(
      /pattern\.eye: 80 mm leaves no room for the bands; use \d+\.\d+ mm at most/,
    );
    expect(() => drawn({ strands: 2, lobes: 5, eye: 2 })).toThrow(
      /pattern\.strap: 4 mm is too wide for the inner lobes' bends/,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { bend, clothoid } from '../../../src/generators/bands/bend.js';
import { keyColumns, keyCorners } from '../../../src/generators/bands/key.js';
import { intersect } from '../../../src/geometry/boolean.js';
import { area, bounds } from '../../../src/geometry/region.js';
import { DISC, LID, outline, pieces, STAVE } from './helper.js';

describe('areas against closed forms', () => {
  it('rails round a circle are rings: pi (R^2 - r^2)', () => {
    // Margin 6 leaves a radius of 74: the outer rail lies there, the inner one 12 mm of band and two lanes further in.
    const rails = pieces('dentil', DISC, { rails: 1, rail: 5, lane: 4, height: 12 }).filter((p) =>
      p.name.includes('rail'),
    );
    const rings = [
      [74, 69],
      [49, 44],
    ].map(([out, inside]) => Math.PI * (out! * out! - inside! * inside!));
    expect(rails.map((p) => area(p.region)).sort((a, b) => b - a)).toEqual(
      rings.map((r) => expect.closeTo(r, 6)),
    );
  });

  it('rails of an arched band on a stave are parts of rings: angle (R^2 - r^2) / 2', () => {
    const rails = pieces('dentil', STAVE, { rails: 1, rail: 5, lane: 4, height: 12, level: 75 });
    // Sides lean 15 mm over 150, so they meet 850 / 2 mm below the middle: 85 mm wide, 0.2 mm a mm.
    const middle = 85 / 0.2;
    const angle = 2 * Math.atan(0.1);
    const upper = rails.find((p) => p.name === 'upper rail 1')!;
    const [r, R] = [middle + 10, middle + 15];
    expect(area(intersect(upper.region, STAVE.face))).toBeCloseTo((angle * (R * R - r * r)) / 2, 4);
  });

  it('blocks round a circle are sectors of one ring', () => {
    const blocks = pieces('dentil', DISC, { height: 12, tooth: 6, gap: 4.4 });
    // The middle circle has radius 68; blocks and gaps keep their least width at radius 62: 37 of them.
    const n = Math.floor((2 * Math.PI * 62) / 10.4);
    expect(blocks.length).toBe(n);
    const share = 6 / 10.4;
    const ring = Math.PI * (74 * 74 - 62 * 62);
    expect(blocks.reduce((sum, p) => sum + area(p.region), 0)).toBeCloseTo(share * ring, 5);
  });

  it('a key frame is its middle line times its width', () => {
    // Turning square corners a mitred strap gains outside what it loses inside: area = width x length.
    const [key] = pieces('meander', LID);
    // On the 88 mm left by the margin two keys a side and the corner's: 9 pitches and a strap, strap to pitch 1 : 2.
    const pitch = 88 / 9.5;
    // Every grid point of the ring of 3 rows is passed once: 10 x 10 points less 4 x 4.
    expect(area(key!.region)).toBeCloseTo((pitch / 2) * 84 * pitch, 6);
    const box = bounds(key!.region.contours);
    expect([box.minX, box.minY, box.maxX, box.maxY]).toEqual(
      [-44, -44, 44, 44].map((v) => expect.closeTo(v, 9)),
    );
  });
});

describe('the key', () => {
  it.each([1, 2, 3, 4])(
    'of %i turns passes every point of its grid once and turns into itself by half',
    (turns) => {
      const wide = keyColumns(turns);
      const corners = [...keyCorners(turns), [wide, 0] as [number, number]];
      const seen = new Set<string>();
      corners.slice(1).forEach(([x, y], i) => {
        const [px, py] = corners[i]!;
        const steps = Math.abs(x - px) + Math.abs(y - py);
        expect(Math.min(Math.abs(x - px), Math.abs(y - py))).toBe(0);
        for (let k = 0; k < steps; k++)
          seen.add(`${(px + ((x - px) * k) / steps) % wide},${py + ((y - py) * k) / steps}`);
      });
      // The next key begins with the column that this one ends before.
      expect(seen.size).toBe(wide * (2 * turns + 1));
      const inner = keyCorners(turns).slice(1);
      const turned = inner.map(([x, y]) => `${wide - x},${2 * turns - y}`);
      for (const [x, y] of inner.slice(1)) expect(turned).toContain(`${x},${y}`);
    },
  );
});

describe('the bend', () => {
  it('is drawn by Fresnel integrals', () => {
    // C(1) = 0.7798934, S(1) = 0.4382591, C(1.5) = 0.4452612, S(1.5) = 0.6975050: heading pi/2 s^2
    // (Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 7.7).
    const at = (s: number) => clothoid(s, Math.PI / 2).place;
    expect(at(1)[0]).toBeCloseTo(0.7798934, 7);
    expect(at(1)[1]).toBeCloseTo(0.4382591, 7);
    expect(clothoid(1.1, Math.PI / 2).place[0]).toBeCloseTo(integral(1.1, Math.cos), 9);
    expect(clothoid(1.1, Math.PI / 2).place[1]).toBeCloseTo(integral(1.1, Math.sin), 9);
  });

  it.each([Math.PI / 2, Math.PI / 3, (2 * Math.PI) / 3])(
    'turns by %f without a jump in place, heading or curvature',
    (turn) => {
      const b = bend(turn, 15);
      expect(b.at(b.length).heading).toBeCloseTo(turn, 12);
      expect(b.at(0).curvature).toBe(0);
      expect(b.at(b.length).curvature).toBeCloseTo(0, 12);
      let tightest = 0;
      for (let i = 1; i <= 2000; i++) {
        const s = (b.length * i) / 2000;
        const step = b.length / 2000;
        const [p, q] = [b.at(s - step), b.at(s)];
        // The place moves by the step along the mean heading, the heading by the mean curvature.
        const mean = (p.heading + q.heading) / 2;
        expect(q.place[0] - p.place[0]).toBeCloseTo(step * Math.cos(mean), 6);
        expect(q.place[1] - p.place[1]).toBeCloseTo(step * Math.sin(mean), 6);
        expect(q.heading - p.heading).toBeCloseTo(((p.curvature + q.curvature) / 2) * step, 5);
        tightest = Math.max(tightest, q.curvature);
      }
      expect(tightest).toBeCloseTo(1 / 15, 9);
      // The end lies as far from the corner as the start.
      const [x, y] = b.at(b.length).place;
      expect(x).toBeCloseTo(b.setback * (1 + Math.cos(turn)), 9);
      expect(y).toBeCloseTo(b.setback * Math.sin(turn), 9);
    },
  );
});

/** Simpson's rule for the integral of f(pi/2 s^2) from 0. */
function integral(to: number, f: (v: number) => number): number {
  const n = 2000;
  const h = to / n;
  let sum = 0;
  for (let i = 0; i <= n; i++)
    sum += f((Math.PI / 2) * (i * h) * (i * h)) * (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

describe('refusals name what would work', () => {
  it.each([
    [
      'a level over the margin',
      'rope',
      STAVE,
      { level: 10 },
      /pattern\.level: 10 mm .* use 1[0-9.]+ mm to 13[0-9.]+ mm/,
    ],
    [
      'a bend too tight',
      'rope',
      LID,
      { bend: 5 },
      /pattern\.bend: 5 mm is out of range here; use 9\.5 mm to/,
    ],
    [
      'a band too high',
      'dentil',
      DISC,
      { height: 90 },
      /pattern\.inset: the band is 90 mm high and there is room for 74 mm/,
    ],
    ['a frame too high', 'dentil', LID, { height: 50 }, /the band is .* high and there is room for/],
    ['no room for a key', 'meander', LID, { turns: 4, strap: 8 }, /pattern\.(inset|gap): /],
    [
      'across an opening',
      'wave',
      outline('ring', {}),
      { across: true },
      /pattern\.across: the outline is open in the middle/,
    ],
    [
      'too many repeats',
      'dentil',
      outline('circle', { diameter: 3000 }),
      { tooth: 0.4, gap: 0.4 },
      /pattern\.gap: \d+ repeats are too many/,
    ],
    ['a wave in no height', 'wave', LID, { height: 3 }, /pattern\.height: 3 mm holds no wave/],
    [
      'a disc as wide as its ring',
      'chain',
      LID,
      { link: 'ring', height: 14, disc: 9 },
      /pattern\.disc: 9 mm fills the rings; use less than 6 mm/,
    ],
  ] as const)('%s', (_, name, on, values, message) => {
    expect(() => pieces(name, on, values)).toThrow(message);
  });
});

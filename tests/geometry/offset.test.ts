import { describe, expect, it } from 'vitest';
import { offset } from '../../src/geometry/offset.js';
import {
  area,
  circle,
  distanceToBoundary,
  flatten,
  perimeter,
  polygon,
  type Region,
} from '../../src/geometry/region.js';
import { roll, rollOutside } from '../../src/geometry/roll.js';
import { randomPolygon, regular, seeded } from '../support/random.js';

const region = (...contours: Region['contours']): Region => ({ contours });

describe('offset', () => {
  it("follows Steiner's formula on convex shapes: A + P r + pi r^2, P + 2 pi r (Steiner 1840)", () => {
    for (const shape of [
      regular(3, 0, 0, 9),
      regular(5, 1, 2, 7, 0.3),
      regular(17, 0, 0, 12),
      circle(3, 3, 4),
    ]) {
      for (const r of [0.05, 1, 6]) {
        const grown = offset(region(shape), r);
        const [a, p] = [area(region(shape)), perimeter(region(shape))];
        expect(area(grown)).toBeCloseTo(a + p * r + Math.PI * r * r, 9);
        expect(perimeter(grown)).toBeCloseTo(p + 2 * Math.PI * r, 9);
      }
    }
  });

  it('of the unit square by 1 has area 8.141593 (closed form 5 + pi)', () => {
    const square = region(
      polygon([
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ]),
    );
    expect(area(offset(square, 1))).toBeCloseTo(8.141593, 6);
  });

  it('keeps its distance both ways on 200 random polygons', () => {
    const random = seeded(21);
    for (let k = 0; k < 200; k++) {
      const shape = region(randomPolygon(random, 0, 0, 10));
      const d = (random() - 0.5) * 6;
      const moved = offset(shape, d);
      for (const c of moved.contours)
        for (const [x, y] of flatten(c, 0.01))
          expect(distanceToBoundary(shape, x, y)).toBeCloseTo(Math.abs(d), 6);
      // Growing then shrinking never loses area, shrinking then growing never gains (closing and opening).
      if (moved.contours.length === 0) continue;
      const back = area(offset(moved, -d));
      if (d > 0) expect(back).toBeGreaterThan(area(shape) - 1e-6);
      else expect(back).toBeLessThan(area(shape) + 1e-6);
    }
  });

  it('of nothing is nothing, and so is an offset inwards past the middle', () => {
    expect(offset({ contours: [] }, 3).contours).toEqual([]);
    expect(offset(region(circle(0, 0, 2)), -2.1).contours).toEqual([]);
  });
});

describe('the rolling ball', () => {
  it('takes r^2 (cot(a / 2) - (pi - a) / 2) off a corner of angle a (tangents less sector, closed form)', () => {
    // Per r^2 at 30, 36, 45, 60, 72, 90, 108, 120, 135, 150 degrees.
    const table: [number, number][] = [
      [30, 2.423054],
      [36, 1.821046],
      [45, 1.236116],
      [60, 0.684853],
      [72, 0.433904],
      [90, 0.214602],
      [108, 0.098224],
      [120, 0.053751],
      [135, 0.021514],
      [150, 0.00615],
    ];
    for (const [degrees, loss] of table) {
      const a = (degrees * Math.PI) / 180;
      // A kite with this angle at the origin and otherwise far away.
      const far = 60;
      const kite = polygon([
        [0, 0],
        [far * Math.cos(a / 2), -far * Math.sin(a / 2)],
        [2.5 * far, 0],
        [far * Math.cos(a / 2), far * Math.sin(a / 2)],
      ]);
      for (const r of [0.5, 1.9]) {
        const rolled = region(...roll([kite], r).contours);
        // Only the loss near the origin: cut the rest off by comparing inside a window of closed contours is not
        // needed, the three other corners' losses are known by the same formula from their own angles.
        const others = [1, 2, 3].map((i) =>
          interiorAngle(
            kite.map((e) => [e.x0, e.y0]),
            i,
          ),
        );
        const expected = [a, ...others].reduce(
          (s, t) => s + r * r * (1 / Math.tan(t / 2) - (Math.PI - t) / 2),
          0,
        );
        expect(area(region(kite)) - area(rolled)).toBeCloseTo(expected, 8);
      }
      expect(1 / Math.tan(a / 2) - (Math.PI - a) / 2).toBeCloseTo(loss, 5);
    }
  });

  it('is idempotent, and opening never adds nor closing removes, on 200 random polygons', () => {
    const random = seeded(5);
    for (let k = 0; k < 200; k++) {
      const shape = [randomPolygon(random, 0, 0, 6 + random() * 8)];
      const r = 0.5 + random() * 1.5;
      const opened = roll(shape, r).contours;
      const closed = rollOutside(shape, r).contours;
      expect(area(region(...opened))).toBeLessThanOrEqual(area(region(...shape)) + 1e-9);
      expect(area(region(...closed))).toBeGreaterThanOrEqual(area(region(...shape)) - 1e-9);
      expect(area(region(...roll(opened, r).contours))).toBeCloseTo(area(region(...opened)), 5);
      expect(area(region(...rollOutside(closed, r).contours))).toBeCloseTo(area(region(...closed)), 5);
    }
  });

  it('keeps boundary it can touch to 1e-9 mm', () => {
    const square = polygon([
      [0, 0],
      [20, 0],
      [20, 20],
      [0, 20],
    ]);
    const [rounded] = roll([square], 2).contours;
    expect(rounded!.length).toBe(8);
    const lines = rounded!.filter((e) => e.r === 0);
    expect(lines.map((e) => Math.max(Math.abs(e.x1 - e.x0), Math.abs(e.y1 - e.y0)))).toEqual([
      16, 16, 16, 16,
    ]);
    for (const e of rounded!.filter((x) => x.r !== 0)) expect(e.r).toBe(2);
  });
});

function interiorAngle(points: readonly (readonly number[])[], i: number): number {
  const [p, q, s] = [points[i - 1]!, points[i]!, points[(i + 1) % points.length]!];
  const u = Math.atan2(p[1]! - q[1]!, p[0]! - q[0]!);
  const v = Math.atan2(s[1]! - q[1]!, s[0]! - q[0]!);
  const a = (u - v + 4 * Math.PI) % (2 * Math.PI);
  return a;
}

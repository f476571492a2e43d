import { describe, expect, it, test } from 'vitest';
import { arc, curve, straight } from '../../src/bowl/profile.js';
import { Refusal } from '../../src/schema/fault.js';

describe('an arc', () => {
  it('goes through its ends and the top of its belly, all on one circle', () => {
    for (const belly of [4, -4, 12]) {
      const a = arc(10, 90, 40, 60, belly);
      expect(a.radius(10)).toBeCloseTo(40, 9);
      expect(a.radius(90)).toBeCloseTo(60, 9);
      // The middle of the chord, and from there square to it by the belly.
      const [dz, dr] = [80, 20];
      const chord = Math.hypot(dz, dr);
      expect(a.radius(50 - (belly * dr) / chord)).toBeCloseTo(50 + (belly * dz) / chord, 9);
    }
  });

  it('is as round as its sagitta says', () => {
    // Chord 80, sagitta 10: R = 80^2 / (8 * 10) + 10 / 2.
    expect(arc(0, 80, 50, 50, 10).hollow(40)).toBeCloseTo(85, 9);
    expect(arc(0, 80, 50, 50, -10).hollow(40)).toBeCloseTo(-85, 9);
  });

  test.each([
    [80, 20, 22.5],
    [30, 60, 7.6],
  ])(
    'over %s mm of height and %s of radius is refused once it turns back, with the belly that works',
    (dz, dr, most) => {
      const made = (belly: number) => () => arc(0, dz, 40, 40 + dr, belly);
      let said = '';
      try {
        made(most + 30)();
      } catch (e) {
        expect(e).toBeInstanceOf(Refusal);
        said = (e as Error).message;
      }
      const works = Number(/less than ([\d.]+) mm of belly/.exec(said)![1]);
      // c dz / (2 (c + dr)), from the tangent at the end.
      const c = Math.hypot(dz, dr);
      expect(works).toBeCloseTo((c * dz) / (2 * (c + dr)), 0);
      expect(made(works - 0.05)).not.toThrow();
      expect(made(works + 0.2)).toThrow(Refusal);
    },
  );
});

describe('a curve through points', () => {
  const points = [
    [0, 30],
    [20, 52],
    [55, 60],
    [80, 60],
    [110, 48],
  ] as const;
  const c = curve(points);

  it('goes through them all', () => {
    for (const [z, r] of points) expect(c.radius(z)).toBeCloseTo(r, 9);
  });

  it('bulges beyond none of them', () => {
    for (let z = 0; z <= 110; z += 0.25) {
      const k = points.findLastIndex(([at]) => at <= z);
      const [low, high] = [points[k]![1], (points[k + 1] ?? points[k]!)[1]];
      expect(c.radius(z)).toBeGreaterThanOrEqual(Math.min(low, high) - 1e-9);
      expect(c.radius(z)).toBeLessThanOrEqual(Math.max(low, high) + 1e-9);
    }
  });

  it('has no kink, and leans as its differences say', () => {
    for (let z = 1; z <= 109; z += 0.5) {
      const h = 1e-5;
      expect(c.lean(z)).toBeCloseTo((c.radius(z + h) - c.radius(z - h)) / (2 * h), 4);
    }
  });

  it('is straight through two points, and round where points of a circle are given', () => {
    const two = curve([
      [0, 30],
      [50, 45],
    ]);
    expect(two.radius(20)).toBeCloseTo(straight(0, 50, 30, 45).radius(20), 9);
    const circle = curve(Array.from({ length: 41 }, (_, k) => [k, Math.sqrt(60 * 60 - k * k)] as const));
    expect(circle.radius(20.5)).toBeCloseTo(Math.sqrt(3600 - 20.5 * 20.5), 3);
    expect(circle.hollow(20.5)).toBeGreaterThan(50);
    expect(circle.hollow(20.5)).toBeLessThan(70);
  });
});

import { describe, expect, it } from 'vitest';
import { filleted } from '../../src/cutter/fillet.js';
import { isSound, placesByEdges } from '../../src/cutter/tight.js';
import { offset } from '../../src/geometry/offset.js';
import { type Contour, circle, reversedContour } from '../../src/geometry/region.js';
import { randomPolygon, seeded } from '../support/random.js';

const RUNS = 6000;

/** Rounded shapes of one or two contours beside each other, one in the other, or crossing. */
function smooth(seed: number): { contours: Contour[]; r: number } | null {
  const random = seeded(seed * 4057 + 11);
  const r = 0.2 + random() * 1.5;
  // Rounded by r or more, so that only places farther apart can be too tight for r.
  const one = (x: number, y: number) =>
    filleted(randomPolygon(random, x, y, 2 + random() * 8), r * (1 + random()));
  const first = one(0, 0);
  if (!first) return null;
  const kind = seed % 4;
  if (kind === 0) return { contours: [first], r };
  if (kind === 1) {
    const second = one(random() * 14, random() * 14);
    return second && { contours: [first, second], r };
  }
  if (kind === 2)
    return { contours: [first, reversedContour(circle(random() * 2, random() * 2, r * (1 + random())))], r };
  return { contours: [...offset({ contours: [first] }, (random() - 0.5) * r * 0.2).contours], r };
}

const lacks = (contours: Contour[], r: number): boolean => placesByEdges(contours, r, true).length > 0;

describe(`the quick look at ${RUNS} rounded shapes`, () => {
  it('finds the same shapes too tight as the look at every pair of edges', () => {
    const seen = { sound: 0, tight: 0, near: 0 };
    for (let seed = 0; seed < RUNS; seed++) {
      const shape = smooth(seed);
      if (!shape || shape.contours.length === 0) continue;
      const { contours, r } = shape;
      const tight = lacks(contours, r);
      if (isSound(contours, r) === tight) {
        // Only where a hair in the radius decides, and then either may be right.
        expect([lacks(contours, r - 2e-4), lacks(contours, r + 2e-4)], `seed ${seed}`).toEqual([false, true]);
        seen.near++;
      }
      seen[tight ? 'tight' : 'sound']++;
    }
    expect(seen.sound).toBeGreaterThan(RUNS / 4);
    expect(seen.tight).toBeGreaterThan(RUNS / 8);
    expect(seen.near).toBeLessThan(RUNS / 500);
  });
});

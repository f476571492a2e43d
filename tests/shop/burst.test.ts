import { expect, it } from 'vitest';
import { burstLoad, burstPressure, wallStress } from '../../src/shop/burst.js';
import { plateMoments } from './plate.js';

it('bends as the lesser of a cantilever and a beam', () => {
  // Textbook: cantilever M = p h^2 / 2, beam M = p l^2 / 8, stress 6 M / t^2. Wall 2 thick, 8 high, p = 100.
  const wall = { thickness: 2, height: 8 };
  expect(wallStress({ ...wall, length: Number.POSITIVE_INFINITY }, 100)).toBe((6 * 100 * 64) / 2 / 4);
  expect(wallStress({ ...wall, length: 10 }, 100)).toBe((6 * 100 * 100) / 8 / 4);
});

it('is on the safe side of a plate clamped on three edges', () => {
  // Elastic plate by Ritz's method, Poisson's ratio 0.3, moments over p l^2.
  for (const h of [0.25, 0.35, 0.5, 0.75, 1, 1.5]) {
    const { ends, root } = plateMoments(h, 0.3);
    const ours = wallStress({ thickness: 1, height: h, length: 1 }, 1) / 6;
    expect(Math.max(ends, root), `height ${h}`).toBeLessThan(ours);
    expect(Math.max(ends, root), `height ${h}`).toBeGreaterThan(ours / 2);
  }
});

it('has the plate come to the cantilever when it is long', () => {
  // Long wall: p h^2 / 2 at the root, away from the ends.
  expect(plateMoments(0.125, 0.3).root / (0.125 ** 2 / 2)).toBeCloseTo(1, 1);
});

it('bursts where the stress is the tension across the grain', () => {
  // Cherry 3,900 kPa (Wood Handbook FPL-GTR-190 table 5-3a, transcribed). Long wall 2 mm by 8: 3 x 16 = 48.
  const wall = { thickness: 2, height: 8, length: 100 };
  expect(burstPressure('cherry', wall)).toBeCloseTo(3900 / 48, 9);
  expect(burstLoad('cherry', wall, 4000)).toBeCloseTo(325, 9);
  // Not given for maple.
  expect(burstPressure('maple', wall)).toBeNull();
  expect(burstLoad('unobtainium', wall, 4000)).toBeNull();
  expect(() => burstPressure('cherry', { ...wall, thickness: 0 })).toThrow('thickness: is 0 mm');
  expect(() => burstPressure('cherry', { ...wall, length: Number.NaN })).toThrow('length: is not a number');
});

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { clearingPath, equalSteps, parallelPath, secondsFor } from '../../src/shop/passes.js';

it('divides a depth into the fewest equal steps that are not too deep', () => {
  expect(equalSteps(12, 6)).toEqual({ steps: 2, step: 6 });
  expect(equalSteps(12.5, 6.35)).toEqual({ steps: 2, step: 6.25 });
  expect(equalSteps(12.71, 6.35).steps).toBe(3);
  // 2.1 / 0.3 is a last digit over 7.
  expect(equalSteps(2.1, 0.3).steps).toBe(7);
  expect(equalSteps(2, 9)).toEqual({ steps: 1, step: 2 });
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 60, noNaN: true }),
      fc.double({ min: 0.1, max: 60, noNaN: true }),
      (depth, most) => {
        const { steps, step } = equalSteps(depth, most);
        expect(step * steps).toBeCloseTo(depth, 9);
        expect(step).toBeLessThanOrEqual(most * (1 + 1e-6));
        // One fewer would be too deep.
        if (steps > 1) expect(depth / (steps - 1)).toBeGreaterThan(most);
      },
    ),
    { seed: 6 },
  );
});

it('has the path that clears an area', () => {
  // A band 30 x 20 in lines 2.5 apart: 8 lines of 30.
  expect(clearingPath(600, 2.5)).toBe(240);
});

it('has the line beside a boundary', () => {
  // A square of 20 with its corners rounded by 2 outside: 80 + 2 pi 2. A ring of 10 and 5: 2 pi (8 + 7), inside it.
  expect(parallelPath(80, 1, 2)).toBeCloseTo(80 + 4 * Math.PI, 12);
  expect(parallelPath(30 * Math.PI, 0, -2)).toBeCloseTo(2 * Math.PI * (8 + 7), 12);
  expect(parallelPath(2 * Math.PI, 1, -3)).toBe(0);
});

it('takes the time of the path, a tenth more for moves: our own guess', () => {
  // 1,000 mm at 2,000 mm a minute: 30 seconds.
  expect(secondsFor(1000, 2000)).toBeCloseTo(33, 12);
  expect(() => secondsFor(1000, 0)).toThrow('over 0');
});

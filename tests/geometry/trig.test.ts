import { describe, expect, it } from 'vitest';
import { atan, atan2, cos, sin, tan } from '../../src/geometry/trig.js';

// The engine's own functions are within 1 ulp of the true value (fdlibm's stated error), which makes them a fair judge.
describe('own trigonometry', () => {
  it('agrees with the engine to 4e-16 over many turns', () => {
    let worst = 0;
    for (let k = -20_000; k <= 20_000; k++) {
      const x = k * 0.00317;
      worst = Math.max(worst, Math.abs(sin(x) - Math.sin(x)), Math.abs(cos(x) - Math.cos(x)));
    }
    expect(worst).toBeLessThan(4e-16);
  });

  it('gives arctangents to 5e-16, all quadrants', () => {
    let worst = 0;
    for (let k = -4000; k <= 4000; k++) {
      const x = k * 0.013;
      worst = Math.max(worst, Math.abs(atan(x) - Math.atan(x)));
      for (const y of [-2, -0.3, 0, 0.7, 5])
        worst = Math.max(worst, Math.abs(atan2(x, y) - Math.atan2(x, y)));
    }
    expect(worst).toBeLessThan(5e-16);
    expect(atan(Number.POSITIVE_INFINITY)).toBe(Math.PI / 2);
    expect(atan2(0, -1)).toBe(Math.PI);
  });

  it('knows the exact values of the special angles', () => {
    // Closed forms: sin 30 = 1/2, cos 60 = 1/2, tan 45 = 1, sin 36 = sqrt(10 - 2 sqrt 5) / 4.
    expect(sin(Math.PI / 6)).toBeCloseTo(0.5, 15);
    expect(cos(Math.PI / 3)).toBeCloseTo(0.5, 15);
    expect(tan(Math.PI / 4)).toBeCloseTo(1, 15);
    expect(sin(Math.PI / 5)).toBeCloseTo(Math.sqrt(10 - 2 * Math.sqrt(5)) / 4, 15);
  });
});

import { describe, expect, it } from 'vitest';
import { exp, ln, power, wholePower } from '../../src/geometry/power.js';

/** Source of the expected values: the engine's own Math.log, Math.exp and Math.pow, right to an ulp or two. */
describe('powers from + - * /', () => {
  const arguments_ = Array.from({ length: 400 }, (_, i) => 1e-6 * 1.083 ** i);

  it('agree with the logarithm', () => {
    for (const x of arguments_)
      expect(Math.abs(ln(x) - Math.log(x))).toBeLessThan(1e-14 + 4e-16 * Math.abs(Math.log(x)));
    expect(ln(1)).toBe(0);
  });

  it('agree with the exponential', () => {
    for (let x = -40; x <= 40; x += 0.173) expect(Math.abs(exp(x) / Math.exp(x) - 1)).toBeLessThan(1e-14);
    expect(exp(0)).toBe(1);
    expect(exp(-2000)).toBe(0);
  });

  it('agree with the power, 0 and 1 exactly', () => {
    for (const x of arguments_)
      for (const p of [-2.5, -1, 0.08, 0.5, 1, 2.5, 12])
        expect(Math.abs(power(x, p) / x ** p - 1)).toBeLessThan(3e-13);
    expect(power(0, 0.4)).toBe(0);
    expect(power(0, 0)).toBe(1);
    expect(power(1, 7.3)).toBe(1);
  });

  it('whole powers are exact', () => {
    expect([wholePower(2, 40), wholePower(7, 5), wholePower(41, 0), wholePower(3, 33)]).toEqual([
      1099511627776, 16807, 1, 5559060566555523,
    ]);
  });
});

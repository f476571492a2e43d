import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barFor } from '../../../src/page/drawing/scale-bar.js';

const scales = fc.double({ min: 0.01, max: 500, noNaN: true });
const widths = fc.double({ min: 10, max: 600, noNaN: true });

/** 1, 2 and 5 times powers of ten. */
const series = Array.from({ length: 16 }, (_, k) => 10 ** (k - 8)).flatMap((t) => [t, 2 * t, 5 * t]);

describe('a scale bar', () => {
  it('is the longest of 1, 2 and 5 that there is room for, in mm', () => {
    fc.assert(
      fc.property(scales, widths, (scale, longest) => {
        const { mm } = barFor(scale, 'mm', longest);
        expect(mm * scale).toBeLessThanOrEqual(longest * (1 + 1e-9));
        const wanted = series.filter((s) => s * scale <= longest).at(-1)!;
        expect(mm).toBeCloseTo(wanted, 12);
      }),
    );
  });

  it('is so in inches too, and below an inch half of half an inch as often as it takes', () => {
    fc.assert(
      fc.property(scales, widths, (scale, longest) => {
        const { mm, text } = barFor(scale, 'in', longest);
        expect(mm * scale).toBeLessThanOrEqual(longest * (1 + 1e-9));
        const most = longest / scale / 25.4;
        const halves = [2, 4, 8, 16, 32, 64].map((n) => 1 / n);
        const wanted =
          most >= 1 || most < 1 / 64
            ? series.filter((s) => s <= most).at(-1)!
            : halves.find((h) => h <= most)!;
        expect(mm / 25.4).toBeCloseTo(wanted, 12);
        if (most < 1 && most >= 1 / 64) expect(text).toBe(`1/${Math.round(1 / wanted)} in`);
      }),
    );
  });

  it('says its own length', () => {
    fc.assert(
      fc.property(scales, widths, fc.constantFrom('mm', 'in'), (scale, longest, units) => {
        const { mm, text } = barFor(scale, units as 'mm' | 'in', longest);
        const [, over, under, unit] = /^([\d.]+)(?:\/(\d+))? (mm|in)$/.exec(text)!;
        expect(unit).toBe(units);
        const said = Number(over) / Number(under ?? 1);
        expect(said * (unit === 'in' ? 25.4 : 1)).toBeCloseTo(mm, 5);
      }),
    );
  });

  it.each([
    [1, 'mm', 100, 100, '100 mm'],
    [1, 'mm', 99.9, 50, '50 mm'],
    [4, 'mm', 100, 20, '20 mm'],
    [400, 'mm', 130, 0.2, '0.2 mm'],
    [400, 'mm', 30, 0.05, '0.05 mm'],
    [1, 'in', 130, 127, '5 in'],
    [10, 'in', 130, 12.7, '1/2 in'],
    // 130 / 400 / 25.4 is 0.0128, which is less than 1/64.
    [400, 'in', 130, 0.254, '0.01 in'],
  ] as const)('at %f pixels a mm, in %s, with room for %f, is %f mm', (scale, units, longest, mm, text) => {
    expect(barFor(scale, units, longest).mm).toBeCloseTo(mm, 12);
    expect(barFor(scale, units, longest).text).toBe(text);
  });

  it.each([0, -20, 1e-300, Number.NaN])('of nothing is all there is room for in %f pixels', (longest) => {
    for (const units of ['mm', 'in'] as const)
      expect(barFor(4, units, longest)).toEqual({ mm: 0, text: `0 ${units}` });
  });

  it('of nothing is also what a scale of nothing has', () => {
    expect(barFor(0, 'mm', 100).mm).toBe(0);
    expect(barFor(Number.POSITIVE_INFINITY, 'mm', 100).mm).toBe(0);
  });
});

import { expect, it } from 'vitest';
import { fromPsi, fromTons, KPA_PER_PSI, toKilonewtons, toPsi, toTons } from '../../src/shop/conversions.js';
import { pressPressure, pressure } from '../../src/shop/press.js';

it('converts loads and pressures', () => {
  // US ton-force 8.896443230521 kN: transcribed. Metric 9.80665 kN; 1 psi = 6.894757 kPa: from memory (NIST SP 811).
  expect(toKilonewtons(fromTons(1, 'us'))).toBeCloseTo(8.896443230521, 12);
  expect(toKilonewtons(fromTons(1, 'metric'))).toBe(9.80665);
  expect(KPA_PER_PSI).toBeCloseTo(6.894757, 6);
  expect(toTons(fromTons(7.3, 'us'), 'us')).toBeCloseTo(7.3, 12);
  expect(toPsi(fromPsi(123))).toBeCloseTo(123, 12);
});

it('gives the pressure of a press', () => {
  // 20 US tons on 12 x 12 in: 277.8 psi, 1,915 kPa. Computed beforehand: 40,000 lbf / 144 in2.
  const kPa = pressPressure(20, 'us', 304.8 * 304.8);
  expect(toPsi(kPa)).toBeCloseTo(40_000 / 144, 9);
  expect(kPa).toBeCloseTo(1915.2, 1);
  expect(pressure(1000, 1000)).toBe(1000);
  expect(() => pressure(1000, 0)).toThrow('area: is 0 mm2: give a value over 0 mm2');
});

import { expect, it } from 'vitest';
import { BadInput } from '../../src/schema/fault.js';
import { equilibriumMoisture } from '../../src/shop/moisture.js';

const celsius = (f: number): number => ((f - 32) * 5) / 9;

it('gives the table of equilibrium moisture contents', () => {
  // Wood Handbook FPL-GTR-282 table 4-2, p. 4-4, read in transcriptions: degrees F, % humidity, % moisture.
  const table: readonly [number, number, number][] = [
    [70, 5, 1.3],
    [70, 20, 4.5],
    [70, 30, 6.2],
    [70, 40, 7.7],
    [70, 50, 9.2],
    [70, 60, 11.0],
    [70, 65, 12.0],
    [70, 75, 14.4],
    [70, 80, 16.0],
    [70, 85, 17.9],
    [70, 95, 23.9],
    [30, 75, 14.9],
    [30, 95, 24.3],
    [100, 50, 8.7],
    [100, 90, 19.5],
    // From memory:
    [40, 50, 9.5],
    [40, 90, 21.0],
  ];
  // Half a unit of the table's last place; the equation gives 17.95 for the 17.9 at 85 %.
  for (const [f, rh, emc] of table)
    expect(Math.abs(equilibriumMoisture(celsius(f), rh) - emc), `${f} F ${rh} %`).toBeLessThan(
      rh === 85 ? 0.06 : 0.05,
    );
});

it('agrees with the Fahrenheit set of the same equation', () => {
  // Wood Handbook FPL-GTR-282 equation (4-5), p. 4-3, Fahrenheit set, read in a transcription. The two sets agree within
  // 0.02 from -1 to 38 C: computed beforehand.
  for (let f = 31; f <= 100; f += 3)
    for (let rh = 5; rh <= 95; rh += 5) {
      const w = 330 + 0.452 * f + 0.00415 * f ** 2;
      const k = 0.791 + 0.000463 * f - 0.000000844 * f ** 2;
      const k1 = 6.34 + 0.000775 * f - 0.0000935 * f ** 2;
      const k2 = 1.09 + 0.0284 * f - 0.0000904 * f ** 2;
      const kh = (k * rh) / 100;
      const emc =
        (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2));
      expect(Math.abs(equilibriumMoisture(celsius(f), rh) - emc), `${f} F ${rh} %`).toBeLessThan(0.03);
    }
});

it('keeps near the rule of thumb at room temperature', () => {
  // 30 % ~ 6, 50 % ~ 9, 65 % ~ 12, 80 % ~ 16: trade article, published; whole numbers.
  for (const [rh, emc] of [
    [30, 6],
    [50, 9],
    [65, 12],
    [80, 16],
  ] as const)
    expect(Math.abs(equilibriumMoisture(21, rh) - emc)).toBeLessThan(0.5);
});

it('refuses what the table does not cover, naming the value and its range', () => {
  expect(() => equilibriumMoisture(-5, 50)).toThrow(
    'temperature: is -5 degrees C: give a value from -1.2 to 132.3 degrees C',
  );
  expect(() => equilibriumMoisture(20, 100)).toThrow('humidity: is 100 %: give a value from 5 to 95 %');
  expect(() => equilibriumMoisture(20, Number.NaN)).toThrow(BadInput);
  expect(() => equilibriumMoisture(20, Number.NaN)).not.toThrow('NaN');
});

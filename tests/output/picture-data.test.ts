import { describe, expect, it } from 'vitest';
import { circle } from '../../src/geometry/region.js';
import { frameOf } from '../../src/output/ring.js';
import { pathData, pictureData } from '../../src/output/svg.js';

const CONTOURS = [circle(1.23456789, -2.3456789, 7.654321)];
const numbers = (data: string): string[] => data.match(/-?\d+(?:\.\d+)?/g) ?? [];

describe.each([
  ['mm', 2, 0.005],
  ['in', 4, 0.00005],
] as const)('what is looked at, in %s', (units, places, half) => {
  it(`has ${places} decimals, and is what is cut to within half of the last`, () => {
    const frame = frameOf({ width: 40, height: 30 }, units);
    const [cut, seen] = [numbers(pathData(CONTOURS, frame)), numbers(pictureData(CONTOURS, frame))];
    expect(seen).toHaveLength(cut.length);
    expect(Math.max(...cut.map((n) => (n.split('.')[1] ?? '').length))).toBe(6);
    expect(Math.max(...seen.map((n) => (n.split('.')[1] ?? '').length))).toBe(places);
    for (const [k, n] of seen.entries())
      expect(Math.abs(Number(n) - Number(cut[k]))).toBeLessThanOrEqual(half + 1e-9);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/page/drawing/camera.js';
import { dimension } from '../../../src/page/drawing/dimension.js';

const point = fc.tuple(
  fc.double({ min: -900, max: 900, noNaN: true }),
  fc.double({ min: -900, max: 900, noNaN: true }),
);

/** The points of a path of M, L and Z, chain by chain. */
function chains(d: string): Point[][] {
  return d
    .split('M')
    .slice(1)
    .map((c) =>
      c
        .replace('Z', '')
        .split('L')
        .map((p) => {
          const [x, y] = p.split(' ').map(Number);
          return [x, y] as const;
        }),
    );
}

const far = ([a, b]: Point, [c, d]: Point): number => Math.hypot(c - a, d - b);

describe('a dimension', () => {
  it('runs from point to point, with the tip of an arrow on each', () => {
    const { line, heads, words } = dimension([10, 20], [110, 20]);
    expect(chains(line)).toEqual([[[10, 20], [110, 20]]]); // biome-ignore format: one line
    const [left, right] = chains(heads);
    expect(left).toEqual([[10, 20], [19, 23], [19, 17]]); // biome-ignore format: one arrow
    expect(right).toEqual([[110, 20], [101, 17], [101, 23]]); // biome-ignore format: one arrow
    expect(words).toEqual([60, 4]);
  });

  it('that is short has its arrows outside, pointing in', () => {
    const { line, heads } = dimension([0, 0], [20, 0]);
    expect(chains(line)).toEqual([[[-20, 0], [40, 0]]]); // biome-ignore format: one line
    const [left, right] = chains(heads);
    expect(left[0]).toEqual([0, 0]);
    expect(right[0]).toEqual([20, 0]);
    for (const [x] of left.slice(1)) expect(x).toBe(-9);
    for (const [x] of right.slice(1)) expect(x).toBe(29);
  });

  it('in any direction has tips on its ends, bases on one side of them, and words 16 pixels off its middle', () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        fc.pre(far(a, b) > 0.01);
        const { line, heads, words } = dimension(a, b);
        const [[from, to]] = chains(line);
        const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        expect(far(words, middle)).toBeCloseTo(16, 6);
        // At right angles to the line, and never below it: with y down that is no larger y.
        const [ux, uy] = [(b[0] - a[0]) / far(a, b), (b[1] - a[1]) / far(a, b)];
        expect((words[0] - middle[0]) * ux + (words[1] - middle[1]) * uy).toBeCloseTo(0, 6);
        expect(words[1]).toBeLessThanOrEqual(middle[1] + 1e-9);
        const short = far(a, b) < 27;
        expect(far(from, to)).toBeCloseTo(far(a, b) + (short ? 40 : 0), 6);
        const tips = chains(heads);
        [a, b].forEach((end, k) => {
          expect(far(tips[k][0], end)).toBeLessThan(1e-9);
          for (const base of tips[k].slice(1)) {
            expect(far(base, end)).toBeCloseTo(Math.hypot(9, 3), 6);
            const along = ((base[0] - end[0]) * ux + (base[1] - end[1]) * uy) * (k === 0 ? 1 : -1);
            expect(along).toBeCloseTo(short ? -9 : 9, 6);
          }
        });
      }),
    );
  });

  it('of nothing has no numbers that are none', () => {
    const { line, heads, words } = dimension([5, 5], [5, 5]);
    expect(`${line}${heads}${words}`).not.toMatch(/NaN|Infinity/);
  });
});

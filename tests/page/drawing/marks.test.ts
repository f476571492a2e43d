import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beside, standing } from '../../../src/page/drawing/marks.js';
import type { Pencilled } from '../../../src/page/worker/protocol.js';

function finding(number: number, at: readonly [number, number] | null): Pencilled {
  return { number, code: 'thin-walls', severity: 'warn', do: 'Mind it.', at, areas: '', lines: '' };
}

const coordinate = fc.double({ min: -200, max: 200, noNaN: true });
const findings = fc
  .array(fc.option(fc.tuple(coordinate, coordinate), { freq: 5 }), { maxLength: 24 })
  .map((all) => all.map((at, k) => finding(k + 1, at)));

const far = ([a, b]: readonly [number, number], [c, d]: readonly [number, number]): number =>
  Math.hypot(c - a, d - b);

describe('where marks stand', () => {
  it('no two discs meet, however many point at much the same place', () => {
    const scales = fc.double({ min: 0.2, max: 60, noNaN: true });
    fc.assert(
      fc.property(findings, scales, (all, scale) => {
        const discs = standing(all, scale, 12).map((m) => m.disc);
        for (let i = 0; i < discs.length; i++)
          for (let j = 0; j < i; j++) expect(far(discs[i], discs[j])).toBeGreaterThanOrEqual(24);
      }),
    );
  });

  it('all that point at one place stand round it', () => {
    const all = Array.from({ length: 17 }, (_, k) => finding(k + 1, [7, -3]));
    const marks = standing(all, 4, 12);
    for (const { at } of marks) expect(far(at, [28, -12])).toBeLessThan(1e-6);
    expect(far(marks[0].disc, marks[0].at)).toBeLessThan(1e-6);
    expect(Math.max(...marks.map((m) => far(m.disc, m.at)))).toBeLessThan(12 * 8);
    for (let i = 0; i < marks.length; i++)
      for (let j = 0; j < i; j++) expect(far(marks[i].disc, marks[j].disc)).toBeGreaterThanOrEqual(24);
  });

  it('each points at its own finding, in pixels at the zoom; those about the whole job stand nowhere', () => {
    fc.assert(
      fc.property(findings, fc.double({ min: 0.2, max: 60, noNaN: true }), (all, scale) => {
        const marks = standing(all, scale, 12);
        expect(marks.map((m) => m.finding)).toEqual(all.filter((f) => f.at));
        for (const { finding: f, at } of marks)
          expect(far(at, [f.at![0] * scale, f.at![1] * scale])).toBeLessThan(1e-6);
      }),
    );
  });

  it('a mark with room stands on its place, at any zoom', () => {
    const all = [finding(1, [0, 0]), finding(2, [10, 0])];
    const near = standing(all, 1, 12);
    expect(far(near[0].disc, near[0].at)).toBeLessThan(1e-6);
    expect(far(near[1].disc, near[1].at)).toBeGreaterThan(1);
    for (const { disc, at } of standing(all, 3, 12)) expect(far(disc, at)).toBeLessThan(1e-6);
  });
});

describe('the mark beside one', () => {
  const all = [finding(1, [0, 0]), finding(2, null), finding(3, [1, 1]), finding(4, [2, 2])];

  it.each([
    [1, 1, 3],
    [3, 1, 4],
    [4, 1, 1],
    [1, -1, 4],
    [3, -1, 1],
    [null, 1, 1],
    [null, -1, 1],
    [2, 1, 1],
    [99, -1, 1],
  ] as const)('after %s, going %i, is %i', (number, step, wanted) => {
    expect(beside(all, number, step)?.number).toBe(wanted);
  });

  it('is itself where it is the only one, and none where none is placed', () => {
    expect(beside([finding(5, [0, 0])], 5, 1)?.number).toBe(5);
    expect(beside([finding(5, [0, 0])], 5, -1)?.number).toBe(5);
    expect(beside([finding(1, null)], null, 1)).toBeUndefined();
    expect(beside([], 3, 1)).toBeUndefined();
  });
});

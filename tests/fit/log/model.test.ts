import { describe, expect, it } from 'vitest';
import { choose, split } from '../../../src/fit/log/choose.js';
import { RESULTS, type Result, type Tried } from '../../../src/fit/log/entry.js';
import { believe, type Trial } from '../../../src/fit/log/model.js';
import { borders, chanceAt, chances, surest, widest } from '../../../src/fit/log/range.js';

const t = (clearance: number, result: Result, tried: Tried = 'glued'): Trial => ({
  clearance,
  result,
  tried,
});
const sum = (rows: readonly Float64Array[]): number =>
  rows.reduce((s, r) => s + r.reduce((a, b) => a + b, 0), 0);

/**
 * The same question answered by brute force: every combination of the four borders, the swell and the spread, weighed
 * one by one with the engine's own exp (cumulative logistic model, McCullagh 1980). Slow, so on chosen good ranges only:
 * returns the ratios of their weights.
 */
function weighed(trials: readonly Trial[], ranges: readonly (readonly [number, number])[]): number[] {
  const steps = (from: number, to: number, by: number): number[] =>
    Array.from({ length: Math.round((to - from) / by) + 1 }, (_, k) => from + k * by);
  const logistic = (x: number): number => 1 / (1 + Math.exp(-1.702 * x));
  const weights = ranges.map(([t2, t3]) => {
    let total = 0;
    for (const sigma of [0.005, 0.01, 0.02, 0.03])
      for (const swell of steps(0, 0.06, 0.01))
        for (const a of steps(0.01, 0.1, 0.005))
          for (const b of steps(0.01, 0.12, 0.005)) {
            const at = [-1e9, t2 - a, t2, t3, t3 + b, 1e9];
            let product = 1;
            for (const { clearance, result, tried } of trials) {
              const c = clearance + (tried === 'dry' ? swell : 0);
              const k = RESULTS.indexOf(result);
              const inside = logistic((c - at[k]!) / sigma) - logistic((c - at[k + 1]!) / sigma);
              product *= 0.95 * inside + 0.01;
            }
            total += product;
          }
    return total;
  });
  return weights.map((w) => w / weights[0]!);
}

const COUPON = [
  t(0.04, 'tight', 'dry'),
  t(0.08, 'good', 'dry'),
  t(0.12, 'good', 'dry'),
  t(0.16, 'loose', 'dry'),
  t(0.04, 'cracked'),
  t(0.08, 'tight'),
  t(0.12, 'good'),
  t(0.16, 'good'),
  t(0.2, 'gappy'),
];

describe('belief', () => {
  it.each([
    ['a coupon', COUPON],
    [
      'a contradictory log',
      [t(0.05, 'gappy'), t(0.05, 'gappy'), t(0.1, 'good'), t(0.2, 'tight'), t(0.1, 'cracked', 'dry')],
    ],
  ])('weighs %s as brute force does', (_, trials) => {
    const ranges = [
      [0.0925, 0.1725],
      [0.0925, 0.1425],
      [0.1125, 0.1725],
      [0.0525, 0.0725],
      [0.2025, 0.2925],
      [-0.0075, 0.0825],
    ] as const;
    const { first, width, weight } = believe(trials);
    const mine = ranges.map(([t2, t3]) => {
      const i = first.findIndex((x) => Math.abs(x - t2) < 1e-9);
      const k = width.findIndex((x) => Math.abs(x - (t3 - t2)) < 1e-9);
      return weight[i]![k]!;
    });
    const reference = weighed(trials, ranges);
    // The model rounds distances to 1/4000 mm; on these logs that moves a weight by a hundredth at most.
    mine.forEach((w, k) => {
      expect(w / mine[0]! / reference[k]!).toBeGreaterThan(0.99);
      expect(w / mine[0]! / reference[k]!).toBeLessThan(1.01);
    });
  });

  it('adds up to one and is flat while nothing is known', () => {
    const { weight } = believe([]);
    expect(sum(weight)).toBeCloseTo(1, 12);
    const all = weight.flatMap((row) => [...row]);
    expect(Math.max(...all) / Math.min(...all)).toBeCloseTo(1, 9);
    expect(sum(believe(COUPON).weight)).toBeCloseTo(1, 12);
  });

  it('stands a thousand results, agreeing or absurd, without running out of numbers', () => {
    const many = (k: number): Trial[] => Array.from({ length: 1000 }, () => COUPON[k]!);
    const absurd = [
      ...many(6),
      ...Array.from({ length: 500 }, () => [t(0, 'gappy'), t(1, 'cracked')]).flat(),
    ];
    const scattered = Array.from({ length: 400 }, (_, k) => [
      t(k / 4000, 'gappy'),
      t(0.2 + k / 4000, 'cracked'),
    ]).flat();
    for (const trials of [many(6), absurd, scattered]) {
      const { weight } = believe(trials);
      expect(sum(weight)).toBeCloseTo(1, 9);
      expect(weight.every((row) => row.every((w) => w >= 0))).toBe(true);
      expect(weight.some((row) => row.some((w) => w > 0 && w < 1))).toBe(true);
    }
  });

  it('moves the way a result points', () => {
    const before = believe(COUPON);
    for (const [result, way] of [
      ['tight', 1],
      ['loose', -1],
    ] as const) {
      const after = believe([...COUPON, t(0.12, result), t(0.12, result)]);
      const shift = surest(after).clearance - surest(before).clearance;
      expect(Math.sign(shift), result).toBe(way);
    }
    expect(chanceAt(believe([...COUPON, t(0.14, 'good')]), 0.14)).toBeGreaterThan(chanceAt(before, 0.14));
  });

  it('puts the glued range above the dry one: glue makes a fit tighter', () => {
    const results: [number, Result][] = [
      [0.04, 'tight'],
      [0.08, 'good'],
      [0.12, 'loose'],
    ];
    const dry = surest(believe(results.map(([c, r]) => t(c, r, 'dry'))));
    const glued = surest(believe(results.map(([c, r]) => t(c, r))));
    expect(dry.clearance).toBeGreaterThan(glued.clearance + 0.01);
    // What glue does is unknown as long as nothing was glued.
    expect(dry.confidence).toBeLessThan(glued.confidence);
    // Both coupons together tell by how much: here 0.04 mm, one step.
    const both = believe([
      ...[t(0.04, 'good', 'dry'), t(0.08, 'good', 'dry'), t(0.12, 'loose', 'dry'), t(0.16, 'gappy', 'dry')],
      ...[t(0.04, 'tight'), t(0.08, 'good'), t(0.12, 'good'), t(0.16, 'loose'), t(0.2, 'gappy')],
    ]);
    expect(both.swell).toBeGreaterThan(0.03);
    expect(both.swell).toBeLessThan(0.05);
  });

  it('follows results far outside the usual', () => {
    const wide = [t(0.5, 'cracked'), t(0.6, 'tight'), t(0.66, 'good'), t(0.7, 'good'), t(0.8, 'gappy')];
    const { clearance } = surest(believe(wide));
    expect(clearance).toBeGreaterThan(0.62);
    expect(clearance).toBeLessThan(0.74);
  });
});

describe('the good range', () => {
  const belief = believe(COUPON);

  it('has chances that are sums over the ranges that hold the clearance', () => {
    const all = chances(belief);
    for (const c of [0, 0.05, 0.1, 0.14, 0.2]) {
      let expected = 0;
      for (const [i, t2] of belief.first.entries())
        for (const [k, w] of belief.width.entries())
          if (c > t2 && c < t2 + w) expected += belief.weight[i]![k]!;
      expect(all[Math.round(c / 0.005)], `${c}`).toBeCloseTo(expected, 12);
    }
  });

  it('is good all over with the confidence asked for, and no wider one is', () => {
    const good = widest(belief, 0.8)!;
    const both = (from: number, to: number): number => {
      let p = 0;
      for (const [i, t2] of belief.first.entries())
        for (const [k, w] of belief.width.entries()) if (t2 < from && t2 + w > to) p += belief.weight[i]![k]!;
      return p;
    };
    expect(both(good.from, good.to)).toBeCloseTo(good.confidence, 12);
    expect(good.confidence).toBeGreaterThanOrEqual(0.8);
    const wider = good.to - good.from + 0.005;
    for (let from = 0; from < 0.3; from += 0.005) expect(both(from, from + wider)).toBeLessThan(0.8);
    expect(widest(believe([]), 0.8)).toBeNull();
  });

  it('has ends in order', () => {
    const { tightest, loosest, width } = borders(belief);
    expect(tightest[0]).toBeLessThan(tightest[1]);
    expect(tightest[1]).toBeLessThan(loosest[0]);
    expect(loosest[0]).toBeLessThan(loosest[1]);
    expect(width).toBeGreaterThan(loosest[0] - tightest[1]);
  });
});

describe('the next ladder', () => {
  it('splits what is possible better than the ladders beside it', () => {
    const belief = believe(COUPON.slice(0, 4));
    const best = choose(belief, 5, 0.02);
    expect(best).toHaveLength(5);
    for (const by of [-0.02, -0.01, 0.01, 0.02])
      expect(split(belief, best)).toBeGreaterThanOrEqual(
        split(
          belief,
          best.map((c) => c + by),
        ) - 1e-6,
      );
    for (let k = 1; k < 5; k++) expect(best[k]! - best[k - 1]!).toBeGreaterThanOrEqual(0.02 - 1e-9);
  });

  it('has an entropy of ln 2 for two even halves and of 0 when nothing is split', () => {
    // Shannon 1948.
    const even = {
      first: [0.0475, 0.0975],
      width: [0.02],
      weight: [Float64Array.of(0.5), Float64Array.of(0.5)],
      swell: 0,
      sigma: 0.01,
    };
    expect(split(even, [0.08])).toBeCloseTo(Math.LN2, 12);
    expect(split(even, [0.01, 0.3])).toBe(0);
  });

  it('keeps to steps that the machine can hold', () => {
    const rough = choose(believe(COUPON), 4, 0.045);
    for (let k = 1; k < 4; k++) expect(rough[k]! - rough[k - 1]!).toBeGreaterThanOrEqual(0.045);
  });
});

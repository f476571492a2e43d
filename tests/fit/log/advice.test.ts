import { describe, expect, it } from 'vitest';
import { advise, ENOUGH } from '../../../src/fit/log/advice.js';
import { contradictions, suspects } from '../../../src/fit/log/contradictions.js';
import { assumedLadder, couponLadder, stepsText } from '../../../src/fit/log/coupon-ladder.js';
import type { Result, Tried } from '../../../src/fit/log/entry.js';
import type { Trial } from '../../../src/fit/log/model.js';

const t = (clearance: number, result: Result, tried: Tried = 'glued'): Trial => ({
  clearance,
  result,
  tried,
});

/** What a maker whose glued fits are good from 0.09 to 0.15 mm and whose glue takes up 0.03 mm sees, without noise. */
const CLEAR = [
  t(0.04, 'tight', 'dry'),
  t(0.08, 'good', 'dry'),
  t(0.12, 'good', 'dry'),
  t(0.16, 'loose', 'dry'),
  t(0.2, 'gappy', 'dry'),
  t(0.04, 'cracked'),
  t(0.08, 'tight'),
  t(0.12, 'good'),
  t(0.16, 'loose'),
  t(0.2, 'gappy'),
];
const SECOND = [t(0.1, 'good'), t(0.12, 'good'), t(0.14, 'good')];

describe('contradictions', () => {
  const places = (trials: readonly Trial[]): number[][] =>
    contradictions(trials, 0.02).map((c) => [trials.indexOf(c.looser), trials.indexOf(c.tighter)]);

  it('are none in results that grow with the clearance, or that noise explains', () => {
    expect(contradictions([...CLEAR, ...SECOND], 0.02)).toEqual([]);
    // Neighbouring results a step of the machine apart, and at one place: a border lies there.
    expect(contradictions([t(0.1, 'good'), t(0.12, 'tight'), t(0.1, 'tight')], 0.02)).toEqual([]);
  });

  it('are a looser result at a clearance that is smaller by more than the noise', () => {
    expect(places([t(0.1, 'good'), t(0.14, 'tight')])).toEqual([[0, 1]]);
    expect(places([t(0.14, 'tight'), t(0.1, 'loose')])).toEqual([[1, 0]]);
    // At one clearance, two results with another between them.
    expect(places([t(0.1, 'loose'), t(0.1, 'tight')])).toEqual([[0, 1]]);
    // A machine that repeats worse explains more.
    expect(contradictions([t(0.1, 'good'), t(0.14, 'tight')], 0.04)).toEqual([]);
  });

  it('heed that glue makes a fit tighter, never looser', () => {
    // A dry fit may be looser than a glued one of more clearance ...
    expect(places([t(0.1, 'good', 'dry'), t(0.14, 'tight')])).toEqual([]);
    // ... and a glued one may not be looser than a dry one of as much or more.
    expect(places([t(0.1, 'good'), t(0.14, 'tight', 'dry')])).toEqual([[0, 1]]);
  });

  it('are laid to the one result that explains them all, or to both of a pair', () => {
    const slip = t(0.06, 'gappy');
    expect([...suspects(contradictions([...CLEAR, slip], 0.02))]).toEqual([slip]);
    const pair = [t(0.1, 'good'), t(0.14, 'tight')];
    expect(suspects(contradictions(pair, 0.02))).toEqual(new Set(pair));
    expect(suspects([])).toEqual(new Set());
  });
});

describe('advice', () => {
  it('starts with the usual ladder, wider for a rough machine', () => {
    expect(advise([])).toMatchObject({
      do: 'start',
      ladder: [0.04, 0.08, 0.12, 0.16, 0.2],
      use: null,
      good: null,
    });
    expect(advise([], { steps: 5, repeatability: 0.05 }).ladder).toEqual([0.04, 0.09, 0.14, 0.19, 0.24]);
  });

  it('is the same whatever order the results come in', () => {
    const trials = [...CLEAR, t(0.06, 'gappy')];
    const [a, b] = [advise(trials), advise(trials.toReversed())];
    for (const key of ['do', 'ladder', 'use', 'good', 'borders', 'swell', 'spread', 'because'] as const)
      expect(b[key], key).toEqual(a[key]);
  });

  it('goes on, around the borders, after one coupon of a maker, and stops in the good range when it is sure', () => {
    const first = advise(CLEAR);
    expect(first.do === 'stop' || first.ladder!.every((c) => c >= 0.04 && c <= 0.2)).toBe(true);
    const second = advise([...CLEAR, ...SECOND, t(0.16, 'loose')]);
    expect(second).toMatchObject({ do: 'stop', ladder: null, because: 'sure', contradictions: [] });
    expect(second.use!.confidence).toBeGreaterThanOrEqual(ENOUGH);
    expect(second.use!.clearance).toBeGreaterThan(0.09);
    expect(second.use!.clearance).toBeLessThan(0.15);
    expect(second.good!.from).toBeLessThan(second.good!.to);
  });

  it('never stops before a glued fit was good, however sure the dry ones are', () => {
    const dry = Array.from({ length: 6 }, () => CLEAR.filter((x) => x.tried === 'dry')).flat();
    const surer = [
      ...dry,
      ...Array.from({ length: 3 }, () => [t(0.06, 'tight'), t(0.1, 'tight'), t(0.16, 'loose')]).flat(),
    ];
    expect(advise(surer).do).toBe('go on');
    expect(advise([...CLEAR, ...SECOND].filter((x) => x.result !== 'good' || x.tried === 'dry')).do).toBe(
      'go on',
    );
  });

  it('does not stop on an answer that hangs on results in doubt, and stops when it does not', () => {
    const slip = t(0.04, 'gappy');
    const sound = [...CLEAR, ...SECOND, t(0.16, 'loose')];
    const told = advise([...sound, slip]);
    expect(told.doubted).toEqual([slip]);
    expect(told).toMatchObject({ do: 'stop' });
    // One good result far out, the other end of the range known from nothing else: without it the answer is unsure.
    const hangs = [
      t(0.05, 'cracked'),
      t(0.04, 'tight'),
      t(0.09, 'tight'),
      t(0.09, 'tight'),
      t(0.11, 'tight'),
      t(0.08, 'good'),
      t(0.11, 'good'),
      t(0.16, 'good'),
    ];
    const doubtful = advise(hangs);
    expect(doubtful.use!.confidence).toBeGreaterThanOrEqual(ENOUGH);
    expect(doubtful.doubted).toEqual([t(0.08, 'good'), t(0.11, 'tight')]);
    expect(doubtful).toMatchObject({ do: 'go on', because: 'contradicted' });
    expect(doubtful.ladder).toHaveLength(5);
  });

  it('goes on while no clearance is good with 95 % confidence', () => {
    const unsure = advise(CLEAR.filter((x) => x.tried === 'glued'));
    expect(unsure).toMatchObject({ do: 'go on', because: 'unsure' });
    expect(unsure.use!.confidence).toBeGreaterThan(0.5);
    expect(unsure.use!.confidence).toBeLessThan(0.95);
  });
});

describe('the ladder a step refers to', () => {
  const coupon = (...ladder: number[]) => ({ version: 1, kind: 'coupon', ladder }) as const;
  it('is that of the coupon last drawn, or the usual one', () => {
    expect(couponLadder([])).toBeNull();
    expect(couponLadder([coupon(0.1, 0.2), coupon(0.06, 0.08)])).toEqual([0.06, 0.08]);
    expect(assumedLadder([coupon(0.1, 0.2)])).toEqual({ steps: [0.1, 0.2], assumed: false });
    expect(assumedLadder([])).toEqual({ steps: [0.04, 0.08, 0.12, 0.16, 0.2], assumed: true });
    expect(stepsText([0.06, 0.1])).toBe('1 (0.06 mm), 2 (0.1 mm)');
  });
});

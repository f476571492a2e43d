import { describe, expect, it, test } from 'vitest';
import type { CountParameter, LengthParameter, NumberParameter } from '../../src/schema/parameter.js';
import { type Measurable, usualRange } from '../../src/schema/usual.js';
import { described } from './described.js';

const measurable = described.flatMap(([where, p]) =>
  'min' in p ? [[where, p] as const satisfies readonly [string, Measurable]] : [],
);

const length = (value: number, min: number, max: number): LengthParameter => ({
  kind: 'length',
  name: 'gap',
  meaning: 'Gap.',
  default: value,
  min,
  max,
});
const count = (value: number, min: number, max: number, name = 'points'): CountParameter => ({
  ...length(value, min, max),
  kind: 'count',
  name,
});
const number = (value: number, min: number, max: number): NumberParameter => ({
  ...length(value, min, max),
  kind: 'number',
});

/** Where the rule is broken, with the range there. */
function broken(keeps: (p: Measurable, low: number, high: number) => boolean): string[] {
  return measurable
    .filter(([, p]) => !keeps(p, ...usualRange(p)))
    .map(([where, p]) => `${where}: ${usualRange(p).join(' to ')}`);
}

describe('every usual range', () => {
  it('holds the default, within what is allowed', () => {
    expect(broken((p, low, high) => low < high && low <= p.default && p.default <= high)).toEqual([]);
    expect(broken((p, low, high) => p.min <= low && high <= p.max)).toEqual([]);
  });

  it('is short enough to slide along', () => {
    // On a slider 400 pixels long, the finest step that matters must be a quarter of a pixel at least.
    const finest = (p: Measurable) => Math.max(0.5, Math.abs(p.default) / 50);
    expect(broken((p, low, high) => (high - low) / finest(p) <= 1600)).toEqual([]);
  });

  it('is whole for counts, and begins at a 0 that has a word', () => {
    const whole = (p: Measurable) => p.kind !== 'count' || usualRange(p).every(Number.isInteger);
    expect(broken(whole)).toEqual([]);
    expect(broken((p, low) => p.zero === undefined || low === 0)).toEqual([]);
  });

  it('is looked at for all there are', () => {
    expect(measurable.length).toBeGreaterThan(350);
  });
});

describe('the usual range', () => {
  test.each<[string, Measurable, readonly [number, number]]>([
    ['a quarter of the default to three times it', length(8, 0, 3000), [2, 24]],
    ['without digits that come of rounding', length(4.2, 0, 3000), [1.05, 12.6]],
    ['no lower than is allowed', length(8, 5, 3000), [5, 24]],
    ['no higher than is allowed', length(8, 0, 20), [2, 20]],
    ['from 0 where 0 is a word', { ...length(8, 0, 3000), zero: 'no' }, [0, 24]],
    ['a hand wide for a length of 0', length(0, 0, 3000), [0, 100]],
    ['to either side for a shift', length(0, -3000, 3000), [-50, 50]],
    ['to the other side of 0 for what is negative', length(-2, -50, 50), [-6, 6]],
    ['half a turn either way', { ...length(0, -360, 360), kind: 'angle' }, [-180, 180]],
    ['a whole turn where only one way is allowed', { ...length(30, 0, 720), kind: 'angle' }, [0, 360]],
    ['a narrow angle whole', { ...length(60, 20, 160), kind: 'angle' }, [20, 160]],
    ['wider for a default that is off it', { ...length(270, -360, 360), kind: 'angle' }, [-180, 270]],
    ['and lower likewise', { ...length(-270, -360, 360), kind: 'angle' }, [-270, 180]],
    ['whole counts', count(7, 1, 48), [1, 21]],
    ['room above a count of 1', count(1, 1, 60), [1, 7]],
    ['a dozen from 0', count(0, 0, 200), [0, 12]],
    ['seeds that can be stepped through', count(1, 0, 1_000_000, 'seed'), [1, 99]],
    ['a share whole', number(0.75, 0.1, 1), [0.1, 1]],
    ['a number of 0 whole', number(0, 0, 5), [0, 5]],
    ['a number by its default', number(18_000, 1000, 60_000), [4500, 54_000]],
    ['what the description says', { ...length(8, 0, 3000), often: [1, 9] }, [1, 9]],
    ['what it says, as far as it is allowed', { ...length(8, 5, 3000), often: [1, 9] }, [5, 9]],
  ])('is %s', (_, p, range) => {
    expect(usualRange(p)).toEqual(range);
  });
});

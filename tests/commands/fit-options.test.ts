import { describe, expect, it } from 'vitest';
import { type RecordOptions, readNext, readRecord } from '../../src/commands/fit-options.js';
import { BadInput } from '../../src/schema/fault.js';

const good: RecordOptions = { step: '3', result: 'good', tried: 'dry' };

describe('options of fit record', () => {
  it('are read, a bare length in the units of the recipe', () => {
    expect(readRecord(good, 'mm')).toEqual({
      step: 3,
      clearance: null,
      ladder: null,
      result: 'good',
      tried: 'dry',
      moisture: null,
      date: null,
      note: null,
    });
    const { step: _, ...rest } = good;
    // An inch is 25.4 mm.
    expect(readRecord({ ...rest, clearance: '0.004' }, 'in').clearance).toBeCloseTo(0.1016, 9);
    expect(readRecord({ ...rest, clearance: '0.08mm' }, 'in').clearance).toBe(0.08);
    expect(readRecord({ ...good, ladder: '0.06, 0.003in,.1' }, 'mm').ladder).toEqual([0.06, 0.0762, 0.1]);
    expect(readRecord({ ...good, moisture: '8.5 %' }, 'mm').moisture).toBe(8.5);
  });

  it.each<[RecordOptions, RegExp]>([
    [{ step: '0' }, /^--step: "0" must be a whole number, 1 to 12$/],
    [{ step: '1e1' }, /^--step: "1e1" must be a whole number/],
    [{ step: undefined }, /^--step: is missing: name the step of the coupon/],
    [{ clearance: '0.1mm' }, /^--clearance: is given besides --step: keep one of the two$/],
    [
      { step: undefined, clearance: '0.1', ladder: '0.1' },
      /^--ladder: says what a step is: it needs --step$/,
    ],
    [{ step: undefined, clearance: '-0.1mm' }, /^--clearance: "-0\.1mm" must be 0 to 2 mm$/],
    [{ step: undefined, clearance: '3' }, /^--clearance: "3" must be 0 to 2 mm$/],
    [{ step: undefined, clearance: '1m' }, /^--clearance: "1m" has a unit other than mm and in/],
    [{ step: undefined, clearance: 'NaN' }, /^--clearance: "NaN" is not a length/],
    [{ ladder: '0.1,,0.2' }, /^--ladder: "" is empty/],
    [{ ladder: Array(13).fill('0.1').join() }, /^--ladder: has 13 steps; 12 at most$/],
    [{ result: 'gapy' }, /^--result: "gapy" must be cracked, .* or gappy; did you mean "gappy"\?$/],
    [{ result: undefined }, /^--result: is missing: cracked, tight, good, loose or gappy$/],
    [{ tried: 'wet' }, /^--tried: "wet" must be dry or glued/],
    [{ date: '2026-02-29' }, /^--date: "2026-02-29" is no day: write it like 2026-03-09$/],
    [{ moisture: '120' }, /^--moisture: "120" must be .* 0 to 100$/],
    [{ note: 'x'.repeat(501) }, /^--note: has 501 characters; 500 at most$/],
  ])('%j is refused in one line', (changes, message) => {
    const options = Object.fromEntries(
      Object.entries({ ...good, ...changes }).filter(([, v]) => v !== undefined),
    );
    expect(() => readRecord(options, 'mm')).toThrow(BadInput);
    expect(() => readRecord(options, 'mm')).toThrow(message);
  });

  it('are refused with every fault at once', () => {
    try {
      readRecord({ step: 'x', result: 'x', tried: 'x', date: 'x', moisture: 'x' }, 'mm');
      expect.unreachable();
    } catch (e) {
      expect((e as BadInput).faults.map((f) => f.where).toSorted()).toEqual([
        '--date',
        '--moisture',
        '--result',
        '--step',
        '--tried',
      ]);
    }
  });
});

describe('options of fit next', () => {
  it('may be left out', () => {
    expect(readNext({}, 'mm')).toEqual({});
    expect(readNext({ steps: '3', repeatability: '0.001' }, 'in')).toEqual({
      steps: 3,
      repeatability: 0.0254,
    });
  });

  it.each([
    [{ steps: '1' }, /^--steps: "1" must be a whole number, 2 to 12$/],
    [{ repeatability: '3mm' }, /^--repeatability: "3mm" must be 0\.001 to 0\.5 mm$/],
    [{ repeatability: '0' }, /^--repeatability: "0" must be/],
  ])('%j is refused', (options, message) => {
    expect(() => readNext(options, 'mm')).toThrow(message);
  });
});

import { describe, expect, it } from 'vitest';
import { ladder } from '../../src/fit/ladder.js';
import { BadInput } from '../../src/schema/fault.js';

describe('ladder', () => {
  it('has five steps from 0.04 to 0.20 mm unless told otherwise', () => {
    expect(ladder()).toEqual([0.04, 0.08, 0.12, 0.16, 0.2]);
  });

  it('holds steps as fine as the machine repeats, rounding errors aside', () => {
    // 0.14 - 0.06 is 0.08000000000000002 and a quarter of 0.04 to 0.12 a hair under 0.02.
    expect(ladder({ from: 0.04, to: 0.12 })).toEqual([0.04, 0.06, 0.08, 0.1, 0.12]);
    expect(ladder({ from: 0.06, to: 0.14 })).toEqual([0.06, 0.08, 0.1, 0.12, 0.14]);
    expect(ladder({ from: 0, to: 0.05, steps: 2, repeatability: 0.05 })).toEqual([0, 0.05]);
  });

  it.each([
    [
      { from: 0.04, to: 0.11 },
      /ladder\.steps: 5 from 0\.04 to 0\.11 mm are 0\.0175 mm apart.*ask for 4 steps/,
    ],
    [
      { from: 0.04, to: 0.05 },
      /ladder\.steps: .* apart, finer than the 0\.02 mm .*repeats: widen the range$/,
    ],
    [{ repeatability: 0.05 }, /ladder\.steps: .*ask for 4 steps at most/],
    [{ from: 0.2, to: 0.04 }, /ladder\.to: must be more than ladder\.from \(0\.2 mm\), not 0\.04 mm/],
    [{ from: 0.2 }, /ladder\.to: must be more/],
    [{ from: -0.01 }, /ladder\.from: must be 0 to 2 mm per side, not -0\.01 mm/],
    [{ to: 20 }, /ladder\.to: must be 0 to 2 mm per side, not 20 mm/],
    [{ steps: 1 }, /ladder\.steps: must be a whole number, 2 to 12, not 1/],
    [{ steps: 4.5 }, /ladder\.steps: .*not 4\.5/],
    [{ repeatability: 0 }, /ladder\.repeatability: must be 0\.001 to 0\.5 mm, not 0 mm/],
  ])('refuses %j', (range, message) => {
    expect(() => ladder(range)).toThrow(BadInput);
    expect(() => ladder(range)).toThrow(message);
  });

  it('names every fault, and no NaN or Infinity', () => {
    const wrong = { from: Number.NaN, to: Number.POSITIVE_INFINITY, steps: Number.NaN };
    try {
      ladder(wrong);
      expect.unreachable();
    } catch (e) {
      const { faults } = e as BadInput;
      expect(faults.map((f) => f.where)).toEqual(['ladder.from', 'ladder.to', 'ladder.steps']);
      expect((e as Error).message).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
});

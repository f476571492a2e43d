import { describe, expect, it } from 'vitest';
import {
  bothEnds,
  coupons,
  halving,
  maker,
  random,
  SPREAD,
  stepDown,
  study,
} from '../../../scripts/fit-makers.mjs';
import { advise } from '../../../src/fit/log/advice.js';

/*
 * The makers are drawn from a stated spread, not from what the model holds possible, and their noise is normal where the
 * model's is logistic: they are no mirror of it. `node scripts/fit-study.mjs` prints the whole table.
 */
describe('simulated makers', () => {
  it('find their good range in 3 coupons or fewer (median), seldom wrong', () => {
    const r = study(coupons(advise), 21, 11);
    expect(r.visits).toBeLessThanOrEqual(3);
    // It stops at 95 % confidence.
    expect(r.wrong).toBeLessThanOrEqual(0.05);
    expect(r.never).toBe(0);
  });

  it('need six trips or more one at a time when they step down and repeat, or look for both ends', () => {
    expect(study(stepDown(1), 500, 11).visits).toBeGreaterThanOrEqual(6);
    expect(study(stepDown(2), 500, 11).visits).toBeGreaterThanOrEqual(6);
    expect(study(bothEnds(), 500, 11).visits).toBeGreaterThanOrEqual(6);
    // Halving without a repeat is quicker, and wrong for one maker in ten or more.
    expect(study(halving(0), 500, 11).wrong).toBeGreaterThan(0.1);
  });

  it('are counted as not found when the search ends wrong or gives up', () => {
    const wrong = () => ({ visits: 1, pieces: 1, clearance: 5 });
    expect(study(wrong, 20, 1)).toMatchObject({ visits: Number.POSITIVE_INFINITY, wrong: 1, never: 0 });
    const lost = () => ({ visits: 1, pieces: 1, clearance: null });
    expect(study(lost, 20, 1)).toMatchObject({ visits: Number.POSITIVE_INFINITY, wrong: 0, never: 1 });
  });

  it('see growing results with growing clearance, and glued fits tighter than dry ones, when there is no noise', () => {
    const quiet = { ...SPREAD, scatter: 0, slips: 0 };
    const order = ['cracked', 'tight', 'good', 'loose', 'gappy'];
    for (let seed = 1; seed <= 20; seed++) {
      const who = maker(random(seed), quiet);
      let last = 0;
      for (let c = 0; c <= 0.4; c += 0.005) {
        const [dry, glued] = who.piece(c).map((trial: { result: string }) => order.indexOf(trial.result));
        expect(glued ?? 0).toBeLessThanOrEqual(dry!);
        expect(dry!).toBeGreaterThanOrEqual(last);
        expect(glued === 2).toBe(who.isGood(c));
        last = dry!;
      }
    }
  });
});

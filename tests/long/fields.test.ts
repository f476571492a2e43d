import { expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import { makePair } from '../../src/fit/split.js';
import { Refusal } from '../../src/schema/fault.js';
import { proofOf } from '../support/proving.js';
import { randomPolygon, seeded } from '../support/random.js';

/** How many fields: INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 20_000);

/** Larger and denser fields than the usual test's, on seeds of their own; every pair is proven or refused with a reason. */
it(`settles ${RUNS} dense random fields`, () => {
  let proven = 0;
  let refused = 0;
  for (let k = 0; k < RUNS; k++) {
    const seed = 1_000_003 + k * 7;
    const random = seeded(seed);
    const size = 12 + random() * 30;
    const pieces = Array.from({ length: 2 + Math.floor(random() * 12) }, (_, i) => ({
      name: `p${i}`,
      region: {
        contours: [randomPolygon(random, (random() - 0.5) * size, (random() - 0.5) * size, 3 + random() * 8)],
      },
    }));
    const r = 1.2 + random() * 0.8;
    const clearance = 0.02 + random() * 0.15;
    const touch = random() < 0.5 ? 'part' : 'join';
    try {
      const safe = enforce({ pieces }, { r, thin: 'drop', touch });
      if (safe.region.contours.length === 0) continue;
      const pair = makePair(safe, { clearance, from: 'both', face: 'down' });
      expect(proofOf(pair, { radius: r, clearance }).failures, `seed ${seed}`).toEqual([]);
      proven++;
    } catch (e) {
      if (!(e instanceof Refusal)) throw new Error(`seed ${seed}: ${e}`, { cause: e });
      refused++;
    }
  }
  expect(proven).toBeGreaterThan(0.95 * RUNS);
  expect(refused).toBeLessThanOrEqual(Math.max(1, 0.002 * RUNS));
});

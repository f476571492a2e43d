import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import { makePair } from '../../src/fit/split.js';
import { Refusal } from '../../src/schema/fault.js';
import { proofOf } from '../support/proving.js';
import { randomPolygon, seeded } from '../support/random.js';

/** How many random fields. The long tests take more, and denser ones. */
const RUNS = 1000;

/**
 * The property that all stands on (r-regularity: Serra 1982, Pavlidis 1982; reach: Federer 1959): whatever is drawn,
 * the pair that leaves the house has reach r on both sides and one even gap. The judge is the proof, which reads
 * the written files and shares no code with the pass. No ease here: the cutter's radius is the corner radius itself.
 */
describe(`pairs from ${RUNS} random fields`, () => {
  it('have reach r from inside the pocket and outside the plug, smooth joints and an even gap', () => {
    const seen = { proven: 0, changed: 0, parts: 0, refused: 0 };
    for (let seed = 0; seed < RUNS; seed++) {
      const random = seeded(seed * 6151 + 3);
      const size = 10 + random() * 18;
      const pieces = Array.from({ length: 1 + Math.floor(random() * 5) }, (_, i) => ({
        name: `p${i}`,
        region: {
          contours: [
            randomPolygon(random, (random() - 0.5) * size, (random() - 0.5) * size, 3 + random() * 9),
          ],
        },
      }));
      const r = 0.8 + random() * 1.4;
      const touch = random() < 0.5 ? 'part' : 'join';
      const clearance = 0.02 + random() * 0.2;
      const fit = {
        clearance,
        from: (['plug', 'pocket', 'both'] as const)[seed % 3]!,
        face: seed % 2 === 0 ? ('up' as const) : ('down' as const),
      };
      try {
        const safe = enforce({ pieces }, { r, thin: 'drop', touch });
        if (safe.region.contours.length === 0) continue;
        const proof = proofOf(makePair(safe, fit), { radius: r, clearance });
        expect(proof.failures, `seed ${seed}`).toEqual([]);
        seen.proven++;
        seen.parts += safe.region.contours.length;
        if (safe.changes.length > 0) seen.changed++;
      } catch (e) {
        if (!(e instanceof Refusal)) throw new Error(`seed ${seed}: ${e}`, { cause: e });
        seen.refused++;
      }
    }
    // Guards against a vacuous pass: nearly all are proven, and many had to be changed.
    expect(seen.proven).toBeGreaterThan(0.97 * RUNS);
    expect(seen.changed).toBeGreaterThan(0.4 * RUNS);
    expect(seen.refused).toBeLessThanOrEqual(0.002 * RUNS);
  });
});

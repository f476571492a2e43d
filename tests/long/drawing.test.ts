import { expect, it } from 'vitest';
import { type Mutant, mutant } from '../drawing/mutants.js';
import { faultOf, tryDrawings } from '../support/drawing-trials.js';

/** How many drawings: INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 10_000);

/** On seeds beyond those of the usual tests. */
const FIRST = 100_000;

it(
  `draws or refuses ${RUNS} damaged drawings in clear lines`,
  async () => {
    const trials = await tryDrawings(
      (function* () {
        for (let k = 0; k < RUNS; k++) yield mutant(FIRST + k);
      })(),
    );
    const faults = trials.map((t) => [(t.given as Mutant).seed, faultOf(t)]).filter(([, f]) => f !== null);
    expect(faults).toEqual([]);
    expect(trials.filter((t) => t.end === 'undecided').length).toBeLessThan(1 + RUNS / 200);
  },
  RUNS * 5000 + 60_000,
);

import { expect, it } from 'vitest';
import { faultOf, tryDrawings } from '../support/drawing-trials.js';
import { type Mutant, mutant } from './mutants.js';

/** The long tests take ten thousand, on other seeds. */
const RUNS = 500;

it(`draws or refuses ${RUNS} damaged drawings in clear lines`, async () => {
  const trials = await tryDrawings(Array.from({ length: RUNS }, (_, k) => mutant(k)));
  const faults = trials.map((t) => [(t.given as Mutant).seed, faultOf(t)]).filter(([, f]) => f !== null);
  expect(faults).toEqual([]);
  for (const end of ['drawn', 'refused'])
    expect(trials.filter((t) => t.end === end).length).toBeGreaterThan(RUNS / 10);
  // What the geometry cannot decide is refused by the command; more than a few in a thousand would be a fault.
  expect(trials.filter((t) => t.end === 'undecided').length).toBeLessThan(RUNS / 200);
}, 300_000);

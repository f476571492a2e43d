import { expect, it } from 'vitest';
import { hardOutlines } from '../support/hard-outlines.js';
import { broken, laws } from '../support/law-list.js';
import { MOVES } from '../support/moves.js';
import { randomOutline } from '../support/random-outlines.js';

/** How many random outlines: INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 1000);

/** Refused as asked, or too large for boundaries to be sampled. */
const LEFT_OUT = /^(needle refused|huge)/;

function* outlines() {
  yield* hardOutlines().filter((h) => !LEFT_OUT.test(h.name));
  for (let k = 0; k < RUNS; k++) yield randomOutline(1_000_003 + k);
}

it.each(Object.entries(laws(MOVES)))(
  `the cutter pass %s: all hard outlines and ${RUNS} random ones`,
  (_, law) => {
    const { lines, refused } = broken(law, outlines());
    expect(lines).toEqual([]);
    expect(refused).toBeLessThanOrEqual(0.001 * RUNS);
  },
);

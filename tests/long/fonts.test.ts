import { expect, it } from 'vitest';
import { bombs } from '../support/bomb-fonts.js';
import { faultOf, tryFonts } from '../support/font-trials.js';
import { mutant } from '../support/mutated-fonts.js';

/** How many fonts: INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 4000);

/** Fonts are kept until they are judged: so many at a time. */
const AT_ONCE = 500;

/** On seeds beyond those of the usual tests. */
it(
  `draws or turns away ${RUNS} damaged fonts in one line each`,
  async () => {
    const first = bombs.length + 1000;
    const faults: (string | null)[] = [];
    let drawn = 0;
    for (let from = 0; from < RUNS; from += AT_ONCE) {
      const count = Math.min(AT_ONCE, RUNS - from);
      const trials = await tryFonts(Array.from({ length: count }, (_, k) => mutant(first + from + k)));
      faults.push(...trials.map(faultOf));
      drawn += trials.filter((t) => t.end === 'drawn').length;
    }
    expect(faults).toHaveLength(RUNS);
    expect(faults.filter((f) => f !== null)).toEqual([]);
    // Both ends are met.
    expect(drawn).toBeGreaterThan(RUNS / 20);
    expect(drawn).toBeLessThan(RUNS - RUNS / 20);
  },
  RUNS * 5000 + 60_000,
);

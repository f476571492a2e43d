import { expect, it } from 'vitest';
import { bombs } from '../support/bomb-fonts.js';
import { faultOf, tryFonts } from '../support/font-trials.js';
import { mutant } from '../support/mutated-fonts.js';

/** How many fonts: INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 4000);

/** On seeds beyond those of the usual tests. */
it(
  `draws or turns away ${RUNS} damaged fonts in one line each`,
  async () => {
    const first = bombs.length + 1000;
    const trials = await tryFonts(
      (function* () {
        for (let k = 0; k < RUNS; k++) yield mutant(first + k);
      })(),
    );
    expect(trials.map(faultOf).filter((f) => f !== null)).toEqual([]);
  },
  RUNS * 5000 + 60_000,
);

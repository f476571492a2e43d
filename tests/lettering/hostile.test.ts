import { describe, expect, it } from 'vitest';
import { bombs } from '../support/bomb-fonts.js';
import { faultOf, tryFonts } from '../support/font-trials.js';
import { mutant, soundFonts } from '../support/mutated-fonts.js';

/** Random damage beside the bombs; the long tests take thousands. */
const RUNS = 40;

describe('a font that is not what it says', () => {
  it('is told from a sound one: TTF, OTF, and both in WOFF are drawn', async () => {
    const sound = soundFonts().map(({ name, bytes }, seed) => ({ seed, name, bytes }));
    const trials = await tryFonts(sound);
    expect(trials.map((t) => [t.mutant.name, t.end, t.said])).toEqual(
      sound.map((s) => [s.name, 'drawn', '']),
    );
  });

  it(`is drawn or turned away in one line: ${bombs.length} built to hang, ${RUNS} damaged at random`, async () => {
    const trials = await tryFonts(
      (function* () {
        for (let seed = 0; seed < bombs.length + RUNS; seed++) yield mutant(seed);
      })(),
    );
    expect(trials.map(faultOf).filter((f) => f !== null)).toEqual([]);
    // The damage is not all of a kind: some fonts can still be used, some cannot.
    expect(trials.filter((t) => t.end === 'drawn').length).toBeGreaterThan(0.1 * trials.length);
    expect(trials.filter((t) => t.end === 'bad input').length).toBeGreaterThan(0.1 * trials.length);
  }, 600_000);
});

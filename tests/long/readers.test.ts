import { describe, expect, it } from 'vitest';
import { prove } from '../../src/proof/index.js';
import { readers } from '../support/reader-runs.js';
import { proofFiles, written } from '../support/reader-samples.js';

/** How many files a reader: INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 50_000);

/** On seeds beyond those of the usual tests. */
const FIRST = 10_000;

describe(`${RUNS} damaged files, each read soundly or turned away in clear lines:`, () => {
  for (const [name, run] of Object.entries(readers))
    it(
      name,
      async () => {
        const { read, refused, faults } = await run(FIRST, RUNS);
        expect(faults).toEqual([]);
        // Damage that spoils every file, or none, would try nothing.
        expect(read).toBeGreaterThan(RUNS / 100);
        expect(refused).toBeGreaterThan(RUNS / 100);
      },
      RUNS * 2000 + 120_000,
    );
});

/** What the trials found. */
describe('the proof takes no more than 2 s for', () => {
  const seconds = (change: (svg: string) => string): number => {
    const { files, asked } = JSON.parse(proofFiles(written('door-number')).sound);
    const pocketSvg = change(files.pocketSvg);
    expect(pocketSvg).not.toBe(files.pocketSvg);
    const before = process.cpuUsage();
    expect(prove({ ...files, pocketSvg }, asked).holds).toBe(false);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1e6;
  };

  it('a point a hundred metres off', () => {
    expect(seconds((svg) => svg.replace('L 133.615979', 'L 100000'))).toBeLessThan(2);
  });

  it('a contour drawn two hundred times over', () => {
    expect(
      seconds((svg) =>
        svg.replace(/(id="pocket"[^>]*>\s*)(<path[^>]*>)/, (_, group, path) => group + path.repeat(200)),
      ),
    ).toBeLessThan(2);
  });
});

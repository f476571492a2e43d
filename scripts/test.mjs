/**
 * `npm test`: everything a change must pass, cheapest first. `--long` runs the long tests alone; how many random
 * cases they take is INLAYWRIGHT_LONG_RUNS.
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensure } from './debian.mjs';
import { main, ROOT, run, setUp } from './setup.mjs';

const long = process.argv.includes('--long');

main(() => {
  const report = `tests/.actual/${long ? 'long' : 'tests'}.json`;
  // A report left by an earlier run must not be taken for this one's.
  rmSync(join(ROOT, report), { force: true });
  setUp();
  for (const line of ensure()) console.error(line);
  if (!long) {
    step('format and lint', 'biome', ['check', '.'], 'run `npm run format`, then see what is left');
    step('types', 'tsc', ['-p', 'tsconfig.tests.json'], 'types do not fit (see above)');
    step('layers', 'scripts/layers.mjs', [], 'a file looks where its room may not (see above)');
  }
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  if (long) args.push('--mode', 'long', '--passWithNoTests');
  step(long ? 'long tests' : 'tests', 'vitest', args, 'tests failed (see above)');
});

function step(title, program, args, failure) {
  console.error(`\n== ${title}`);
  run(program, args, failure);
}

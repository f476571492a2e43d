/**
 * `npm run bench`: the cutter pass against general polygon libraries. `-- --quick` is smaller; `--json FILE`.
 * `-- --page [RECIPE ...]`: how long a dragged value takes to be seen on the page, in Debian's chromium.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { main, ROOT, setUp } from './setup.mjs';

main(() => {
  setUp();
  const asked = process.argv.slice(2);
  const page = asked[0] === '--page';
  const program = join(ROOT, 'bench', page ? 'page.mjs' : 'run.mjs');
  const ran = spawnSync(process.execPath, [program, ...(page ? asked.slice(1) : asked)], {
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  process.exitCode = ran.status ?? 1;
});

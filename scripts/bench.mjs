/** `npm run bench`: the cutter pass against general polygon libraries. `-- --quick` is smaller; `--json FILE`. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { main, ROOT, setUp } from './setup.mjs';

main(() => {
  setUp();
  const ran = spawnSync(process.execPath, [join(ROOT, 'bench', 'run.mjs'), ...process.argv.slice(2)], {
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  process.exitCode = ran.status ?? 1;
});

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Builds dist once before the tests, so that the command is tested as it ships. Types are checked by their own step. */
export default function setup(): void {
  const done = spawnSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.json'], {
    cwd: root,
    encoding: 'utf8',
  });
  if (done.status !== 0) process.stderr.write(done.stdout + done.stderr);
  if (!existsSync(new URL('../../dist/cli.js', import.meta.url)))
    throw new Error('the build made no dist/cli.js');
}

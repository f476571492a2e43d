import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Builds dist once before the tests, so that the command is tested as it ships. Types are checked by their own step. */
export default function setup(): void {
  run('node_modules/typescript/bin/tsc', '-p', 'tsconfig.json');
  run('scripts/bundle.mjs');
  run('node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn');
  for (const made of ['cli.js', 'bin/make-thread.js', 'page/index.html'])
    if (!existsSync(new URL(`../../dist/${made}`, import.meta.url)))
      throw new Error(`the build made no dist/${made}`);
}

function run(program: string, ...args: string[]): void {
  const done = spawnSync(process.execPath, [program, ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  if (done.status !== 0) process.stderr.write(done.stdout + done.stderr);
}

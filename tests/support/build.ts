import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Builds dist once before the tests, so that the command is tested as it ships. */
export default function setup(): void {
  execFileSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.json'], {
    cwd: root,
    stdio: 'inherit',
  });
}

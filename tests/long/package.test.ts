import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** What is packed may not grow past this unseen, bytes. */
const MOST = 6e6;

let dir: string;
let packed: { filename: string; size: number; files: { path: string }[] };
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'package-'));
  // dist is built by the tests' set-up.
  const { stdout } = spawnSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', dir], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  [packed] = JSON.parse(stdout);
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

describe('the packed package', () => {
  it('holds what is run and read, and nothing of the workshop', () => {
    const paths = packed.files.map((f) => f.path);
    for (const path of [
      'dist/cli.js',
      'dist/index.d.ts',
      'dist/page/index.html',
      'dist/page/licences.md',
      'LICENSE',
      'README.md',
    ])
      expect(paths).toContain(path);
    expect(paths.filter((p) => /^(src|tests|bench|scripts|out)\/|fitlog|\.map$/.test(p))).toEqual([]);
    expect(packed.size).toBeLessThan(MOST);
  });

  it('is installed in an empty folder without scripts, and works there', ({ skip }) => {
    const home = join(dir, 'home');
    const run = (program: string, ...args: string[]) =>
      spawnSync(program, args, { cwd: home, encoding: 'utf8', timeout: 120_000 });
    spawnSync('mkdir', [home]);
    writeFileSync(join(home, 'package.json'), '{ "private": true, "type": "module" }');
    const asked = spawnSync('npm', ['view', 'flatbush', 'version'], { encoding: 'utf8' });
    if (asked.status !== 0) return skip('the package registry cannot be reached');
    const installed = run(
      'npm',
      'install',
      '--ignore-scripts',
      '--no-audit',
      '--no-fund',
      join(dir, packed.filename),
    );
    expect(installed.status, installed.stderr).toBe(0);

    const cli = join('node_modules', '.bin', 'inlaywright');
    expect(run(cli, '--version').stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
    const patterns = join('node_modules', 'inlaywright', 'patterns');
    const made = run(
      cli,
      'make',
      join(patterns, 'house-number-plate.json'),
      join(patterns, 'tea-box-rosette.json'),
    );
    expect(made.status, made.stderr).toBe(0);
    expect(readdirSync(join(home, 'out')).sort()).toEqual(['house-number-plate', 'tea-box-rosette']);
    const bowl = run(cli, 'bowl', join(patterns, 'fruit-bowl-wave.json'), '--no-coupon');
    expect(bowl.status, bowl.stderr).toBe(0);
    expect(existsSync(join(home, 'out/fruit-bowl-wave/vessel.glb'))).toBe(true);

    writeFileSync(
      join(home, 'use.js'),
      `import { readRecipe } from 'inlaywright';
       try { readRecipe('{}', 'mine.json'); } catch (e) { console.log(e.message.split('\\n')[0]); }`,
    );
    expect(run(process.execPath, 'use.js').stdout).toMatch(/^mine\.json|is missing/);
  });
});

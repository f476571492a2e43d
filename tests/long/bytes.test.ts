import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bytesMade, bytesOf, differences, golden, shipped } from '../../scripts/bytes.mjs';
import { chromiumPath } from '../support/browser.js';
import { bytesInChromium } from '../support/bytes-in-chromium.js';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'bytes-test-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

/** Another Node, from the package registry into a folder of this test's; null where that cannot be had. */
function otherNode(major: number): string | null {
  const name = `node-${process.platform}-${process.arch}`;
  spawnSync('npm', ['install', '--prefix', dir, '--no-save', '--ignore-scripts', `${name}@${major}`]);
  const node = join(dir, 'node_modules', name, 'bin/node');
  const asked = spawnSync(node, ['--version'], { encoding: 'utf8' });
  return asked.status === 0 && asked.stdout.startsWith(`v${major}.`) ? node : null;
}

describe('all recipes that ship have the bytes that the repository says', () => {
  it('in another language, time zone and folder', () => {
    const cwd = join(dir, 'Çatı arası');
    mkdirSync(cwd);
    const env = { TZ: 'Asia/Kathmandu', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8', LANGUAGE: 'tr' };
    expect(differences(golden(), bytesMade({ cwd, env }))).toEqual([]);
  });

  it('in Node 22', ({ skip }) => {
    const node = otherNode(22);
    if (node === null) return skip('Node 22 cannot be had from the package registry here');
    expect(differences(golden(), bytesMade({ node }))).toEqual([]);
  });

  it.skipIf(chromiumPath === null)('in Chromium', async () => {
    const names = shipped().map((r) => r.name);
    expect(differences(bytesOf(golden(), names, false), await bytesInChromium(shipped()))).toEqual([]);
  });
});

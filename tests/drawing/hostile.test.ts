import { fork } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { MOST_MEGABYTES, MOST_SECONDS } from '../support/drawing-trials.js';
import { HOSTILE, type Hostile } from './hostile.js';

const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));

const CLI = fileURLToPath(new URL('../support/measured-cli.mjs', import.meta.url));

interface Run {
  readonly code: number | null;
  readonly said: string;
  readonly seconds: number;
  readonly megabytes: number;
}

/** Runs `make` on a recipe that names the file, in a folder of its own. */
function made({ file, content, size, named = file, name = 'piece' }: Hostile, dir: string): Promise<Run> {
  mkdirSync(dir);
  if (content !== undefined) writeFileSync(join(dir, file), content());
  if (size !== undefined) {
    writeFileSync(join(dir, file), '');
    truncateSync(join(dir, file), size);
  }
  const recipe = {
    name,
    units: 'mm',
    outline: { shape: 'rectangle', width: 150, height: 150, margin: 6 },
    pattern: { generator: 'drawing', file: named, fit: true },
    stock: { field: 11, plug: 12 },
    cutter: { diameter: '1/8in', flute: 12, ease: 0.3, thin: 'drop', touch: 'part' },
    fit: { clearance: 0.08, from: 'plug', plug: 'loose' },
    depth: 6,
    skin: 1.5,
    woods: { field: 'white ash', plug: 'black walnut' },
  };
  writeFileSync(join(dir, 'recipe.json'), JSON.stringify(recipe));
  return new Promise((done) => {
    const child = fork(CLI, ['make', 'recipe.json', '--out', 'out'], { cwd: dir, silent: true });
    let said = '';
    let taken = { seconds: Number.POSITIVE_INFINITY, megabytes: Number.POSITIVE_INFINITY };
    child.stderr!.on('data', (chunk) => {
      said += chunk;
    });
    child.stdout!.resume();
    child.on('message', (m) => {
      taken = m as typeof taken;
    });
    child.on('close', (code) => done({ code, said, ...taken }));
  });
}

describe('hostile drawings, by the command', () => {
  it.each(HOSTILE.map((h) => [h.title, h] as const))('refuses %s', async (title, hostile) => {
    const dir = join(folder, title.replace(/\W+/g, '-'));
    const { code, said, seconds, megabytes } = await made(hostile, dir);
    const lines = said
      .trimEnd()
      .split('\n')
      .filter((l) => !/: (building|drawing|proving)$/.test(l));
    expect([1, 2], said).toContain(code);
    expect(said).toMatch(hostile.says);
    for (const line of lines) expect(line).toMatch(/^inlaywright: [^\p{Cc}]{20,400}$/u);
    expect(lines.length).toBeLessThan(12);
    expect(said).not.toMatch(/^\s+at |node:|root:/m);
    expect(existsSync(join(dir, 'out')), 'something was written').toBe(false);
    expect(readdirSync(folder).every((f) => f !== 'evil' && f !== 'escaped')).toBe(true);
    expect(seconds).toBeLessThan(MOST_SECONDS);
    expect(megabytes).toBeLessThan(MOST_MEGABYTES);
  });
});

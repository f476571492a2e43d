import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appendLine, keepAside, logPath, noteCoupon, readLog } from '../../src/commands/fit-log.js';
import type { Entry } from '../../src/fit/log/entry.js';
import { BadInput } from '../../src/schema/fault.js';

const WRITER = fileURLToPath(new URL('fit-writer.mjs', import.meta.url));
const MODULE = new URL('../../dist/commands/fit-log.js', import.meta.url).href;

let dir: string;
let made = 0;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'fit-log-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const fresh = (): string => join(dir, `log-${made++}.fitlog.jsonl`);
const bytes = (path: string): string => readFileSync(path, 'latin1');
const notes = (path: string): string[] =>
  readLog(path).lines.map(({ line }) => (line.kind === 'result' ? (line.note ?? '') : 'coupon'));

const ENTRY: Entry = {
  version: 1,
  kind: 'result',
  clearance: 0.08,
  step: 2,
  result: 'tight',
  tried: 'dry',
  cutter: { diameter: 3, cuts: null },
  woods: { field: 'white ash', plug: 'black walnut' },
  depth: 8,
  moisture: null,
  date: null,
  note: 'a',
};
const line = (note: string): string => JSON.stringify({ ...ENTRY, note });

/** Starts a writer; resolves with the numbers it confirmed once it is gone. `lifetime` in ms from its first line on. */
function writer(path: string, name: string, count: number, lifetime?: number): Promise<number[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [WRITER, MODULE, path, name, `${count}`]);
    let out = '';
    let error = '';
    child.stdout.on('data', (data) => {
      if (out === '' && lifetime !== undefined) setTimeout(() => child.kill('SIGKILL'), lifetime);
      out += data;
    });
    child.stderr.on('data', (data) => (error += data));
    child.on('error', reject);
    child.on('close', (code) => {
      if (code !== 0 && lifetime === undefined) reject(new Error(error || `exit code ${code}`));
      // A number without its line break was not confirmed.
      else resolve(out.split('\n').slice(0, -1).map(Number));
    });
  });
}

describe('writing', () => {
  it('loses nothing with four processes at once, and mixes no lines', async () => {
    const path = fresh();
    const names = ['a', 'b', 'c', 'd'];
    await Promise.all(names.map((name) => writer(path, name, 60)));
    const log = readLog(path);
    expect(log.problems).toEqual([]);
    const seen = notes(path).map((n) => n.trimEnd().split(' ').slice(0, 2).join(' '));
    const all = names.flatMap((name) => Array.from({ length: 60 }, (_, k) => `${name} ${k}`));
    expect(seen.toSorted()).toEqual(all.toSorted());
    // Each writer's own lines stand in their order.
    for (const name of names)
      expect(seen.filter((n) => n.startsWith(name))).toEqual(all.filter((n) => n.startsWith(name)));
  });

  it('keeps every confirmed line when writers are killed at any moment', async () => {
    const path = fresh();
    const confirmed: string[] = [];
    let killed = 0;
    for (let round = 0; round < 6; round++) {
      const runs = [0, 1].map(async (k) => {
        const name = `r${round}w${k}`;
        const lifetime = 1 + Math.random() * 60;
        const numbers = await writer(path, name, 100_000, lifetime);
        killed++;
        confirmed.push(...numbers.map((n) => `${name} ${n}`));
      });
      await Promise.all(runs);
    }
    expect(killed).toBe(12);
    expect(confirmed.length).toBeGreaterThan(20);
    const seen = notes(path).map((n) => n.trimEnd().split(' ').slice(0, 2).join(' '));
    expect(new Set(seen).size).toBe(seen.length);
    expect(confirmed.filter((n) => !seen.includes(n))).toEqual([]);
    // A run that is killed between its write and its word leaves one line more than it confirmed, and never two.
    expect(seen.length - confirmed.length).toBeLessThanOrEqual(killed);
  });

  it('keeps every line whole among halves of lines written at the same time', async () => {
    const path = fresh();
    const [a, b] = await Promise.all([
      writer(path, 'a', 80),
      writer(path, 'b', 80),
      writer(path, 'half1', 4000),
      writer(path, 'half2', 4000),
    ]);
    expect(a).toHaveLength(80);
    expect(b).toHaveLength(80);
    const seen = notes(path).filter((n) => /^[ab] /.test(n));
    expect(seen).toHaveLength(160);
    // All that is not a sound line is kept aside, byte for byte.
    const log = readLog(path);
    expect(log.damaged.length).toBeGreaterThan(0);
    keepAside(log);
    const aside = bytes(path.replace('.jsonl', '.damaged'));
    for (const piece of log.damaged) expect(aside.includes(`${piece.toString('latin1')}\n`)).toBe(true);
  });

  it('closes off half a line before it adds one, whatever the half is', () => {
    for (const half of ['{"version":1,"kind":"res', line('whole but no line break'), 'x', ' ']) {
      const path = fresh();
      writeFileSync(path, half);
      appendLine(path, ENTRY);
      expect(bytes(path)).toBe(`${half}\n${line('a')}\n`);
    }
  });

  it('says what is in the way', () => {
    const path = fresh();
    mkdirSync(path);
    expect(() => appendLine(path, ENTRY)).toThrow(BadInput);
    expect(() => appendLine(path, ENTRY)).toThrow(/cannot write .*: it is a folder; /);
    expect(() => readLog(path)).toThrow(/is not a file; move it away|it is a folder/);
    expect(() => appendLine(join(dir, 'none', 'x.fitlog.jsonl'), ENTRY)).toThrow(/no such file or folder/);
  });
});

describe('reading', () => {
  it('uses the good lines, names the damaged ones by number and keeps them aside once', () => {
    const path = fresh();
    const bad = Buffer.from([0x7b, 0xff, 0xfe, 0x7d]);
    const future = '{"version":2,"kind":"result","snug":true}';
    const before = Buffer.concat([
      Buffer.from(`${line('one')}\nnonsense\n${future}\n\n`),
      bad,
      Buffer.from(
        `\n${line('two')}\r\n{"version":1,"kind":"result","clearance":9}\n{"version":1,"ki${line('three')}\n`,
      ),
    ]);
    writeFileSync(path, before);
    const log = readLog(path);
    expect(notes(path)).toEqual(['one', 'two', 'three']);
    expect(log.lines.map((l) => l.number)).toEqual([1, 6, 8]);
    expect(log.problems).toEqual([
      'line 2 is damaged and is not used: it is not a JSON object',
      'line 3 is of version 2, which is not known here: left as it is, not used',
      'line 5 is damaged and is not used: it is no UTF-8 text',
      expect.stringMatching(/^line 7 is damaged and is not used: .*clearance must be 0 to 2 mm/),
      'line 8 is damaged and is not used: it is not a JSON object',
    ]);
    expect(keepAside(log)).toMatch(/are copied to .*\.fitlog\.damaged; they stay in the log too/);
    const aside = path.replace('.jsonl', '.damaged');
    const kept = bytes(aside);
    expect(kept).toBe(
      `nonsense\n${bad.toString('latin1')}\n{"version":1,"kind":"result","clearance":9}\n{"version":1,"ki\n`,
    );
    expect(keepAside(readLog(path))).toMatch(/are kept in/);
    expect(bytes(aside)).toBe(kept);
    appendLine(path, ENTRY);
    expect(bytes(path)).toBe(`${before.toString('latin1')}${line('a')}\n`);
  });

  it('keeps aside two lines that differ only in bytes that are no text', () => {
    const path = fresh();
    writeFileSync(path, Buffer.from([0xff, 0x0a]));
    keepAside(readLog(path));
    writeFileSync(path, Buffer.from([0xff, 0x0a, 0xfe, 0x0a]));
    keepAside(readLog(path));
    expect(bytes(path.replace('.jsonl', '.damaged'))).toBe('\xff\n\xfe\n');
  });

  it('takes a missing log as empty, and makes nothing', () => {
    const path = fresh();
    expect(readLog(path)).toEqual({ path, lines: [], problems: [], damaged: [] });
    expect(existsSync(path)).toBe(false);
  });
});

describe('beside a recipe', () => {
  it('the log is named after the recipe file', () => {
    expect(logPath(join('a', 'lid.json'))).toBe(join('a', 'lid.fitlog.jsonl'));
    expect(logPath('lid.recipe.JSON')).toBe('lid.recipe.fitlog.jsonl');
    expect(logPath('lid')).toBe('lid.fitlog.jsonl');
  });

  it('a coupon is noted once, and again when its steps change', () => {
    const recipe = join(dir, 'noted.json');
    noteCoupon(recipe, [0.04, 0.08]);
    noteCoupon(recipe, [0.04, 0.08]);
    noteCoupon(recipe, [0.06, 0.08]);
    expect(readLog(logPath(recipe)).lines.map((l) => l.line)).toEqual([
      { version: 1, kind: 'coupon', ladder: [0.04, 0.08] },
      { version: 1, kind: 'coupon', ladder: [0.06, 0.08] },
    ]);
  });
});

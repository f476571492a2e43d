import { spawn } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { exampleText } from '../recipe/example.js';
import { type Ran, ran } from '../support/warm.js';

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'fit-test-'));
  recipe('lid.json');
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): Ran {
  return ran(['fit', ...args], dir);
}
function recipe(file: string, changes: Record<string, unknown> = {}): void {
  writeFileSync(join(dir, file), exampleText(changes));
}
const log = (name = 'lid'): string => readFileSync(join(dir, `${name}.fitlog.jsonl`), 'utf8');
const next = (file = 'lid.json') => JSON.parse(run('next', file, '--json').stdout);

/** Lines of the log as a maker would have written them, [clearance, result] each. */
function write(name: string, tried: string, results: [number, string][], changes: object = {}): void {
  const setup = {
    cutter: { diameter: 3.175, cuts: 3.19 },
    woods: { field: 'white ash', plug: 'black walnut' },
    depth: 8,
    ...changes,
  };
  const lines = results.map(([clearance, result]) =>
    JSON.stringify({ version: 1, kind: 'result', clearance, step: null, result, tried, ...setup }),
  );
  appendFileSync(join(dir, `${name}.fitlog.jsonl`), `${lines.join('\n')}\n`);
}
const GLUED: [number, string][] = [
  [0.04, 'cracked'],
  [0.08, 'tight'],
  [0.12, 'good'],
  [0.16, 'good'],
  [0.2, 'gappy'],
];
const DRY: [number, string][] = [
  [0.04, 'tight'],
  [0.08, 'good'],
  [0.12, 'good'],
  [0.16, 'loose'],
  [0.2, 'gappy'],
];

describe('fit record', () => {
  it('adds one line with all that the result hangs on', () => {
    const r = run(
      'record',
      'lid.json',
      '--clearance',
      '0.1mm',
      '--result',
      'tight',
      '--tried',
      'glued',
      '--date',
      '2026-03-09',
      '--moisture',
      '8.5',
      '--note',
      'two\nlines',
    );
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toBe('test-piece: recorded 0.1 mm per side, glued: tight; lid.fitlog.jsonl\n');
    expect(r.stderr).toBe('');
    expect(log()).toMatch(/^\{.*\}\n$/);
    expect(JSON.parse(log())).toEqual({
      version: 1,
      kind: 'result',
      clearance: 0.1,
      step: null,
      result: 'tight',
      tried: 'glued',
      cutter: { diameter: 3.175, cuts: 3.19 },
      woods: { field: 'white ash', plug: 'black walnut' },
      depth: 8,
      moisture: 8.5,
      date: '2026-03-09',
      note: 'two\nlines',
    });
  });

  it('knows the steps of the coupon last drawn, of a ladder given, and says when it takes the usual ones', () => {
    const usual = run('record', 'lid.json', '--step', '3', '--result', 'good', '--tried', 'dry');
    expect(usual.stdout).toMatch(/recorded step 3, 0\.12 mm per side, dry: good/);
    expect(usual.stderr).toMatch(
      /the log names no coupon: step 3 is taken from the usual ladder, 1 \(0\.04 mm\)/,
    );
    appendFileSync(join(dir, 'lid.fitlog.jsonl'), '{"version":1,"kind":"coupon","ladder":[0.06,0.08,0.1]}\n');
    const drawn = run('record', 'lid.json', '--step', '3', '--result', 'good', '--tried', 'dry');
    expect(drawn.stdout).toMatch(/recorded step 3, 0\.1 mm per side/);
    expect(drawn.stderr).toBe('');
    const given = run(
      'record',
      'lid.json',
      '--step',
      '2',
      '--ladder',
      '0.1, 0.003in',
      '--result',
      'good',
      '--tried',
      'dry',
      '--json',
    );
    expect(JSON.parse(given.stdout).entry).toMatchObject({ step: 2, clearance: 0.0762 });
  });

  it('refuses a step that the coupon does not have, names those it has, and writes nothing', () => {
    const r = run('record', 'lid.json', '--step', '6', '--result', 'good', '--tried', 'dry');
    expect([r.status, r.stdout]).toEqual([2, '']);
    expect(r.stderr).toMatch(
      /^inlaywright: --step: 6 is no step of the coupon; its steps are 1 \(0\.04 mm\), .*5 \(0\.2 mm\)\. .*\n$/,
    );
    expect(existsSync(join(dir, 'lid.fitlog.jsonl'))).toBe(false);
  });

  it('refuses faulty options, a line each, and writes nothing', () => {
    const r = run('record', 'lid.json', '--step', '1', '--result', 'gapy', '--tried', 'wet');
    expect([r.status, r.stdout]).toEqual([2, '']);
    expect(r.stderr).toMatch(/^inlaywright: --result: "gapy" .*\ninlaywright: --tried: "wet" .*\n$/);
    expect(existsSync(join(dir, 'lid.fitlog.jsonl'))).toBe(false);
  });

  it('adds to a log of another version and with damage, and changes neither', () => {
    const before = '{"version":7,"kind":"result"}\nhalf a li';
    writeFileSync(join(dir, 'lid.fitlog.jsonl'), before);
    const r = run('record', 'lid.json', '--clearance', '0.1', '--result', 'good', '--tried', 'dry');
    expect(r.status).toBe(0);
    expect(r.stderr).toMatch(/line 1 is of version 7, which is not known here: left as it is, not used/);
    expect(r.stderr).toMatch(/line 2 is damaged/);
    expect(log().startsWith(`${before}\n{`)).toBe(true);
    expect(readFileSync(join(dir, 'lid.fitlog.damaged'), 'utf8')).toBe('half a li\n');
  });

  it('serves three processes at once', async () => {
    const one = (k: number): Promise<number | null> =>
      new Promise((resolve) => {
        const args = [
          CLI,
          'fit',
          'record',
          'lid.json',
          '--clearance',
          `0.0${k}`,
          '--result',
          'good',
          '--tried',
          'dry',
        ];
        spawn(process.execPath, args, { cwd: dir, stdio: 'ignore' }).on('close', resolve);
      });
    expect(await Promise.all([4, 5, 6].map(one))).toEqual([0, 0, 0]);
    const clearances = log()
      .trimEnd()
      .split('\n')
      .map((l) => JSON.parse(l).clearance);
    expect(clearances.toSorted()).toEqual([0.04, 0.05, 0.06]);
  });
});

describe('fit next', () => {
  it('proposes the usual ladder when there is no log, and writes nothing', () => {
    const r = run('next', 'lid.json');
    expect(r.status).toBe(0);
    expect(r.stdout).toMatch(
      /depth 6 to 12 mm; 0 results\nNext coupon: 5 steps from 0\.04 mm to 0\.2 mm per side: 0\.04 mm, 0\.08 mm, 0\.12 mm, 0\.16 mm, 0\.2 mm\nWhy: nothing is known/,
    );
    expect(existsSync(join(dir, 'lid.fitlog.jsonl'))).toBe(false);
  });

  it('stops with a clearance in the good range when it is sure, and says how sure', () => {
    write('lid', 'dry', DRY);
    write('lid', 'glued', GLUED);
    const r = run('next', 'lid.json');
    expect(r.stdout).toMatch(
      /Stop: use 0\.1[2-6]\d? mm per side, good when glued with 9\d % confidence .*set fit\.clearance to "0\.1[2-6]\d?mm"/,
    );
    const { do: what, use, good, ladder } = next();
    expect([what, ladder]).toEqual(['stop', null]);
    expect(use.confidence).toBeGreaterThanOrEqual(0.95);
    expect(good.from).toBeGreaterThan(0.08);
    expect(good.to).toBeLessThan(0.2);
  });

  it('shares results of like jobs in the folder, and only of those', () => {
    write('other', 'dry', DRY);
    write('other', 'glued', GLUED, { depth: 11 });
    write('deep', 'glued', GLUED, { depth: 25 });
    write('oak', 'glued', GLUED, { woods: { field: 'white oak', plug: 'black walnut' } });
    write('lid', 'glued', [[0.14, 'good']]);
    write('lid', 'glued', GLUED, { cutter: { diameter: 6, cuts: null } });
    const { results, use } = next();
    expect(results).toEqual({
      here: 1,
      others: [{ log: 'other.fitlog.jsonl', results: 10 }],
      unlike: { 'another cutter': 5 },
    });
    expect(use.clearance).toBeGreaterThan(0.1);
    expect(run('next', 'lid.json').stdout).toMatch(
      /11 results \(1 of its own, 10 from other\.fitlog\.jsonl\); 5 of the log not counted \(another cutter\)/,
    );
  });

  it('names contradictions with their lines', () => {
    write('lid', 'glued', [...GLUED, [0.06, 'gappy']]);
    const r = run('next', 'lid.json');
    expect(r.stdout).toMatch(
      /Contradiction: lid\.fitlog\.jsonl line 6 \(0\.06 mm, glued, gappy\) does not go with lid\.fitlog\.jsonl line 2 \(0\.08 mm, glued, tight\)/,
    );
    expect(next().doubted).toMatchObject([{ log: 'lid.fitlog.jsonl', line: 6 }]);
  });

  it('reports damage in any log it reads, counts the good lines and keeps its own damage aside', () => {
    write('lid', 'dry', [[0.08, 'good']]);
    appendFileSync(join(dir, 'lid.fitlog.jsonl'), 'torn\n');
    write('lid', 'dry', [[0.12, 'good']]);
    writeFileSync(join(dir, 'z.fitlog.jsonl'), '{"version":3}\n');
    const r = run('next', 'lid.json', '--json');
    expect(r.status).toBe(0);
    expect(r.stderr).toMatch(/lid\.fitlog\.jsonl: line 2 is damaged/);
    expect(r.stderr).toMatch(/z\.fitlog\.jsonl: line 1 is of version 3/);
    expect(JSON.parse(r.stdout)).toMatchObject({
      results: { here: 2 },
      problems: [/./, /./].map((m) => expect.stringMatching(m)),
    });
    expect(readFileSync(join(dir, 'lid.fitlog.damaged'), 'utf8')).toBe('torn\n');
    expect(readFileSync(join(dir, 'z.fitlog.jsonl'), 'utf8')).toBe('{"version":3}\n');
  });

  it('heeds the number of steps and what the machine repeats, and refuses what is neither', () => {
    expect(JSON.parse(run('next', 'lid.json', '--json', '--steps', '3').stdout).ladder).toEqual([
      0.04, 0.12, 0.2,
    ]);
    const rough = run('next', 'lid.json', '--json', '--repeatability', '0.05mm');
    expect(JSON.parse(rough.stdout).ladder).toEqual([0.04, 0.09, 0.14, 0.19, 0.24]);
    const r = run('next', 'lid.json', '--steps', '1', '--repeatability', '3mm');
    expect(r.status).toBe(2);
    expect(r.stderr).toMatch(
      /--steps: "1" must be a whole number, 2 to 12\n.*--repeatability: "3mm" must be 0\.001 to 0\.5 mm/,
    );
  });

  it('speaks in the units of the recipe', () => {
    recipe('inch.json', {
      units: 'in',
      outline: { shape: 'circle', diameter: 4, margin: 0.25 },
      stock: undefined,
      depth: '8mm',
      skin: '1.5mm',
      cutter: { diameter: '1/8in' },
      fit: { clearance: '0.08mm' },
    });
    const r = run('next', 'inch.json');
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toMatch(/from 0\.0016 in to 0\.0079 in/);
    expect(
      run('record', 'inch.json', '--clearance', '0.004', '--result', 'good', '--tried', 'dry', '--json')
        .stdout,
    ).toMatch(/"clearance": 0\.1016/);
  });
});

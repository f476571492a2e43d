import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { wrapped } from '../../src/commands/wrap.js';
import { exampleText } from '../recipe/example.js';
import { type Ran, ran } from '../support/warm.js';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'inspect-test-'));
  writeFileSync(join(dir, 'lid.json'), exampleText());
  writeFileSync(
    join(dir, 'inches.json'),
    exampleText({
      units: 'in',
      outline: { shape: 'circle', diameter: 4, margin: 0.25 },
      stock: undefined,
      'cutter.cuts': undefined,
      'cutter.flute': undefined,
      'cutter.ease': undefined,
      depth: 0.3,
      skin: 0.06,
      fit: {},
    }),
  );
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): Ran {
  return ran(['inspect', ...args], dir);
}

interface Printed {
  readonly findings: readonly { number: number; code: string; severity: string; do: string }[];
  readonly reach: readonly { diameter: number; use: string; pocket: { share: number } }[];
  readonly plan: { readonly stages: readonly { part: string; name: string; feed: number }[] };
}

describe('inspect', () => {
  it('prints the findings worst first, with places, and where each cutter gets to', () => {
    const r = run('lid.json');
    expect(r.status, r.stderr).toBe(0);
    const severities = [...r.stdout.matchAll(/^ *\d+ {2}(STOP|take care|note) /gm)].map((m) => m[1]);
    expect(severities.length).toBeGreaterThan(3);
    expect(severities).toEqual([...severities].sort((a, b) => rank(a!) - rank(b!)));
    expect(r.stdout).toMatch(/full-depth-contact +at -?\d+(\.\d)?, -?\d/);
    expect(r.stdout).toMatch(/6\.35 mm .*roughing cutter\n/);
    expect(r.stdout.split('\n').every((l) => l.length <= 110)).toBe(true);
    expect(readdirSync(dir).sort()).toEqual(['inches.json', 'lid.json']);
  });

  it('gives the same as JSON, with the plan', () => {
    const r = run('lid.json', '--json');
    expect(r.status, r.stderr).toBe(0);
    const { findings, plan, reach } = JSON.parse(r.stdout) as Printed;
    expect(findings.map((f) => f.number)).toEqual(findings.map((_, k) => k + 1));
    expect(findings[0]).not.toHaveProperty('zone');
    expect(plan.stages.map((s) => `${s.part} ${s.name}`)).toEqual([
      'pocket roughing',
      'pocket finishing',
      'plug roughing',
      'plug finishing',
    ]);
    const at = (use: string) => reach.find((row) => row.use === use)!;
    expect(at('finishing').pocket.share).toBeCloseTo(1, 6);
    expect(at('roughing').pocket.share).toBeLessThan(0.9);
  });

  it('uses the list of cutters in the recipe instead of the stock list', () => {
    writeFileSync(join(dir, 'own.json'), exampleText({ cutters: ['5mm', '2mm'] }));
    const r = run('own.json', '--json');
    rmSync(join(dir, 'own.json'));
    expect(r.status, r.stderr).toBe(0);
    const { reach } = JSON.parse(r.stdout) as Printed;
    expect(reach.map((row) => row.diameter)).toEqual([2, 3.175, 5, 6.35]);
  });

  it('draws the findings as PNG and SVG', () => {
    expect(run('lid.json', '--picture', 'a.png').status).toBe(0);
    const { width, height } = PNG.sync.read(readFileSync(join(dir, 'a.png')));
    expect(width).toBe(1400);
    expect(height).toBeGreaterThan(1000);
    expect(run('lid.json', '--picture', 'a.svg').status).toBe(0);
    expect(readFileSync(join(dir, 'a.svg'), 'utf8')).toMatch(/^<svg .*<\/svg>\n$/s);
  });

  it('speaks inches in an inch recipe', () => {
    const r = run('inches.json');
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toContain('Places in in,');
    expect(r.stdout).not.toMatch(/\d mm\b(?!\/s2)/);
  });

  it('a picture it cannot write, or of another kind, is one clear line and exit 2; nothing is written', () => {
    const kind = run('lid.json', '--picture', 'a.gif');
    expect(kind.status).toBe(2);
    expect(kind.stderr).toBe(
      'inlaywright: --picture: "a.gif" must end in .png or .svg, such as findings.png\n',
    );
    const folder = run('lid.json', '--picture', join('nowhere', 'a.png'));
    expect(folder.status).toBe(2);
    expect(folder.stderr).toMatch(/cannot write nowhere.a\.png: .*name a file/);
    expect(existsSync(join(dir, 'nowhere'))).toBe(false);
  });

  it('a recipe that is refused is refused, exit 1', () => {
    const r = run('lid.json', '--set', 'cutter.thin=refuse', '--set', 'cutter.ease=3');
    expect(r.status).toBe(1);
    expect(r.stderr).toMatch(/refused: /);
  });
});

function rank(severity: string): number {
  return ['STOP', 'take care', 'note'].indexOf(severity);
}

describe('wrapping', () => {
  it('keeps every word, set in, within 100 columns; a longer word has a line of its own', () => {
    const long = 'x'.repeat(120);
    const text = `${'word '.repeat(60)}${long} end`;
    const lines = wrapped(text, 5).split('\n');
    expect(
      lines
        .join(' ')
        .split(/ +/)
        .filter((w) => w !== ''),
    ).toEqual(text.split(' '));
    for (const l of lines) {
      expect(l.startsWith('     ')).toBe(true);
      if (!l.includes(long)) expect(l.length).toBeLessThanOrEqual(100);
    }
    expect(lines).toContain(`     ${long}`);
  });
});

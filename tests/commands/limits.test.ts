import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exampleText } from '../recipe/example.js';
import { type Ran, ran } from '../support/warm.js';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'limits-test-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): Ran {
  return ran(['limits', ...args], dir);
}

/** A frame 5 mm wide: its limit is a corner radius of 2.5 mm. */
function frame(changes: Record<string, unknown> = {}): string {
  const recipe = {
    roughing: undefined,
    cutter: { diameter: 3, flute: 22 },
    pattern: { generator: 'panel', width: 5 },
  };
  writeFileSync(join(dir, 'frame.json'), exampleText({ ...recipe, ...changes }));
  return 'frame.json';
}

describe('limits', () => {
  it('prints a row a cutter, and the largest that loses nothing', () => {
    const r = run(frame());
    expect(r.status, r.stderr).toBe(0);
    expect(r.stderr).toBe('inlaywright: test-piece: trying cutters and sizes\n');
    const lines = r.stdout.trimEnd().split('\n');
    expect(lines.length).toBe(2 + 12 + 1);
    expect(lines[1]).toMatch(/^cutter +corner radius +smallest scale +lost at the size as drawn$/);
    // 1.8 mm / 2.5 mm = 0.72 and 3.6 / 2.5 = 1.44, found to 1 % and rounded up.
    expect(lines).toContainEqual(expect.stringMatching(/^3 mm +1\.8 mm +0\.73 +nothing$/));
    expect(lines).toContainEqual(expect.stringMatching(/^6 mm +3\.6 mm +1\.4[45] +1 part gone \([^)]+\)$/));
    expect(lines[14]).toBe('Largest stock cutter that loses nothing at the size as drawn: 4 mm.');
  });

  it('speaks inches in an inch recipe, and takes settings', () => {
    const inches = {
      units: 'in',
      outline: { shape: 'circle', diameter: 4, margin: 0.25 },
      stock: undefined,
      cutter: { diameter: '1/8in' },
      pattern: { generator: 'panel', width: 0.2 },
      depth: 0.3,
      skin: 0.06,
      fit: {},
    };
    const r = run(frame(inches), '--set', 'pattern.width=0.25in');
    expect(r.status, r.stderr).toBe(0);
    // A frame of 0.25 in: r = 0.125 in; a 3/16 in cutter has 0.1125 in, a 6 mm one 0.1417 in.
    expect(r.stdout).toMatch(/\n3\/16 in +0\.1125 in +0\.9\d? +nothing\n/);
    expect(r.stdout).toMatch(/drawn: 3\/16 in\.\n$/);
  });

  it('gives letters by their height', () => {
    const plate = {
      outline: { shape: 'rectangle', width: 160, height: 70 },
      pattern: { generator: 'lettering', text: 'eat', height: 40 },
    };
    const r = run(frame(plate));
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toMatch(
      /^test-piece: drawn with letters of 40 mm; the smallest letters that lose nothing, to 1 %/,
    );
    const at = (cutter: string): number =>
      Number(new RegExp(`\\n${cutter} mm +\\S+ mm +(\\S+) mm  `).exec(r.stdout)![1]);
    // In proportion to the cutter, rounded up to half a millimetre.
    expect(at('6') - 2 * at('3')).toBeLessThanOrEqual(0.001);
    expect(at('6') - 2 * at('3')).toBeGreaterThan(-1.001);
    expect(r.stdout).toMatch(/\n6 mm .*letter \d '[eat]'/);
  });

  it('prints one JSON document and nothing else with --json', () => {
    const r = run(frame(), '--json');
    expect(r.status).toBe(0);
    const found = JSON.parse(r.stdout);
    expect(found).toMatchObject({
      recipe: 'frame.json',
      name: 'test-piece',
      units: 'mm',
      precision: 0.01,
      largest: '4mm',
    });
    expect(found.cornerRadius).toBeCloseTo(1.8, 9);
    expect(found.cutters.length).toBe(12);
    expect(found.cutters[10]).toMatchObject({ cutter: '6mm', diameter: 6, lost: { vanished: 1 } });
    expect(found.cutters[10].first.length).toBe(1);
    expect(found.cutters[10].scale / 1.44).toBeCloseTo(1, 1);
    expect(found.cutters[6]).toMatchObject({ cutter: '3mm', lost: {}, first: [] });
    expect(JSON.stringify(found)).not.toMatch(/null/);
  });

  it('says so when something is lost at every size', () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 40"><rect id="plate" width="60" height="30"/><rect id="hair" y="39.9" width="60" height="0.01"/></svg>';
    writeFileSync(join(dir, 'd.svg'), svg);
    const r = run(frame({ pattern: { generator: 'drawing', file: 'd.svg', width: 60, speck: 0, refit: 0 } }));
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toMatch(/\n1\/32 in +0\.476 mm +none +1 part gone/);
    expect(r.stdout).toMatch(
      /\nSomething is lost at every size up to 64 times as large: 1 part gone \([^)]*hair[^)]*\)\./,
    );
    expect(r.stdout).toMatch(/\nNo stock cutter keeps everything at the size as drawn\.\n$/);
  });

  it('refuses bad input and usage with 2, in one line', () => {
    for (const [args, message] of [
      [['nowhere.json'], /^inlaywright: cannot read nowhere\.json: there is no such file or folder/],
      [[frame(), '--set', 'pattern.width=-3mm'], /^inlaywright: .*pattern\.width: .*out of range/],
      [[], /^inlaywright: missing required argument 'recipe'/],
    ] as const) {
      const r = run(...args);
      expect(r.status).toBe(2);
      expect(r.stdout).toBe('');
      expect(r.stderr).toMatch(message);
      expect(r.stderr.trimEnd().split('\n').length).toBe(1);
    }
  });
});

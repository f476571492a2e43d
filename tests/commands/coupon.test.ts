import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import dxfParser from 'dxf-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ProofFiles, proveSteps, type StepsAsked } from '../../src/proof/index.js';
import { exampleText } from '../recipe/example.js';
import { type Ran, ran } from '../support/warm.js';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'coupon-test-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): Ran {
  return ran(args, dir);
}

function recipe(name: string, changes: Record<string, unknown> = {}): string {
  writeFileSync(join(dir, `${name}.json`), exampleText({ name, ...changes }));
  return `${name}.json`;
}

function file(piece: string, name: string): string {
  return readFileSync(join(dir, 'out', piece, name), 'utf8');
}

function filesOf(piece: string): ProofFiles {
  return {
    pocketSvg: file(piece, 'pocket.svg'),
    plugSvg: file(piece, 'plug.svg'),
    pocketDxf: file(piece, 'pocket.dxf'),
    plugDxf: file(piece, 'plug.dxf'),
  };
}

interface Entry {
  readonly wood: { width: number; height: number; area: number };
  readonly kerf: number;
  readonly edge: number;
  readonly steps: readonly {
    clearance: number;
    box: readonly [number, number, number, number];
    gap: { least: number; most: number };
    parts: { pocket: number; plug: number };
  }[];
}

function entryOf(piece: string): Entry {
  return JSON.parse(file(piece, 'job.json')).coupon;
}

function asked(piece: string, carrier = false): StepsAsked {
  const { steps, kerf, edge } = entryOf(piece);
  return {
    radius: 3.19 / 2,
    carrier,
    saw: kerf,
    edge,
    steps: steps.map(({ box, clearance }, k) => ({ box, clearance, dots: k + 1 })),
  };
}

describe('coupon', () => {
  it('makes a proven coupon of five steps, and notes them in the fit log', () => {
    const path = recipe('lid');
    const r = run('coupon', path);
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toMatch(
      /^lid-coupon: 5 steps on [\d.]+ cm2 of wood \(the piece takes 92.2 cm2\); proven gaps per side, mm: 0\.04, 0\.08, 0\.12, 0\.16, 0\.2; out.lid-coupon\n$/,
    );
    expect(readdirSync(join(dir, 'out', 'lid-coupon')).sort()).toEqual([
      'job.json',
      'picture.png',
      'picture.svg',
      'plug.dxf',
      'plug.svg',
      'pocket.dxf',
      'pocket.svg',
      'sheet.html',
    ]);
    const record = run('fit', 'record', path, '--step', '2', '--result', 'good', '--tried', 'dry');
    expect(record.stdout).toContain('recorded step 2, 0.08 mm per side');
    expect(readFileSync(join(dir, 'lid.fitlog.jsonl'), 'utf8').split('\n')[0]).toContain(
      '"kind":"coupon","ladder":[0.04,0.08,0.12,0.16,0.2]',
    );
  });

  it('has in every step, as written, the gap of that step', () => {
    const proof = proveSteps(filesOf('lid-coupon'), asked('lid-coupon'));
    expect(proof.failures).toEqual([]);
    expect(proof.steps).toHaveLength(5);
    proof.steps.forEach(({ gap }, k) => {
      const clearance = [0.04, 0.08, 0.12, 0.16, 0.2][k]!;
      expect(Math.abs(gap.least - clearance)).toBeLessThan(0.002);
      expect(Math.abs(gap.most - clearance)).toBeLessThan(0.002);
    });
  });

  it('is not taken for proven when anything about a step is otherwise than asked', () => {
    const files = filesOf('lid-coupon');
    const good = asked('lid-coupon');
    const failing = (change: Partial<StepsAsked>, changed: ProofFiles = files): string =>
      proveSteps(changed, { ...good, ...change }).failures.join('; ');
    const swapped = good.steps.map((s, k) => ({ ...s, clearance: good.steps[4 - k]!.clearance }));
    expect(failing({ steps: swapped })).toMatch(/step 1: the gap is only 0.04 mm .* where 0.2 was asked/);
    const dots = good.steps.map((s) => ({ ...s, dots: 2 }));
    expect(failing({ steps: dots })).toMatch(/step 1 has 1 dots in the pocket, and 2 were asked/);
    expect(failing({ saw: 3.1 })).toMatch(/steps 1 and 2 is 3 mm apart, and the saw needs 3.1/);
    expect(failing({ edge: 5.2 })).toMatch(/does not lie in the wood of one step, 5.2 mm from its edge/);
    expect(failing({ steps: good.steps.slice(0, 4) })).toMatch(/does not lie in the wood of one step/);
    expect(failing({ radius: 3 })).toMatch(
      /a dot of the pocket has a radius of 1.8952 mm, and the cutter has 3/,
    );
    expect(failing({ carrier: true })).not.toBe('');
    const without = files.plugSvg.replace(/<g id="dots">[\s\S]*?<\/g>/, '<g id="dots"></g>');
    expect(failing({}, { ...files, plugSvg: without })).toMatch(/step 5 has 0 dots in the plug/);
  });

  it('marks step k with k dots in both drawings, on a layer of their own', () => {
    const { steps } = entryOf('lid-coupon');
    for (const part of ['pocket', 'plug']) {
      // An outside reader of DXF counts them.
      const Reader = dxfParser as unknown as typeof dxfParser.default;
      const drawing = new Reader().parseSync(file('lid-coupon', `${part}.dxf`))!;
      const extent = drawing.header.$EXTMAX as { x: number; y: number };
      const [wide, high] = [extent.x, extent.y];
      const middles = drawing.entities
        .filter((e) => e.layer === 'DOTS')
        .map((e) => (e as unknown as { vertices: { x: number; y: number }[] }).vertices)
        .map((v) => [
          (Math.min(...v.map((p) => p.x)) + Math.max(...v.map((p) => p.x))) / 2 - wide / 2,
          (Math.min(...v.map((p) => p.y)) + Math.max(...v.map((p) => p.y))) / 2 - high / 2,
        ]);
      expect(middles).toHaveLength(1 + 2 + 3 + 4 + 5);
      steps.forEach(({ box: [x0, y0, x1, y1] }, k) => {
        expect(middles.filter(([x, y]) => x! > x0 && x! < x1 && y! > y0 && y! < y1)).toHaveLength(k + 1);
      });
    }
  });

  it('numbers every part by its step in both drawings', () => {
    const { steps } = entryOf('lid-coupon');
    for (const part of ['pocket', 'plug'] as const) {
      const words = [...file('lid-coupon', `${part}.svg`).matchAll(/>(\d\.\d+)<\/text>/g)].map((m) => m[1]!);
      const expected = steps.flatMap((s, k) =>
        Array.from({ length: s.parts[part] }, (_, i) => `${k + 1}.${i + 1}`),
      );
      expect(words.sort()).toEqual(expected.sort());
    }
  });

  it('writes the same bytes again', () => {
    const names = readdirSync(join(dir, 'out', 'lid-coupon'));
    const before = names.map((n) => readFileSync(join(dir, 'out', 'lid-coupon', n)));
    expect(run('coupon', 'lid.json').status).toBe(0);
    names.forEach((n, k) => {
      expect(readFileSync(join(dir, 'out', 'lid-coupon', n)).equals(before[k]!), n).toBe(true);
    });
  });

  it('is mirrored on a carrier, and says there where the dots go', () => {
    const path = recipe('carrier', { 'fit.plug': 'carrier', 'stock.plug': 16 });
    const r = run('coupon', path, '--ladder', '0.05, 0.1mm', '--size', '45mm');
    expect(r.status, r.stderr).toBe(0);
    const proof = proveSteps(filesOf('carrier-coupon'), asked('carrier-coupon', true));
    expect(proof.failures).toEqual([]);
    expect(proof.steps.map((s) => s.gap.least)).toEqual([expect.closeTo(0.05, 3), expect.closeTo(0.1, 3)]);
    expect(proveSteps(filesOf('carrier-coupon'), asked('carrier-coupon')).holds).toBe(false);
    const sheet = file('carrier-coupon', 'sheet.html');
    expect(sheet).toContain('into the carrier');
    expect(sheet).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('takes the clearance from the pocket when the recipe does, and speaks inches in an inch recipe', () => {
    const path = recipe('inches', {
      units: 'in',
      outline: { shape: 'circle', diameter: 4, margin: 0.25 },
      stock: undefined,
      roughing: undefined,
      cutter: { diameter: '1/8in', cuts: '3.19mm' },
      depth: 0.3,
      skin: 0.06,
      fit: { from: 'pocket' },
    });
    const r = run('coupon', path, '--from', '0.002in', '--to', '0.006in', '--steps', '3');
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toMatch(/ in2 of wood .*per side, in: 0\.002, 0\.004, 0\.006;/);
    expect(entryOf('inches-coupon').steps.map((s) => s.clearance)).toEqual([0.0508, 0.1016, 0.1524]);
    expect(file('inches-coupon', 'sheet.html')).toContain('lbf');
  });

  it.each(['lid', 'carrier', 'inches', 'reduced'])(
    'shows on the sheet of %s every step’s number whole, and the datum',
    (name) => {
      // Drawn at a third of its size, where a disc takes more room than the datum does.
      if (name === 'reduced') {
        const r = run('coupon', recipe(name), '--steps', '9', '--size', '60mm');
        expect(r.status, r.stderr).toBe(0);
      }
      const figures = [
        ...file(`${name}-coupon`, 'sheet.html').matchAll(/<figure><svg viewBox="([^"]+)".*?<\/svg>/gs),
      ];
      expect(figures).toHaveLength(2);
      for (const [text, view] of figures) {
        const [x, y, w, h] = view!.split(' ').map(Number) as [number, number, number, number];
        const [dot, ...discs] = [...text.matchAll(/<circle cx="([^"]+)" cy="([^"]+)" r="([^"]+)"/g)].map(
          (m) => m.slice(1).map(Number) as [number, number, number],
        );
        expect(discs).toHaveLength(entryOf(`${name}-coupon`).steps.length);
        for (const [cx, cy, r] of discs) {
          expect(Math.min(cx - r - x, x + w - cx - r, cy - r - y, y + h - cy - r)).toBeGreaterThanOrEqual(0);
          expect(Math.hypot(cx - dot![0], cy - dot![1])).toBeGreaterThan(r + dot![2]);
        }
      }
    },
  );

  it.each([
    [['--size', '8mm'], /--size: 8 mm is too small .*: at least \d+ mm/],
    [['--size', '1m'], /--size: "1m" has a unit other than mm and in/],
    [['--steps', '10'], /--steps: "10" must be a whole number, 1 to 9/],
    [['--steps', '0'], /--steps: "0" must be a whole number, 1 to 9/],
    [['--from', '0.2mm', '--to', '0.1mm'], /ladder.to: must be more than ladder.from/],
    [['--to', '0.06mm'], /finer than the 0.02 mm the machine repeats/],
    [
      ['--ladder', '0.05,0.06'],
      /--ladder: 0.05 mm and 0.06 mm are nearer than the 0.02 mm the machine repeats/,
    ],
    [['--ladder', '0.1,0.05'], /--ladder: 0.05 mm does not come after 0.1 mm/],
    [
      ['--ladder', '0.1,1.95'],
      /--ladder: 1.95 mm per side is too much for a corner radius of 1.895 mm: less than/,
    ],
    [['--ladder', '0.1,3'], /--ladder: "3" must be 0 to 2 mm/],
    [['--ladder', '0.1', '--steps', '3'], /--steps: is given besides --ladder/],
  ] as const)('refuses %j in one line', (options, says) => {
    const path = recipe('bad');
    const r = run('coupon', path, ...options);
    expect(r.status, r.stderr).toBe(2);
    expect(r.stderr).toMatch(says);
    expect(r.stderr).not.toMatch(/NaN|Infinity|undefined|\n +at /);
    expect(existsSync(join(dir, 'out', 'bad-coupon'))).toBe(false);
    expect(existsSync(join(dir, 'bad.fitlog.jsonl'))).toBe(false);
  });

  it('names a size that works', () => {
    const path = recipe('least');
    const least = /at least (\d+ mm)/.exec(run('coupon', path, '--size', '8mm').stderr)![1]!;
    const r = run('coupon', path, '--size', least.replace(' ', ''), '--steps', '1', '--json');
    expect(r.status, r.stderr).toBe(0);
    const said = JSON.parse(r.stdout);
    expect(said.steps).toHaveLength(1);
    expect(said.steps[0].clearance).toBe(0.04);
    expect(said.steps[0].gap.least).toBeCloseTo(0.04, 3);
    // Half of 7000 kPa x face (Wood Handbook table 5-3a, as transcribed in shop/strength.ts).
    expect(said.steps[0].pressAtMost).toBeCloseTo((7 * said.steps[0].plugArea) / 2, 6);
  });
});

import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { stockCutterFor } from '../../src/commands/prove-text.js';
import { circle, dxfOf, rounded, svgOf } from '../proof/drawn.js';
import { exampleText } from '../recipe/example.js';
import { type Ran, ran } from '../support/warm.js';

let dir: string;
let made: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'prove-test-'));
  made = join(dir, 'out');
  writeFileSync(join(dir, 'lid.json'), exampleText());
  const r = ran(['make', 'lid.json'], dir);
  if (r.status !== 0) throw new Error(r.stderr);
  made = join('out', readdirSync(made)[0]!);
}, 60_000);
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): Ran {
  return ran(['prove', ...args], dir);
}

function put(name: string, text: string | Uint8Array): string {
  writeFileSync(join(dir, name), text);
  return name;
}

interface Printed {
  readonly as: string;
  readonly size: readonly [number, number];
  readonly parts: number;
  readonly holes: number;
  readonly reach: number;
  readonly field: number;
  readonly holds: boolean;
  readonly stockCutter: string | null;
  readonly places: readonly { at: readonly [number, number]; radius: number; kind: string }[];
  readonly failures: readonly string[];
}

const json = (...args: string[]): Printed => JSON.parse(run(...args, '--json').stdout) as Printed;
const svg = (body: string, width = '100mm', height = '80mm') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 100 80">${body}</svg>`;
/** A slot 6 mm wide with round ends, from (20, 30) to (60, 36). */
const SLOT = '<rect x="20" y="44" width="40" height="6" rx="3"/>';

describe('prove, one drawing', () => {
  it('gives our own drawings the reach that job.json states, as SVG and DXF', () => {
    const { proof } = JSON.parse(readFileSync(join(dir, made, 'job.json'), 'utf8')) as {
      proof: {
        required: number;
        pocket: { reach: number; field: number };
        plug: { reach: number; field: number };
      };
    };
    for (const part of ['pocket', 'plug'] as const) {
      for (const kind of ['svg', 'dxf']) {
        const found = json(join(made, `${part}.${kind}`), '--cutter', `${2 * proof.required}mm`);
        expect(found).toMatchObject({ as: part, holds: true, failures: [] });
        expect(Math.abs(found.reach - proof[part].reach)).toBeLessThan(1e-5);
        expect(Math.abs(found.field - proof[part].field)).toBeLessThan(1e-3);
      }
    }
  });

  it('prints a certificate: 0 when the cutter can, 1 when it cannot, and which cutter would do', () => {
    const file = put('slot.svg', svg(SLOT));
    const can = run(file, '--cutter', '6mm');
    expect(can.status, can.stderr).toBe(0);
    expect(can.stdout).toMatch(/^slot\.svg: can be cut by a 6 mm cutter as a pocket\n/);
    expect(can.stdout).toMatch(/size +40 mm wide, 6 mm high\n/);
    expect(can.stdout).toMatch(/curves are followed to within 0\.0015 mm/);
    const cannot = run(file, '--cutter', '1/4in');
    expect(cannot.status).toBe(1);
    expect(cannot.stdout).toMatch(/cannot be cut by a 1\/4 in cutter as a pocket/);
    expect(cannot.stdout).toMatch(/reach +3\.000\d mm; measured again by distance field \d/);
    expect(cannot.stdout).toMatch(/^A 6 mm cutter would get everywhere\.$/m);
    // From outside nothing hinders.
    expect(run(file, '--cutter', '1/4in', '--as', 'plug').status).toBe(0);
    expect(readdirSync(dir).sort()).toEqual(['lid.json', 'out', 'slot.svg']);
  });

  it('names the places, from the lower left corner, in either unit', () => {
    const file = put(
      'corner.svg',
      // Round but for the lower left corner of 90 degrees, at (10, 70) on the page.
      svg('<path d="M10 70 L10 20 A10 10 0 0 1 20 10 H80 A10 10 0 0 1 90 20 V60 A10 10 0 0 1 80 70 Z"/>'),
    );
    const found = json(file, '--cutter', '3mm');
    expect(found).toMatchObject({ holds: false, parts: 1, holes: 0, stockCutter: null });
    expect(found.size[0]).toBeCloseTo(80, 5);
    expect(found.places).toEqual([{ at: [0, 0], radius: 0.0005, kind: 'inside corner, sharp' }]);
    const r = run(file, '--cutter', '3mm', '--units', 'in');
    expect(r.status).toBe(1);
    expect(r.stdout).toMatch(/size +3\.1496 in wide, 2\.3622 in high/);
    expect(r.stdout).toMatch(/reach +0 in: it has a sharp inside corner/);
    expect(r.stdout).toMatch(/^ +1 +0 +0 +0 +inside corner, sharp$/m);
    expect(r.stdout).toMatch(/No round cutter gets into a sharp inside corner/);
  });

  it('reads drawings of thin lines, and DXF of lines and arcs from elsewhere', () => {
    const thin = put('thin.svg', svg(`<g fill="none" stroke="#000" stroke-width="0.1">${SLOT}</g>`));
    expect(json(thin, '--cutter', '3mm').reach).toBe(3);
    const lines = [
      ['LINE', 10, 23, 20, 30, 11, 57, 21, 30],
      ['LINE', 10, 57, 20, 36, 11, 23, 21, 36],
      ['ARC', 10, 57, 20, 33, 40, 3, 50, 270, 51, 90],
      ['ARC', 10, 23, 20, 33, 40, 3, 50, 90, 51, 270],
    ].map(([name, ...groups]) => [0, name, 8, '0', ...groups].join('\n'));
    const text = `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${lines.join('\n')}\n0\nENDSEC\n0\nEOF\n`;
    const found = json(put('slot.dxf', text), '--cutter', '5mm');
    expect(found).toMatchObject({ parts: 1, holes: 0, holds: true });
    expect(found.reach).toBeCloseTo(3.00025, 4);
    expect(found.size.map((v) => Number(v.toFixed(4)))).toEqual([40, 6]);
  });

  it('draws the places: as large as asked for in print, numbered', () => {
    const file = put('slot.svg', svg(SLOT));
    const r = run(file, '--cutter', '5mm', '--picture', 'slot-tight.png');
    expect(r.status, r.stderr).toBe(0);
    expect(PNG.sync.read(readFileSync(join(dir, 'slot-tight.png'))).width).toBe(1400);
    run(file, '--cutter', '5mm', '--picture', 'slot-tight.svg');
    const text = readFileSync(join(dir, 'slot-tight.svg'), 'utf8');
    // 40 mm across 880 of 1000 units: a circle of 3 mm is 66.
    expect(text).toMatch(/<circle [^>]*r="66(\.\d+)?"/);
    expect(text).toMatch(/>1: (slot|inside corner), radius 3 mm, at /);
    rmSync(join(dir, 'slot-tight.png'));
    rmSync(join(dir, 'slot-tight.svg'));
  });
});

describe('prove, pocket and plug', () => {
  it('finds the gap even in our own pair, and not as asked for another clearance', () => {
    const pair = [join(made, 'pocket.svg'), join(made, 'plug.svg'), '--cutter', '3mm'];
    const { proof } = JSON.parse(readFileSync(join(dir, made, 'job.json'), 'utf8')) as {
      proof: { gap: { least: number; most: number } };
    };
    const r = run(...pair, '--json');
    expect(r.status, r.stderr).toBe(0);
    const { gap } = JSON.parse(r.stdout) as { gap: { least: number; most: number; overlaps: unknown[] } };
    expect(gap.least).toBeCloseTo(proof.gap.least, 5);
    expect(gap.most).toBeCloseTo(proof.gap.most, 5);
    expect(gap.overlaps).toEqual([]);
    const clearance = (proof.gap.least + proof.gap.most) / 2;
    expect(run(...pair, '--clearance', `${clearance.toFixed(3)}mm`).status).toBe(0);
    const off = run(...pair, '--clearance', `${(clearance + 0.01).toFixed(3)}mm`);
    expect(off.status).toBe(1);
    expect(off.stdout).toMatch(/the gap is not as asked/);
    const dxf = run(join(made, 'pocket.dxf'), join(made, 'plug.dxf'), '--cutter', '3mm');
    expect(dxf.status, dxf.stdout).toBe(0);
  });

  const box = (inset: number, bump = 0): [number, number, number?][] => [
    [30 + inset, 30 + inset],
    [90 - inset, 30 + inset],
    [90 - inset + bump, 50],
    [90 - inset, 70 - inset],
    [30 + inset, 70 - inset],
  ];

  it('finds a planted overlap at its place, as deep as it is, and maps the gap', () => {
    const pocket = put('box-pocket.svg', svgOf('pocket', [rounded(box(0), 3)]));
    // The right wall bulges by 0.5 at (90, 50), where the gap would be 0.1.
    const plug = put('box-plug.svg', svgOf('plug', [rounded(box(0.1, 0.5), 3)]));
    const r = run(pocket, plug, '--picture', 'gap.svg', '--json');
    expect(r.status, r.stderr).toBe(1);
    const { gap } = JSON.parse(r.stdout) as {
      gap: { least: number; leastAt: number[]; overlaps: { at: [number, number]; deep: number }[] };
    };
    expect(gap.least).toBeCloseTo(-0.4, 2);
    // From the lower left corner of the pocket, (30, 30).
    // On either boundary: the pocket's wall there is at x 60, the plug's at 60.4.
    expect(Math.abs(gap.overlaps[0]!.at[0] - 60.2)).toBeLessThan(0.21);
    expect(Math.abs(gap.overlaps[0]!.at[1] - 20)).toBeLessThan(0.1);
    expect(gap.overlaps[0]!.deep).toBeCloseTo(0.4, 2);
    const picture = readFileSync(join(dir, 'gap.svg'), 'utf8');
    expect(picture).toMatch(/>overlaps by up to 0\.\d+ mm</);
    expect(picture).toMatch(/stroke-dasharray/);
    expect(run(pocket, plug).stdout).toMatch(
      /the plug does not go in\n +least gap -0\.\d+ mm at .*: it overlaps/,
    );
    rmSync(join(dir, 'gap.svg'));
  });

  it('turns a mirrored plug back over', () => {
    const lopsided: [number, number][] = [
      [30, 30],
      [90, 30],
      [60, 70],
      [30, 70],
    ];
    const pocket = put('m-pocket.svg', svgOf('pocket', [rounded(lopsided, 3)]));
    const mirrored = rounded(lopsided, 3).map(([x, y, b]) => [200 - x, y, -b] as const);
    const plug = put('m-plug.svg', svgOf('plug', [mirrored]));
    expect(run(pocket, plug, '--mirrored').status).toBe(0);
    expect(run(pocket, plug).status).toBe(1);
    const two = put('m-two.svg', svgOf('plug', [mirrored, circle(30, 130, 9)]));
    expect(run(pocket, two, '--mirrored').stdout).toMatch(
      /the pocket has 1 part and 0 holes, the plug 2 parts and 0 holes/,
    );
  });
});

describe('prove, bad input', () => {
  const path = (d: string) => svg(`<path d="${d}"/>`);
  const strict = (d: string) => svg(`<g id="pocket"><path d="${d}"/></g>`);
  const open = dxfOf('pocket', [circle(30, 30, 5)]).replace(/\n70\n1\n10\n/, '\n70\n0\n10\n');

  test.each<[string, string | Uint8Array | null, string[], RegExp]>([
    ['gone.svg', null, [], /cannot read gone\.svg: there is no such file/],
    ['drawing.txt', svg(SLOT), [], /drawing\.txt: must be a drawing: a file that ends in \.svg or \.dxf/],
    [
      'dxf.svg',
      dxfOf('pocket', [circle(9, 9, 5)]),
      [],
      /dxf\.svg: holds a DXF drawing, though its name ends in \.svg/,
    ],
    ['svg.dxf', svg(SLOT), [], /svg\.dxf: holds an SVG drawing, though its name ends in \.dxf/],
    ['junk.svg', Uint8Array.from({ length: 999 }, (_, k) => (k * 89) % 256), [], /junk\.svg/],
    ['junk.dxf', Uint8Array.from({ length: 999 }, (_, k) => (k * 89) % 256), [], /junk\.dxf/],
    ['empty.svg', '', [], /empty\.svg/],
    ['nan.svg', path('M0 0 L NaN 5 L 5 5 Z'), [], /nan\.svg:1.*/],
    ['nan-own.svg', strict('M0 0 L NaN 5 L 5 5 Z'), [], /nan-own\.svg: .*\(line 1, column \d+\)/],
    ['far.svg', path('M0 0 L 1e308 5 L 5 5 Z'), [], /far\.svg/],
    ['far-own.svg', strict('M0 0 L 1e300 5 L 5 5 Z'), [], /far-own\.svg: has a point over 50 m out/],
    ['flat.svg', path('M0 0 L 5 5 Z'), [], /flat\.svg: encloses nothing/],
    ['open-own.svg', strict('M0 0 L 9 5 L 5 9'), [], /open-own\.svg: .*\(line 1, column \d+\)/],
    ['open.dxf', open, [], /open\.dxf/],
    ['slot.svg', svg(SLOT), ['--cutter', '3 cubits'], /--cutter: "3 cubits" has a unit other than mm and in/],
    ['slot.svg', svg(SLOT), ['--cutter', '0mm'], /--cutter: "0mm" is out of range: 0\.1 mm to 50 mm/],
    ['slot.svg', svg(SLOT), ['--cutter', 'NaN'], /--cutter: "NaN" is not a length/],
    ['slot.svg', svg(SLOT), ['--as', 'lid'], /--as: must be pocket or plug, not "lid"/],
    ['slot.svg', svg(SLOT), ['--units', 'cm'], /--units: must be mm or in, not "cm"/],
    ['slot.svg', svg(SLOT), ['--clearance', '0.1mm'], /--clearance: is for two drawings/],
    ['slot.svg', svg(SLOT), ['slot.svg', '--as', 'plug'], /--as: is for one drawing/],
    ['slot.svg', svg(SLOT), ['--picture', 'x.gif'], /--picture: "x\.gif" must end in \.png or \.svg/],
    ['slot.svg', svg(SLOT), ['--picture', 'none/x.png'], /cannot write none\/x\.png: there is no such/],
  ])('%s, %#: one clear line, exit 2, nothing written', (name, text, args, line) => {
    const cwd = join(dir, 'bad');
    rmSync(cwd, { recursive: true, force: true });
    mkdirSync(cwd);
    if (text !== null) writeFileSync(join(cwd, name), text);
    const r = ran(['prove', name, ...args], cwd);
    expect(r.status, r.stderr + r.stdout).toBe(2);
    expect(r.stdout).toBe('');
    const lines = r.stderr
      .trim()
      .split('\n')
      .filter((l) => !l.endsWith(': measuring'));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(line);
    expect(lines[0]).not.toMatch(/undefined|Infinity|internal error|\n {4}at /);
    expect(readdirSync(cwd)).toEqual(text === null ? [] : [name]);
  });
});

test('the stock cutter that would do is the largest whose radius the reach allows', () => {
  // Radii: 1/8 in 1.5875, 3 mm 1.5, 1/32 in 0.396875 mm.
  expect(stockCutterFor(1.5875)?.name).toBe('1/8in');
  expect(stockCutterFor(1.58)?.name).toBe('3mm');
  expect(stockCutterFor(0.4)?.name).toBe('1/32in');
  expect(stockCutterFor(0.39)).toBeNull();
});

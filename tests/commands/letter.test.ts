import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { roomFor } from '../../src/commands/face.js';
import { slug } from '../../src/commands/letter-recipe.js';
import { nameFault } from '../../src/recipe/name.js';
import { type Ran, ran } from '../support/warm.js';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'letter-test-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): Ran {
  return ran(args, dir);
}

const file = (...path: string[]): string => readFileSync(join(dir, ...path), 'utf8');

describe('letter', () => {
  it('makes a proven piece on a face that just holds it, and writes the recipe beside it', () => {
    const r = run('letter', 'Orchard 27', '--font', 'varela-round', '--height', '40mm', '--cutter', '3mm');
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toMatch(/^orchard-27: \d+ pockets, \d+ plugs; proven: .*; out.orchard-27\n$/);
    expect(readdirSync(join(dir, 'out')).sort()).toEqual(['orchard-27', 'orchard-27.json']);
    const recipe = JSON.parse(file('out', 'orchard-27.json'));
    expect(recipe).toMatchObject({
      name: 'orchard-27',
      units: 'mm',
      outline: { shape: 'rectangle', margin: 10 },
      pattern: { generator: 'lettering', text: 'Orchard 27', height: '40mm' },
      cutter: { diameter: '3mm', thin: 'widen' },
      depth: 8,
    });
    // A millimetre less either way is too little, or the letters would not reach the margin.
    for (const side of ['width', 'height']) {
      const less = `outline.${side}=${recipe.outline[side] - 1}`;
      expect(run('make', 'out/orchard-27.json', '--out', 'less', '--set', less).status, side).toBe(1);
    }
  });

  it('writes a recipe that gives the same bytes when it is made again', () => {
    const folder = join(dir, 'again', 'gate');
    expect(run('letter', 'Gate', '--height', '36mm', '--out', 'again').status).toBe(0);
    const files = readdirSync(folder);
    expect(files.length).toBe(8);
    const first = files.map((f) => readFileSync(join(folder, f)));
    rmSync(folder, { recursive: true });
    expect(run('make', 'again/gate.json', '--out', 'again').status).toBe(0);
    expect(files.filter((f, i) => !readFileSync(join(folder, f)).equals(first[i]!))).toEqual([]);
    // The same once more is no different recipe.
    expect(run('letter', 'Gate', '--height', '36mm', '--out', 'again').status).toBe(0);
  });

  it('leaves a recipe that differs alone until it is told to replace it', () => {
    const mine = '{ "name": "mine" }\n';
    expect(run('letter', 'Hall', '--height', '36mm', '--out', 'kept').status).toBe(0);
    writeFileSync(join(dir, 'kept', 'hall.json'), mine);
    const r = run('letter', 'Hall', '--height', '36mm', '--out', 'kept');
    expect(r.status).toBe(2);
    expect(r.stderr).toMatch(/^inlaywright: kept.hall\.json is there and differs .*--name.*--replace\n$/);
    expect(file('kept', 'hall.json')).toBe(mine);
    const replaced = run('letter', 'Hall', '--height', '36mm', '--out', 'kept', '--replace');
    expect(replaced.status, replaced.stderr).toBe(0);
    expect(replaced.stderr).toMatch(/replacing the recipe kept.hall\.json/);
    expect(JSON.parse(file('kept', 'hall.json')).name).toBe('hall');
  });

  it('leaves the recipes as they were when the piece cannot be written', () => {
    mkdirSync(join(dir, 'taken', 'hall'), { recursive: true });
    writeFileSync(join(dir, 'taken', 'hall', 'notes.txt'), 'mine');
    const args = ['letter', 'Hall', '--height', '36mm', '--out', 'taken', '--replace'];
    expect(run(...args).status).toBe(2);
    expect(readdirSync(join(dir, 'taken'))).toEqual(['hall']);
    writeFileSync(join(dir, 'taken', 'hall.json'), 'mine');
    expect(run(...args).status).toBe(2);
    expect(file('taken', 'hall.json')).toBe('mine');
  });

  it('works in inches, with names and lines of its own', () => {
    const r = run(
      'letter',
      'Boot\\nroom',
      '--units',
      'in',
      '--height',
      '1.5',
      '--cutter',
      '1/8in',
      '--name',
      'boots',
      '--json',
    );
    expect(r.status, r.stderr).toBe(0);
    const made = JSON.parse(r.stdout);
    expect(made[0]).toMatchObject({ recipe: join('out', 'boots.json'), made: true, name: 'boots' });
    const { outline, depth, units } = JSON.parse(file('out', 'boots.json'));
    expect(units).toBe('in');
    for (const v of [outline.width, outline.height, depth]) expect(v * 16).toBeCloseTo(Math.round(v * 16), 9);
    expect(outline.width).toBeLessThan(10);
  });

  it.each([
    [['', '--height', '30mm'], /text: is empty/],
    [['Hi', '--height', '1mm'], /--height: "1mm" is out of range: 2 mm to /],
    [['Hi', '--height', 'tall'], /--height: "tall" is not a length/],
    [['Hi', '--height', 'fit'], /--height: .*length/],
    [['Hi', '--cutter', '3cm'], /--cutter: "3cm" has a unit other than mm and in/],
    [['Hi', '--units', 'cm'], /--units: "cm" is not known/],
    [['Hi', '--font', 'nope'], /--font: "?nope/],
    [['Hi', '--margin', '-3'], /--margin: -3 mm is out of range: 0 mm to /],
    [
      ['Hi', '--width', '20mm'],
      /--width: 20 mm is too narrow for the text and its margin; use \d+ mm or more/,
    ],
    [['Hi', '--depth', '200mm'], /--depth: "200mm" is out of range/],
    [['Hi', '--name', 'a b'], /--name: may hold letters, digits and hyphens only: try "a-b"/],
    [['Hi', '--bogus'], /unknown option '--bogus'/],
    [[], /missing required argument 'text'/],
  ] as const)('refuses %j in its own words, in one line, and writes nothing', (args, message) => {
    const r = run('letter', ...args, '--out', 'never');
    expect(r.status).toBe(2);
    expect(r.stdout).toBe('');
    expect(r.stderr).toMatch(message);
    expect(r.stderr).toMatch(/^inlaywright: [^\n]*\n$/);
    expect(r.stderr).not.toMatch(/pattern\.|outline\.|cutter\./);
    expect(existsSync(join(dir, 'never'))).toBe(false);
  });
});

describe('the name', () => {
  it.each([
    ['Orchard 27', 'orchard-27'],
    ['Café Señor', 'cafe-senor'],
    ['  -- 7 & 9! ', '7-9'],
    ['Con', 'con-letters'],
    ['中', 'lettering'],
    ['x'.repeat(80), 'x'.repeat(40)],
  ])('of %j is %s, which a recipe may have', (text, name) => {
    expect(slug(text)).toBe(name);
    expect(nameFault(slug(text))).toBe(null);
  });
});

describe('the room', () => {
  it('holds both halves and both margins, in whole millimetres or sixteenths of an inch', () => {
    expect(roomFor(50, 20.2, 10, 'mm')).toEqual({ width: 120, height: 61 });
    expect(roomFor(25.4, 12.7, 12.7, 'in')).toEqual({ width: 3, height: 2 });
    expect(roomFor(25.5, 12.7, 12.7, 'in')).toEqual({ width: 3.0625, height: 2 });
  });
});

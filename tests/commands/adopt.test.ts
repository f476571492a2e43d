import {
  copyFileSync,
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
import { adoptParameters, nameOf } from '../../src/commands/adopt-recipe.js';
import { nameFault } from '../../src/recipe/name.js';
import { type Ran, ran } from '../support/warm.js';

/** A figure of 60 x 40 mm with a hole of 12 mm and a bar of 2 mm, thinner than any cutter tried. */
const KEY = `<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="60mm" viewBox="0 0 80 60">
  <path id="bow" fill-rule="evenodd" d="M10 10H50V50H10ZM24 30a6 6 0 1 0 12 0a6 6 0 1 0-12 0Z"/>
  <rect id="bit" x="50" y="29" width="20" height="2"/>
</svg>
`;

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'adopt-test-'));
  write('key.svg', KEY);
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const write = (file: string, content: string | Uint8Array): void => writeFileSync(join(dir, file), content);
const file = (...path: string[]): string => readFileSync(join(dir, ...path), 'utf8');

function run(...args: string[]): Ran {
  return ran(args, dir);
}

describe('adopt', () => {
  it('makes a drawing into a proven piece on a face that just holds it, recipe and drawing beside it', () => {
    const r = run('adopt', 'key.svg', '--cutter', '1/8in');
    expect(r.status, r.stderr).toBe(0);
    expect(r.stdout).toMatch(/^key: 1 pocket, 1 plug; proven: .*; out.key\n$/);
    expect(readdirSync(join(dir, 'out')).sort()).toEqual(['key', 'key.json', 'key.svg']);
    expect(file('out', 'key.svg')).toBe(KEY);
    expect(JSON.parse(file('out', 'key.json'))).toEqual({
      name: 'key',
      units: 'mm',
      outline: { shape: 'rectangle', width: 80, height: 60, margin: 10 },
      pattern: { generator: 'drawing', file: 'key.svg' },
      cutter: { diameter: '1/8in', thin: 'widen', touch: 'part' },
      fit: { plug: 'carrier' },
      depth: 8,
      skin: 1.5,
    });
  });

  it('tells what was read, what the cutter changes and what is written, in that order', () => {
    const { stderr } = run('adopt', 'key.svg', '--out', 'told');
    const places = [
      /^inlaywright: key: read key\.svg: 60 mm wide and 40 mm high, 1 part, 1 hole$/m,
      /^inlaywright: key: the cutter changes 1 place beyond rounding corners: 1 widened$/m,
      /^inlaywright: key: proving$/m,
      /^inlaywright: key: writing the drawing's copy told.key\.svg$/m,
      /^inlaywright: key: writing the recipe told.key\.json$/m,
    ].map((words) => stderr.search(words));
    expect(places).not.toContain(-1);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(run('adopt', 'key.svg', '--out', 'dropped', '--thin', 'drop').stderr).toMatch(
      /take care: .*a narrow end was cut off[\s\S]*changes 1 place .*: 1 shortened/,
    );
  });

  it('holds strokes that are widened at the edge of the figure', () => {
    // A bar of 1 mm is cut 3.81 mm wide (1/8 in and a tenth of ease a side), so the face is 4 mm, not 1 mm, and margins.
    write('bar.svg', '<svg width="50mm" height="9mm" viewBox="0 0 50 9"><path d="M0 4h50v1H0z"/></svg>');
    expect(run('adopt', 'bar.svg').status).toBe(0);
    expect(JSON.parse(file('out', 'bar.json')).outline).toMatchObject({ width: 70, height: 24 });
  });

  it('writes a recipe that gives the same bytes when it is made again', () => {
    expect(run('adopt', 'key.svg', '--out', 'again', '--width', '90').status).toBe(0);
    const folder = join(dir, 'again', 'key');
    const files = readdirSync(folder);
    expect(files.length).toBe(8);
    const first = files.map((f) => readFileSync(join(folder, f)));
    rmSync(folder, { recursive: true });
    expect(run('make', 'again/key.json', '--out', 'again').status).toBe(0);
    expect(files.filter((f, i) => !readFileSync(join(folder, f)).equals(first[i]!))).toEqual([]);
    // The same once more is no different recipe, nor is the copy adopted in its own place.
    expect(run('adopt', 'key.svg', '--out', 'again', '--width', '90').status).toBe(0);
    expect(run('adopt', 'again/key.svg', '--out', 'again', '--width', '90').status).toBe(0);
  });

  it.each([
    [
      'key.json',
      '{ "name": "mine" }\n',
      /^inlaywright: kept.key\.json is there and differs .*make it with `inlaywright make kept.key\.json`/m,
    ],
    ['key.svg', '<svg/>', /^inlaywright: kept.key\.svg is there and differs .*--name.*--replace$/m],
  ])('leaves %s alone until it is told to replace it', (name, mine, message) => {
    mkdirSync(join(dir, 'kept'), { recursive: true });
    write(join('kept', name), mine);
    const r = run('adopt', 'key.svg', '--out', 'kept');
    expect(r.status).toBe(2);
    expect(r.stdout).toBe('');
    expect(r.stderr).toMatch(message);
    expect(readdirSync(join(dir, 'kept'))).toEqual([name]);
    expect(file('kept', name)).toBe(mine);
    const replaced = run('adopt', 'key.svg', '--out', 'kept', '--replace');
    expect(replaced.status, replaced.stderr).toBe(0);
    expect(replaced.stderr).toMatch(new RegExp(`replacing the .* kept.${name}`));
    expect(file('kept', name)).not.toBe(mine);
    rmSync(join(dir, 'kept'), { recursive: true });
  });

  it('leaves everything as it was when the piece cannot be made', () => {
    mkdirSync(join(dir, 'taken', 'key'), { recursive: true });
    write('taken/key/notes.txt', 'mine');
    expect(run('adopt', 'key.svg', '--out', 'taken', '--replace').status).toBe(2);
    expect(readdirSync(join(dir, 'taken'))).toEqual(['key']);
    const refused = run('adopt', 'key.svg', '--out', 'deep/er', '--thin', 'refuse');
    expect(refused.status).toBe(1);
    expect(refused.stderr).toMatch(/refused: .*narrower than 3\.81 mm/);
    expect(existsSync(join(dir, 'deep'))).toBe(false);
  });

  it('works in inches, with a width and a name', () => {
    const args = [
      '--units',
      'in',
      '--width',
      '3',
      '--name',
      'shed-key',
      '--margin',
      '1/2in',
      '--thin',
      'drop',
      '--json',
    ];
    const r = run('adopt', 'key.svg', ...args);
    expect(r.status, r.stderr).toBe(0);
    const [made] = JSON.parse(r.stdout);
    expect(made).toMatchObject({ recipe: join('out', 'shed-key.json'), made: true, name: 'shed-key' });
    expect(r.stderr).toMatch(/read key\.svg: 3 in wide and 2 in high/);
    const recipe = JSON.parse(file('out', 'shed-key.json'));
    expect(recipe).toMatchObject({
      units: 'in',
      outline: { width: 4, height: 3, margin: '1/2in' },
      pattern: { file: 'shed-key.svg', width: 3 },
    });
    expect(file('out', 'shed-key.svg')).toBe(KEY);
  });

  it('makes a name of the file name, and takes endings in capitals', () => {
    copyFileSync(join(dir, 'key.svg'), join(dir, 'Clé du Jardin (2).SVG'));
    const r = run('adopt', 'Clé du Jardin (2).SVG', '--out', 'named');
    expect(r.status, r.stderr).toBe(0);
    expect(readdirSync(join(dir, 'named')).sort()).toEqual([
      'cle-du-jardin-2',
      'cle-du-jardin-2.json',
      'cle-du-jardin-2.svg',
    ]);
  });

  it.each([
    ['con', 'con-drawing'],
    ['中', 'drawing'],
    ['..', 'drawing'],
    ['x'.repeat(80), 'x'.repeat(40)],
  ])('of the file name %j makes %s, which a recipe may have', (stem, name) => {
    expect(nameOf(stem)).toBe(name);
    expect(nameFault(name)).toBe(null);
  });

  it('says first that the file names no unit, once, and nothing of it when the width is given', () => {
    write('plain.svg', KEY.replace('width="80mm" height="60mm" ', ''));
    const r = run('adopt', 'plain.svg', '--out', 'plain', '--thin', 'drop');
    expect(r.stderr.match(/names no unit/g)).toHaveLength(1);
    expect(r.stderr).toMatch(/plain: take care: .*if it is in mm it should be 60 mm wide.*--width/i);
    expect(r.stderr.indexOf('names no unit')).toBeLessThan(r.stderr.indexOf('building'));
    const job = JSON.parse(file('plain', 'plain', 'job.json'));
    expect(job.findings.map((f: { code: string }) => f.code)).toContain('drawing-no-unit');
    const wide = run('adopt', 'plain.svg', '--out', 'plain', '--width', '60mm', '--replace');
    expect(wide.status).toBe(0);
    expect(wide.stderr).not.toMatch(/names no unit/);
  });

  it('tells the likely width before it refuses a drawing larger than any face', () => {
    write('vast.svg', KEY.replace('width="80mm" height="60mm"', 'width="160in" height="120in"'));
    const r = run('adopt', 'vast.svg', '--out', 'never');
    expect(r.status).toBe(1);
    const [scale, refused] = r.stderr.trimEnd().split('\n');
    expect(scale).toMatch(/3048 mm wide .* mm read as inches \(off by 1\/25\.4: 120 mm wide\).*"120mm"/);
    expect(refused).toMatch(
      /^inlaywright: refused: --width: .* largest face, 3000 mm, .* at a width of [\d.]+ mm it would/,
    );
    expect(existsSync(join(dir, 'never'))).toBe(false);
  });

  it('passes on how the file is to be read', () => {
    // A frame drawn as two outlines of 0.2 mm lines, the outer one open by 0.3 mm, and a speck of 1 mm.
    write(
      'lines.svg',
      `<svg width="80mm" height="60mm" viewBox="0 0 80 60" fill="none" stroke="#000" stroke-width=".2">
  <path d="M10 10H70V50H10V10.3"/><path d="M20 20H60V40H20Z"/><path d="M40 30h1v1h-1z"/></svg>`,
    );
    const reading = ['--lines', 'outlines', '--join', '0.4mm', '--speck', '2', '--refit', '0mm'];
    const r = run('adopt', 'lines.svg', ...reading);
    expect(r.status, r.stderr).toBe(0);
    expect(r.stderr).toMatch(/read lines\.svg: 60 mm wide and 40 mm high, 1 part, 1 hole/);
    expect(r.stderr).toMatch(/lines: the drawing: .*(joined|closed).*0\.3 mm/);
    expect(r.stderr).toMatch(/lines: the drawing: 1 speck was dropped/);
    expect(JSON.parse(file('out', 'lines.json')).pattern).toEqual({
      generator: 'drawing',
      file: 'lines.svg',
      lines: 'outlines',
      join: '0.4mm',
      speck: 2,
      refit: '0mm',
    });
    for (const p of adoptParameters) expect(run('adopt', '--help').stdout).toContain(`--${p.name} <`);
    expect(run('adopt', 'lines.svg', '--out', 'never').stderr).toMatch(/has only lines, 0\.20 mm wide/);
  });

  it('adopts a DXF file likewise', () => {
    const text = [
      '0',
      'SECTION',
      '2',
      'HEADER',
      '9',
      '$INSUNITS',
      '70',
      '1',
      '0',
      'ENDSEC',
      '0',
      'SECTION',
      '2',
    ];
    const circle = ['0', 'CIRCLE', '8', '0', '10', '1', '20', '1', '40', '0.75', '0', 'ENDSEC', '0', 'EOF'];
    write('disc.dxf', [...text, 'ENTITIES', ...circle, ''].join('\n'));
    const r = run('adopt', 'disc.dxf', '--name', 'knob', '--cutter', '3mm');
    expect(r.status, r.stderr).toBe(0);
    // 1 is inches in $INSUNITS (DXF reference, from memory), so the disc is 1.5 in across.
    expect(r.stderr).toMatch(/read disc\.dxf: 38\.1 mm wide and 38\.1 mm high, 1 part, 0 holes/);
    expect(JSON.parse(file('out', 'knob.json')).pattern).toEqual({ generator: 'drawing', file: 'knob.dxf' });
    expect(file('out', 'knob.dxf')).toBe(file('disc.dxf'));
  });
});

describe('adopt given what it cannot read', () => {
  const junk = Uint8Array.from({ length: 3000 }, (_, i) => (i * i * 37 + 129) % 256);
  beforeAll(() => {
    mkdirSync(join(dir, 'folder.svg'));
    write('key.png', KEY);
    write('junk.svg', junk);
    write('junk.dxf', junk);
    write('empty.svg', '');
    write('prose.svg', 'no drawing at all');
    write('flat.svg', '<svg width="9mm" height="9mm"><rect width="0" height="5"/></svg>');
    write('nan.svg', '<svg width="9mm" height="9mm"><rect width="NaN" height="5"/></svg>');
    write('far.svg', '<svg width="9mm" height="9mm"><path d="M0 0H1e308V5z"/></svg>');
    write('text.svg', '<svg width="9mm" height="9mm"><text>Hi</text></svg>');
    write('outside.svg', '<!DOCTYPE svg [<!ENTITY x SYSTEM "key.svg">]><svg><g>&x;</g></svg>');
    write('huge.svg', new Uint8Array(100_000_000));
  });

  it.each([
    [['nope.svg'], /cannot read nope\.svg: there is no such file/],
    [['folder.svg'], /folder\.svg is a folder/],
    [['key.png'], /key\.png does not end in \.svg or \.dxf/],
    [['junk.svg'], /junk\.svg is (not|no) /],
    [['junk.dxf'], /junk\.dxf.* (is|does|has|cannot) /],
    [['empty.svg'], /empty\.svg:1: is no sound XML/],
    [['prose.svg'], /prose\.svg.*/],
    [['flat.svg'], /flat\.svg: encloses nothing/],
    [['nan.svg'], /nan\.svg:1: <rect>: has width="NaN"/],
    [['far.svg'], /far\.svg.*/],
    [['text.svg'], /text\.svg:1: <text>: is text.*lettering/],
    [['outside.svg'], /outside\.svg:1: declares entities/],
    [['huge.svg'], /huge\.svg holds 100\.0 MB/],
    [['key.svg', '--name', '../../key'], /--name: may hold letters, digits and hyphens only/],
    [['key.svg', '--name', 'k'.repeat(99)], /--name: .*64/],
    [['key.svg', '--width', '0.2mm'], /--width: 0\.2 mm is too small to cut/],
    [['key.svg', '--width', 'wide'], /--width: "wide" is not a length/],
    [['key.svg', '--margin', '-3'], /--margin: -3 mm is out of range/],
    [['key.svg', '--depth', '200mm'], /--depth: "200mm" is out of range/],
    [['key.svg', '--cutter', '3cm'], /--cutter: "3cm" has a unit other than mm and in/],
    [['key.svg', '--thin', 'fat'], /--thin: "fat" is not known/],
    [['key.svg', '--units', 'cm'], /--units: "cm" is not known/],
    [['key.svg', '--bogus'], /unknown option '--bogus'/],
    [[], /missing required argument 'file'/],
  ] as const)('refuses %j in one line and writes nothing', (args, message) => {
    const r = run('adopt', ...args, '--out', 'never');
    expect(r.status).toBe(2);
    expect(r.stdout).toBe('');
    expect(r.stderr).toMatch(message);
    expect(r.stderr).toMatch(/^inlaywright: [^\n]*\n$/);
    expect(r.stderr).not.toMatch(/pattern\.|outline\.|cutter\.|internal error/);
    expect(existsSync(join(dir, 'never'))).toBe(false);
  });

  it('refuses a place that cannot be written to, and leaves no trace', () => {
    write('in-the-way', 'mine');
    const r = run('adopt', 'key.svg', '--out', 'in-the-way/out');
    expect(r.status).toBe(2);
    expect(r.stderr).toMatch(/in-the-way.out.*: a part of the path is a file, not a folder/);
    expect(file('in-the-way')).toBe('mine');
  });
});

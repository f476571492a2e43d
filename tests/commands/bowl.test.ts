import {
  cpSync,
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
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { certifyDrawing, readSvg } from '../../src/proof/index.js';
import { type Ran, ran } from '../support/warm.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'bowl-test-'));
  for (const name of ['fruit-bowl-wave', 'planter-octagons', 'trivet-dots'])
    cpSync(join(root, 'patterns', `${name}.json`), join(dir, `${name}.json`));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): Ran {
  return ran(args, dir);
}

describe('bowl', () => {
  it('makes the stave’s job, jigs, models, pictures and sheet, and a coupon beside', () => {
    const made = run('bowl', 'fruit-bowl-wave.json');
    expect(made.status).toBe(0);
    expect(made.stdout).toMatch(/^fruit-bowl-wave: .*proven.*\nfruit-bowl-wave-coupon: /);
    const files = readdirSync(join(dir, 'out', 'fruit-bowl-wave')).sort();
    for (const f of [
      'job.json',
      'pocket.dxf',
      'jig-low.svg',
      'jig-high.dxf',
      'vessel.glb',
      'vessel-field.stl',
      'vessel-inlay-1.stl',
      'stock-stave.stl',
      'stock-shell.stl',
      'vessel-outside.png',
      'vessel-inside.png',
      'unrolled-outside.png',
      'unrolled-inside.png',
      'vessel.html',
      'sheet.html',
    ])
      expect(files).toContain(f);
    expect(readdirSync(join(dir, 'out', 'fruit-bowl-wave-coupon'))).toContain('pocket.svg');
    const sheet = readFileSync(join(dir, 'out', 'fruit-bowl-wave', 'vessel.html'), 'utf8');
    // 12 sides at 68 degrees: atan(cos 68 tan 15) and asin(sin 68 sin 15).
    expect(sheet).toContain('5.73°');
    expect(sheet).toContain('13.88°');
    expect(sheet).not.toMatch(/<script|https?:\/\/|undefined|NaN/);
  });

  it('writes the same bytes again, and jigs that the cutter can cut', () => {
    run('bowl', 'planter-octagons.json', '--no-coupon', '--out', 'a');
    run('bowl', 'planter-octagons.json', '--no-coupon', '--out', 'b');
    const files = readdirSync(join(dir, 'a', 'planter-octagons'));
    for (const f of files)
      expect(
        readFileSync(join(dir, 'a', 'planter-octagons', f)).equals(
          readFileSync(join(dir, 'b', 'planter-octagons', f)),
        ),
        f,
      ).toBe(true);
    expect(existsSync(join(dir, 'a', 'planter-octagons-coupon'))).toBe(false);
    const jig = readSvg(readFileSync(join(dir, 'a', 'planter-octagons', 'jig-low.svg'), 'utf8'));
    // Corners relieved for a cutter of 1/8 in with an ease of 0.3 mm.
    expect(certifyDrawing(jig, { radius: 1.5875, side: 'inside', top: 1 }).holds).toBe(true);
    expect(certifyDrawing(jig, { radius: 1.95, side: 'inside', top: 1 }).holds).toBe(false);
  });

  it('is one stave’s job for make, with the same drawings', () => {
    expect(run('make', 'fruit-bowl-wave.json', '--out', 'flat').status).toBe(0);
    const of = (folder: string, f: string): string =>
      readFileSync(join(dir, folder, 'fruit-bowl-wave', f), 'utf8');
    expect(readdirSync(join(dir, 'flat', 'fruit-bowl-wave'))).not.toContain('vessel.glb');
    for (const f of ['pocket.svg', 'plug.dxf', 'job.json']) expect(of('flat', f)).toBe(of('out', f));
  });

  it('makes a plate of one flat board, and a box of four upright sides', () => {
    const shape = (name: string, bowl: object, more: object = {}) =>
      writeFileSync(
        join(dir, `${name}.json`),
        JSON.stringify({
          name,
          bowl,
          outline: { margin: 10 },
          pattern: { generator: 'rosette' },
          cutter: { diameter: 3, flute: 30 },
          depth: 12,
          skin: 2,
          ...more,
        }),
      );
    shape('plate', {
      sides: 1,
      height: 22,
      floor: 6,
      face: 'inside',
      outside: { shape: 'straight', bottom: 120, top: 220 },
      inside: { shape: 'straight', bottom: 110, top: 200 },
    });
    shape(
      'box',
      { sides: 4, height: 90, wall: 10, outside: { shape: 'straight', bottom: 90, top: 90 } },
      { depth: 20, stock: { plug: 22 } },
    );
    for (const name of ['plate', 'box']) {
      const made = run('bowl', `${name}.json`, '--no-coupon');
      expect(made.stderr).not.toContain('internal');
      expect(made.status).toBe(0);
    }
    const plate = readdirSync(join(dir, 'out', 'plate'));
    expect(plate).toContain('vessel-inside.png');
    for (const f of ['jig-low.svg', 'unrolled-outside.png', 'stock-shell.stl'])
      expect(plate).not.toContain(f);
    expect(readFileSync(join(dir, 'out', 'box', 'vessel.html'), 'utf8')).toContain('45°');
  });

  it('glues in blocks where it may, and says where', () => {
    const made = run(
      'bowl',
      'fruit-bowl-wave.json',
      '--no-coupon',
      '--out',
      'filled',
      '--set',
      'bowl.thickness=25',
      '--set',
      'bowl.fillers=true',
      '--set',
      'depth=20',
    );
    expect(made.status).toBe(0);
    expect(made.stderr).toContain('glue blocks onto their inside');
    expect(readdirSync(join(dir, 'filled', 'fruit-bowl-wave'))).toContain('stock-block-1.stl');
  });

  test.each([
    ['trivet-dots.json', [], /bowl: is missing/],
    ['fruit-bowl-wave.json', ['bowl.sides=2'], /3 to 24 staves, or 1 flat board/],
    ['fruit-bowl-wave.json', ['bowl.sides=25'], /1 to 24/],
    ['fruit-bowl-wave.json', ['bowl.slope=91'], /0 to 90 degrees/],
    ['fruit-bowl-wave.json', ['bowl.slope=-1'], /0 to 90 degrees/],
    ['fruit-bowl-wave.json', ['bowl.slope=2'], /5 to 90 degrees/],
    ['fruit-bowl-wave.json', ['bowl.thickness=20'], /at a height of 8 mm it needs 28\.8\d mm/],
    ['fruit-bowl-wave.json', ['bowl.inside.top=230'], /crosses the outside.*make it 22 mm less/],
    ['fruit-bowl-wave.json', ['bowl.outside.belly=50'], /less than 31\.0 mm of belly/],
    [
      'fruit-bowl-wave.json',
      ['depth=29'],
      /bowl\.thickness.*make the depth at most 27 mm.*staves of at least 31 mm/,
    ],
    ['fruit-bowl-wave.json', ['bowl.inlaid=[1,13]'], /numbers of staves, 1 to 12/],
    ['fruit-bowl-wave.json', ['bowl.floor=95'], /leaves no inside/],
    ['fruit-bowl-wave.json', ['outline.diameter=90'], /given by the bowl/],
    ['fruit-bowl-wave.json', ['stock.field=30'], /given by the bowl/],
    ['fruit-bowl-wave.json', ['bowl.outside.shape=vase'], /straight/],
    [
      'fruit-bowl-wave.json',
      ['bowl.outside={"shape":"curve","points":[[0,120],[40,90],[30,100],[90,200]]}'],
      /heights rise/,
    ],
    [
      'fruit-bowl-wave.json',
      ['bowl.outside={"shape":"curve","points":[[0,120],[80,200]]}'],
      /let them go from 0 mm to 90 mm/,
    ],
  ])('refuses %s with %j in one line, and writes nothing', (file, sets, says) => {
    const made = run('bowl', file, '--out', 'none', ...sets.flatMap((s) => ['--set', s]));
    expect(made.status).toBe(2);
    expect(made.stdout).toBe('');
    expect(made.stderr).toMatch(says);
    expect(made.stderr).not.toMatch(/\n\s+at /);
    expect(existsSync(join(dir, 'none'))).toBe(false);
  });

  it('leaves a folder alone that is not ours', () => {
    mkdirSync(join(dir, 'mine', 'planter-octagons'), { recursive: true });
    writeFileSync(join(dir, 'mine', 'planter-octagons', 'letter.txt'), 'precious');
    const made = run('bowl', 'planter-octagons.json', '--no-coupon', '--out', 'mine');
    expect(made.status).toBe(2);
    expect(readdirSync(join(dir, 'mine', 'planter-octagons'))).toEqual(['letter.txt']);
  });
});

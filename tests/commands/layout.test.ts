import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exampleText } from '../recipe/example.js';
import { type Ran, ran } from '../support/warm.js';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'layout-test-'));
  writeFileSync(join(dir, 'lid.json'), exampleText({ boards: { plugWidth: 100, plugLength: 220 } }));
  writeFileSync(join(dir, 'bare.json'), exampleText());
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const run = (...args: string[]): Ran => ran(args, dir);
const jobOf = (out: string) => JSON.parse(readFileSync(join(dir, out, 'test-piece', 'job.json'), 'utf8'));

describe('make with boards', () => {
  it('writes the layout with its proof, twice with the same bytes, and without it again', () => {
    const r = run('make', 'lid.json', '--out', 'a');
    expect(r.stderr).toMatch(
      /14 plug parts on a board of 220 mm by 100 mm, 5\.19 mm apart: yield \d+(\.\d)? %, a clean rest of/,
    );
    expect(r.status).toBe(0);
    const files = readdirSync(join(dir, 'a/test-piece'));
    expect(files).toContain('plug-layout.svg');
    expect(files).toContain('plug-layout.dxf');
    expect(files).not.toContain('pocket-layout.svg');
    const { layout } = jobOf('a');
    expect(Object.keys(layout)).toEqual(['plug']);
    expect(layout.plug.proof.holds).toBe(true);
    expect(layout.plug.proof.strays).toBeLessThan(0.0005);
    expect(layout.plug.proof.between).toBeGreaterThan(5.19 - 1e-4);
    expect(layout.plug.laid.map((l: { part: number }) => l.part)).toEqual(
      Array.from({ length: 14 }, (_, k) => k + 1),
    );
    expect(run('make', 'lid.json', '--out', 'b').status).toBe(0);
    for (const file of ['plug-layout.svg', 'plug-layout.dxf', 'job.json', 'sheet.html'])
      expect(readFileSync(join(dir, 'b/test-piece', file))).toEqual(
        readFileSync(join(dir, 'a/test-piece', file)),
      );
    // A folder that holds a layout is ours to replace.
    expect(run('make', 'bare.json', '--out', 'a').status).toBe(0);
    expect(readdirSync(join(dir, 'a/test-piece'))).not.toContain('plug-layout.svg');
    expect(jobOf('a').layout).toBeUndefined();
  });

  it('proves layouts of mirrored parts, askew grain and inches', () => {
    const r = run(
      'make',
      'bare.json',
      '--out',
      'c',
      ...[
        'units="in"',
        'outline={"shape":"circle","diameter":"96mm","margin":"6mm"}',
        'cutter={"diameter":"1/8in","flute":"22mm"}',
        'depth="8mm"',
        'skin="1.5mm"',
        'stock={}',
        'fit={"face":"down"}',
        'woods.plugGrain=35',
        'woods.fieldGrain=-20',
        'boards={"plugWidth":"110mm","plugLength":"220mm","fieldWidth":"120mm","fieldLength":"330mm","pieces":1}',
      ].flatMap((s) => ['--set', s]),
    );
    expect(r.stderr).not.toMatch(/proof/);
    expect(r.status).toBe(0);
    const { layout } = jobOf('c');
    expect(layout.plug.proof.holds && layout.pocket.proof.holds).toBe(true);
    // Turned about the mirrored grain, 145 degrees from x, by 35 degrees.
    expect(layout.plug.turned[0]).toBeCloseTo(Math.cos((35 * Math.PI) / 180), 6);
    expect(layout.plug.turned[1]).toBeCloseTo(Math.sin((35 * Math.PI) / 180), 6);
  });
});

describe('make --parts', () => {
  it('lays out only the spoiled parts, and makes the other files as always', () => {
    expect(run('make', 'lid.json', '--out', 'whole').status).toBe(0);
    expect(run('make', 'lid.json', '--out', 'some', '--parts', '12, 7').status).toBe(0);
    const { layout } = jobOf('some');
    expect(layout.plug.laid.map((l: { part: number }) => l.part)).toEqual([12, 7]);
    expect(layout.plug.board).toEqual({ length: 220, width: 100 });
    const read = (out: string, file: string) => readFileSync(join(dir, out, 'test-piece', file), 'utf8');
    for (const file of ['pocket.svg', 'plug.svg', 'plug.dxf'])
      expect(read('some', file)).toBe(read('whole', file));
    expect(read('some', 'plug-layout.svg').match(/<path fill-rule/g)?.length).toBe(2);
  });

  it('needs no board: the layout is then as small as the parts need', () => {
    expect(run('make', 'bare.json', '--out', 'least', '--parts', '3').status).toBe(0);
    const { plug } = jobOf('least').layout;
    expect(plug.laid.length).toBe(1);
    expect(plug.board.length * plug.board.width).toBeLessThan(1000);
  });

  it.each([
    [
      ['bare.json', '--parts', '3,15'],
      /bare\.json: --parts: there is no part 15: the plug has parts 1 to 14/,
    ],
    [['bare.json', '--parts', '0'], /--parts: there is no part 0/],
    [
      ['bare.json', '--parts', '3,,4'],
      /--parts: "" is no part's number: give the numbers in the drawings with commas between, such as 7,12/,
    ],
    [['bare.json', '--parts', 'seven'], /--parts: "seven" is no part's number/],
    [['bare.json', '--parts', '1e9'], /--parts: "1e9" is no part's number/],
    [['bare.json', 'lid.json', '--parts', '3'], /--parts: is for one recipe at a time/],
  ])('refuses %j in one line', (args, message) => {
    const r = run('make', ...args, '--out', 'never');
    const said = r.stderr
      .trimEnd()
      .split('\n')
      .filter((l) => l.includes('--parts'));
    expect(said.length).toBe(1);
    expect(said[0]).toMatch(message);
    expect(r.status).toBe(2);
    expect(existsSync(join(dir, 'never'))).toBe(false);
  });
});

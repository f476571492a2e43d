import { type SpawnSyncReturns, spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exampleText } from '../recipe/example.js';
import { type Ran, ran } from '../support/warm.js';

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const FILES = [
  'job.json',
  'picture.png',
  'picture.svg',
  'plug.dxf',
  'plug.svg',
  'pocket.dxf',
  'pocket.svg',
  'sheet.html',
];

/** Changes that ask for a cutter as big as the pattern. */
const BIG = { cutter: { diameter: 25 }, roughing: undefined };

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'cli-test-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function run(...args: string[]): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [CLI, ...args], { cwd: dir, encoding: 'utf8' });
}

function ranAnew(...args: string[]): Ran {
  const { status, stdout, stderr } = run(...args);
  return { status, stdout, stderr };
}

/** The same in a process that has run others before. */
function ranHere(...args: string[]): Ran {
  return ran(args, dir);
}

function recipe(file: string, changes: Record<string, unknown> = {}): string {
  writeFileSync(join(dir, file), exampleText(changes));
  return file;
}

/** What every failure owes: the exit code, nothing on stdout, lines of our own on stderr, no trace, nothing written. */
function expectRefused(r: Ran, code: 1 | 2, message: RegExp, out = 'never'): void {
  expect(r.stdout).toBe('');
  expect(r.stderr).toMatch(message);
  expect(r.stderr).not.toMatch(/\n\s+at |node:internal|internal error/);
  for (const line of r.stderr.trimEnd().split('\n')) expect(line).toMatch(/^inlaywright: /);
  expect(r.status).toBe(code);
  expect(existsSync(join(dir, out))).toBe(false);
}

describe('make', () => {
  it('makes a pattern of layers, and sets a value of one by its place', () => {
    const pattern = [
      { generator: 'rosette' },
      { generator: 'panel', combine: 'subtract', within: { shape: 'circle', diameter: 30 } },
    ];
    const file = recipe('layers.json', { pattern });
    const r = run('make', file, '--out', 'layered', '--set', 'pattern.0.points=9');
    expect(r.status, r.stderr).toBe(0);
    const job = JSON.parse(readFileSync(join(dir, 'layered', 'test-piece', 'job.json'), 'utf8'));
    expect(job.recipe.pattern.map((l: { generator: string }) => l.generator)).toEqual(['rosette', 'panel']);
    // The eye, the disc and all else within 15 mm is gone: nine drops and the ring are left.
    expect(job.parts.pocket).toBe(10);
    expectRefused(
      run(
        'make',
        file,
        '--out',
        'never',
        '--set',
        'pattern.1.within.diameter=200',
        '--set',
        'pattern.1.combine=union',
      ),
      2,
      /pattern\.1\.within: reaches outside/,
    );
  });

  it('writes a proven piece, says so in one line on stdout, and gives the same bytes again', () => {
    const file = recipe('good.json');
    const r = run('make', file, '--out', 'out');
    expect(r.stderr).not.toMatch(/error|refused/);
    expect(r.status).toBe(0);
    expect(r.stdout).toMatch(
      /^test-piece: \d+ pockets, \d+ plugs; proven: reach [\d.]+ mm in the pocket and (at least )?[\d.]+ mm round the plug \(required 1\.595 mm\), gap 0\.0[78]\d* mm to 0\.08\d* mm; out.test-piece\n$/,
    );
    const folder = join(dir, 'out', 'test-piece');
    expect(readdirSync(folder).sort()).toEqual(FILES);
    const first = FILES.map((f) => readFileSync(join(folder, f)));
    expect(run('make', file, '--out', 'out').status).toBe(0);
    expect(FILES.filter((f, i) => !readFileSync(join(folder, f)).equals(first[i]!))).toEqual([]);
    expect(readdirSync(join(dir, 'out'))).toEqual(['test-piece']);
  });

  it('prints one JSON document and nothing else with --json, and takes settings', () => {
    const r = run(
      'make',
      recipe('json.json'),
      '--out',
      'out-json',
      '--json',
      '--set',
      'name=lid',
      '-s',
      'fit.clearance=0.1',
    );
    const [result] = JSON.parse(r.stdout);
    expect(result).toMatchObject({
      recipe: 'json.json',
      made: true,
      exitCode: 0,
      name: 'lid',
      proof: { required: 1.595 },
    });
    const job = JSON.parse(readFileSync(join(dir, 'out-json', 'lid', 'job.json'), 'utf8'));
    expect(job.recipe.fit.clearance).toBe(0.1);
    expect(job.proof.pocket.holds && job.proof.plug.holds).toBe(true);
  });

  it('letters with the bundled font', () => {
    const file = recipe('text.json', {
      pattern: { generator: 'lettering', text: '47', height: 40 },
      'outline.diameter': 120,
    });
    expect(run('make', file, '--out', 'out-text').status).toBe(0);
  });

  it('goes on after a failure and exits with the worst code', () => {
    const bad = recipe('bad.json', { name: 'bad', depth: -1 });
    const big = recipe('big.json', { name: 'big', ...BIG });
    const good = recipe('fine.json', { name: 'fine' });
    const r = run('make', big, bad, good, '--out', 'out-many');
    expect(r.status).toBe(2);
    expect(readdirSync(join(dir, 'out-many'))).toEqual(['fine']);
    expect(r.stdout.split('\n')).toHaveLength(2);
    const json = JSON.parse(run('make', big, good, '--out', 'out-many', '--json').stdout);
    expect(json.map((x: { exitCode: number }) => x.exitCode)).toEqual([1, 0]);
    expect(json[0].errors[0]).toMatch(/^big\.json: refused: /);
  });

  it('refuses two recipes of one name', () => {
    const r = run('make', recipe('a.json'), recipe('b.json', { name: 'Test-Piece' }), '--out', 'out-twice');
    expect(r.status).toBe(2);
    expect(r.stderr).toContain('b.json: name: "Test-Piece" is the name in a.json too');
    expect(readdirSync(join(dir, 'out-twice'))).toEqual(['test-piece']);
  });

  it('goes on when nobody reads its output', async () => {
    const child = spawn(process.execPath, [CLI, 'make', recipe('pipe.json'), '--out', 'out-pipe'], {
      cwd: dir,
    });
    child.stdout.destroy();
    child.stderr.destroy();
    expect(await new Promise((done) => child.on('exit', done))).toBe(0);
    expect(readdirSync(join(dir, 'out-pipe', 'test-piece')).sort()).toEqual(FILES);
  });
});

describe('bad input', () => {
  it('one clear line each, the right exit code, nothing written', () => {
    const cases: [file: string, code: 1 | 2, message: RegExp][] = [];
    const asked = (changes: Record<string, unknown>, code: 1 | 2, message: RegExp) => {
      const n = cases.length;
      cases.push([recipe(`case-${n}.json`, { name: `case-${n}`, ...changes }), code, message]);
    };
    const raw = (file: string, content: string | Buffer, message: RegExp) => {
      writeFileSync(join(dir, file), content);
      cases.push([file, 2, message]);
    };
    asked(BIG, 1, /refused: nothing of the pattern is 30 mm wide/);
    asked({ 'cutter.diameter': 0 }, 2, /:\d+: cutter\.diameter: 0 mm is out of range: 0\.3 mm to 25 mm/);
    asked({ depth: -8 }, 2, /:\d+: depth: -8 mm is out of range/);
    asked({ 'outline.diameter': 1e12 }, 2, /outline\.diameter: 1000000000000 mm is out of range/);
    asked(
      { 'outline.margin': 60 },
      2,
      /outline\.margin: 60 mm leaves nothing of the circle; use [\d.]+ mm at most/,
    );
    asked({ pattern: { generator: 'lettering', text: '' } }, 2, /pattern\.text: is empty/);
    asked({ pattern: { generator: 'lettering', height: 300 } }, 1, /refused: pattern\.height: .* too large/);
    asked({ name: '../up' }, 2, /name: may hold letters, digits and hyphens only/);
    raw(
      'nan.json',
      exampleText().replace('"depth": 8', '"depth": NaN'),
      /:\d+:12: not JSON: NaN is not expected here/,
    );
    raw('binary', Buffer.from([0x7f, 0x45, 0x4c, 0x46, 0, 1, 0xff]), /is not a JSON text/);
    raw(
      'utf16.json',
      Buffer.from(`\uFEFF${exampleText()}`, 'utf16le'),
      /is not a JSON text: .* save it as UTF-8/,
    );
    raw('deep.json', '['.repeat(100_000), /deep\.json:1:33: is nested more than 32 deep/);
    raw('empty.json', '', /empty\.json: is empty/);
    raw('huge.json', '{', /huge\.json holds 50\.0 MB; a recipe is a page of text, 1 MB at most/);
    truncateSync(join(dir, 'huge.json'), 50_000_000);
    mkdirSync(join(dir, 'folder'));
    cases.push(['folder', 2, /folder is a folder; give a recipe file/]);
    cases.push(['missing.json', 2, /cannot read missing\.json: there is no such file/]);

    const r = run('make', ...cases.map(([file]) => file), '--out', 'never', '--json');
    const results: { recipe: string; exitCode: number; errors: string[] }[] = JSON.parse(r.stdout);
    expectRefused({ ...r, stdout: '' }, 2, /./);
    expect(results.map((x) => [x.recipe, x.exitCode])).toEqual(cases.map(([file, code]) => [file, code]));
    cases.forEach(([file, , message], i) => {
      expect(results[i].errors).toHaveLength(1);
      expect(results[i].errors[0]).toMatch(message);
      expect(results[i].errors[0].startsWith(file) || results[i].errors[0].includes(`read ${file}`)).toBe(
        true,
      );
      expect(r.stderr).toContain(`inlaywright: ${results[i].errors[0]}\n`);
    });
  });

  it('an out folder that cannot be written', () => {
    writeFileSync(join(dir, 'file'), 'x');
    const r = run('make', recipe('x.json'), '--out', 'file/out');
    expectRefused(r, 2, /a part of the path is a file, not a folder; choose another folder with --out/);
    expect(readFileSync(join(dir, 'file'), 'utf8')).toBe('x');
  });

  it('a folder that is there already and was not made by us', () => {
    mkdirSync(join(dir, 'mine', 'test-piece'), { recursive: true });
    writeFileSync(join(dir, 'mine', 'test-piece', 'notes.txt'), 'keep');
    const r = run('make', recipe('x.json'), '--out', 'mine');
    expectRefused(r, 2, /test-piece exists and was not made by inlaywright/);
    expect(readdirSync(join(dir, 'mine'), { recursive: true }).sort()).toEqual([
      'test-piece',
      join('test-piece', 'notes.txt'),
    ]);
  });

  it('a recipe that can no longer be made leaves the result that stands', () => {
    run('make', recipe('x.json', { name: 'stays' }), '--out', 'out-stays');
    const before = readFileSync(join(dir, 'out-stays', 'stays', 'job.json'), 'utf8');
    recipe('x.json', { name: 'stays', ...BIG });
    expect(run('make', 'x.json', '--out', 'out-stays').status).toBe(1);
    expect(readFileSync(join(dir, 'out-stays', 'stays', 'job.json'), 'utf8')).toBe(before);
    expect(readdirSync(join(dir, 'out-stays'))).toEqual(['stays']);
  });

  it('usage: unknown commands and options with the nearest, nothing to do, missing arguments', () => {
    expect(run('mkae')).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringMatching(/unknown command 'mkae'\n\(Did you mean make\?\)/),
    });
    expect(run('make', 'x.json', '--otu', 'a')).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/unknown option '--otu'\n\(Did you mean --out\?\)/),
    });
    expect(run('make')).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/missing required argument 'recipe'/),
    });
    expect(run()).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringContaining('Usage: inlaywright'),
    });
    expectRefused(
      run('make', recipe('x.json'), '--out', 'never', '--set', 'depth'),
      2,
      /--set: depth: needs a key and a value/,
    );
  });
});

describe('list --pictures', () => {
  it('writes a picture of every generator, and prints where', () => {
    const names = JSON.parse(ranHere('list', '--json').stdout).map((g: { name: string }) => g.name);
    const r = ranHere('list', '--pictures', 'deep/pictures');
    expect(r.status, r.stderr).toBe(0);
    expect(readdirSync(join(dir, 'deep', 'pictures')).sort()).toEqual(
      names.map((n: string) => `${n}.png`).sort(),
    );
    expect(r.stdout.trim().split('\n')).toEqual(names.map((n: string) => join('deep/pictures', `${n}.png`)));
    // A PNG's signature and width (PNG specification, 5.2 and 11.2.2).
    const png = readFileSync(join(dir, 'deep', 'pictures', 'rosette.png'));
    expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect(png.readUInt32BE(16)).toBe(480);
  }, 120_000);

  it('writes one of the generator named', () => {
    expect(ranHere('list', 'rosette', '--pictures', 'one').status).toBe(0);
    expect(readdirSync(join(dir, 'one'))).toEqual(['rosette.png']);
  });

  it('refuses a folder it cannot write to, and a name there is none of', () => {
    writeFileSync(join(dir, 'a-file'), '');
    expectRefused(
      ranHere('list', 'rosette', '--pictures', 'a-file/x'),
      2,
      /cannot write to a-file\/x: .*give a folder/,
    );
    expectRefused(ranHere('list', 'rozette', '--pictures', 'none'), 2, /did you mean "rosette"/);
    expect(existsSync(join(dir, 'none'))).toBe(false);
  });
});

describe('list, help and version', () => {
  it('lists the generators by family', () => {
    const r = run('list');
    expect(r.status).toBe(0);
    for (const word of ['Tilings', 'tiling', 'Radial', 'rosette', 'Lettering', 'lettering'])
      expect(r.stdout).toContain(word);
    expect(JSON.parse(run('list', '--json').stdout).map((g: { name: string }) => g.name)).toContain(
      'rosette',
    );
  });

  it('shows the parameters of one with default, range and meaning', () => {
    const r = run('list', 'lettering');
    expect(r.stdout).toMatch(
      /^ {2}height +34 mm +2 to 1000 mm or fit +Height of a flat capital letter; .*\.$/m,
    );
    expect(JSON.parse(run('list', 'lettering', '--json').stdout).parameters[0]).toMatchObject({
      name: 'text',
      kind: 'text',
    });
  });

  it('names the nearest generator', () => {
    expectRefused(run('list', 'rozette'), 2, /no generator is called "rozette"; did you mean "rosette"\?/);
  });

  it('is the same started anew and in a process that has run before, which most tests of commands use', () => {
    for (const args of [
      ['list'],
      ['list', 'rozette'],
      ['make', 'none.json'],
      ['make', '--help'],
      ['bowl'],
      ['--version'],
    ])
      expect(ranHere(...args)).toEqual(ranAnew(...args));
    expect(ranHere('list', 'rozette').status).toBe(2);
  });

  it('helps, with examples, and tells its version', () => {
    expect(run('--help')).toMatchObject({
      status: 0,
      stderr: '',
      stdout: expect.stringContaining('inlaywright make patterns/'),
    });
    expect(run('make', '--help').stdout).toContain('--set fit.clearance=0.1');
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(run('--version')).toMatchObject({ status: 0, stdout: `${version}\n` });
  });
});

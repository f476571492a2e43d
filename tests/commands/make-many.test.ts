import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countsOf, noMoreWriting } from '../../src/commands/make-state.js';
import { Progress } from '../../src/commands/progress.js';
import { exampleText } from '../recipe/example.js';

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const UNINTERRUPTED = new URL('../../dist/commands/uninterrupted.js', import.meta.url).href;
const NAMES = ['oak', 'ash', 'elm'];

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'make-many-'));
  for (const name of NAMES) writeFileSync(join(dir, `${name}.json`), exampleText({ name }));
  writeFileSync(join(dir, 'bad.json'), exampleText({ name: 'bad', depth: -1 }));
  writeFileSync(
    join(dir, 'big.json'),
    exampleText({ name: 'big', cutter: { diameter: 25 }, roughing: undefined }),
  );
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const FILES = ['oak', 'bad', 'ash', 'big', 'elm'].map((n) => `${n}.json`);

function make(out: string, ...options: string[]) {
  return spawnSync(process.execPath, [CLI, 'make', ...FILES, '--out', out, ...options], {
    cwd: dir,
    encoding: 'utf8',
  });
}

function contents(out: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const name of readdirSync(join(dir, out)))
    for (const file of readdirSync(join(dir, out, name)))
      found.set(`${name}/${file}`, readFileSync(join(dir, out, name, file), 'latin1'));
  return found;
}

describe('several recipes', () => {
  it('come out the same on one thread and on three: files, lines and their order, exit code', () => {
    const one = make('one', '--threads', '1');
    const three = make('three', '--threads', '3');
    expect(one.status).toBe(2);
    expect(three.status).toBe(2);
    expect(three.stdout.replaceAll('three', 'one')).toBe(one.stdout);
    expect(three.stdout.split('\n').map((l) => l.split(':')[0])).toEqual([...NAMES, '']);
    expect([...contents('one').keys()]).toHaveLength(8 * NAMES.length);
    expect(contents('three')).toEqual(contents('one'));
    // What a terminal would show as it goes is left out where nobody watches.
    const steps = / (building|drawing|proving)$/;
    const said = (stderr: string) => stderr.split('\n').filter((l) => !steps.test(l));
    expect(said(three.stderr)).toEqual(said(one.stderr));
    expect(three.stderr).toContain('inlaywright: bad.json');
    expect(three.stderr).not.toContain('\u001b');
  });

  it('of one name are refused on threads as well', () => {
    writeFileSync(join(dir, 'twin.json'), exampleText({ name: 'OAK' }));
    const r = spawnSync(
      process.execPath,
      [CLI, 'make', 'oak.json', 'twin.json', '--out', 'twins', '--threads', '2'],
      {
        cwd: dir,
        encoding: 'utf8',
      },
    );
    expect(r.status).toBe(2);
    expect(r.stderr).toContain('name: "OAK" is the name in oak.json too; give each its own');
    expect(readdirSync(join(dir, 'twins'))).toEqual(['oak']);
  });

  it('give one JSON list in the order asked', () => {
    const { stdout } = make('json', '--threads', '2', '--json');
    const list = JSON.parse(stdout) as { recipe: string; made: boolean; exitCode: number }[];
    expect(list.map((r) => r.recipe)).toEqual(FILES);
    expect(list.map((r) => r.exitCode)).toEqual([0, 2, 0, 1, 0]);
  });

  it.each(['0', '1.5', '1000'])('are not made on %j threads', (n) => {
    const r = make('never', `--threads=${n}`);
    expect(r.status).toBe(2);
    expect(r.stderr).toMatch(/^inlaywright: --threads: ".*" must be a whole number from 1 to 256\n$/);
  });
});

describe('a command that is stopped', () => {
  it('by Ctrl-C leaves whole pieces and nothing else', async () => {
    const out = 'stopped';
    // Many enough that it is not done before it hears.
    const many = Array.from({ length: 9 }, (_, k) => `n${k}.json`);
    for (const [k, file] of many.entries()) writeFileSync(join(dir, file), exampleText({ name: `n${k}` }));
    const child = spawn(process.execPath, [CLI, 'make', ...many, '--out', out, '--threads', '2'], {
      cwd: dir,
    });
    let stderr = '';
    child.stderr.on('data', (text) => {
      stderr += text;
    });
    child.stdout.once('data', () => child.kill('SIGINT'));
    const ended = await new Promise<number | null>((done) => child.once('close', done));
    expect(ended, stderr).toBe(130);
    expect(stderr).toMatch(/inlaywright: stopped: \d+ of 9 made, each whole\n$/);
    // A piece that was not to be written any more is no failure.
    expect(stderr).not.toMatch(/error/);
    const pieces = readdirSync(join(dir, out));
    expect(pieces.length).toBeGreaterThan(0);
    expect(pieces.length).toBeLessThan(9);
    expect(pieces.filter((p) => !/^n\d+$/.test(p))).toEqual([]);
    for (const p of pieces) expect(readdirSync(join(dir, out, p)), p).toHaveLength(8);
  });
});

describe('work that must be whole', () => {
  const ended = (work: string) =>
    spawnSync(
      process.execPath,
      [
        '--input-type=module',
        '-e',
        `import { uninterrupted } from ${JSON.stringify(UNINTERRUPTED)}; await uninterrupted(() => { ${work} }); console.log('on');`,
      ],
      { encoding: 'utf8' },
    );

  it('is done before one who stops it meanwhile is heard', () => {
    const { status, stdout, stderr } = ended("process.kill(process.pid, 'SIGINT'); console.log('whole');");
    expect([status, stdout, stderr]).toEqual([
      130,
      'whole\n',
      'inlaywright: stopped: the piece at hand is whole\n',
    ]);
  });

  it('goes on when nobody stops it, and lets its faults through', () => {
    expect(ended("console.log('whole');").stdout).toBe('whole\non\n');
    expect(ended("throw new Error('no room');").stderr).toContain('no room');
  });
});

describe('threads that may be stopped', () => {
  it('write until then, count while they write, and begin no more', () => {
    const counts = countsOf(new SharedArrayBuffer(8));
    const seen: number[] = [];
    const write = () => counts.write(() => seen.push(countsOf(counts.shared).writing()));
    expect(write()).toBe(true);
    expect(() =>
      counts.write(() => {
        throw new Error('no room');
      }),
    ).toThrow('no room');
    expect(counts.writing()).toBe(0);
    counts.stop();
    expect(write()).toBe(false);
    expect(seen).toEqual([1]);
    expect(counts.writing()).toBe(0);
  });
});

describe('a command that stops its threads', () => {
  it('waits for what is being written, and lets nothing more begin', async () => {
    const counts = countsOf(new SharedArrayBuffer(8));
    const numbers = new Int32Array(counts.shared);
    // Another thread is writing.
    Atomics.add(numbers, 1, 1);
    let still = true;
    const done = noMoreWriting(counts).then(() => {
      still = false;
    });
    expect(counts.write(() => undefined)).toBe(false);
    await new Promise((next) => setTimeout(next, 30));
    expect(still).toBe(true);
    Atomics.sub(numbers, 1, 1);
    await done;
    expect(still).toBe(false);
  });
});

describe('the progress line', () => {
  const watched = (isTTY: boolean, columns: number) => {
    let text = '';
    const stream = { isTTY, columns, write: (t: string) => (text += t) } as unknown as NodeJS.WriteStream;
    return { progress: new Progress(24, stream), text: () => text };
  };

  it('is one line that is written over, no wider than the terminal, and is gone at the end', () => {
    const { progress, text } = watched(true, 30);
    progress.at(0, 'oak building');
    progress.at(1, 'ash building');
    progress.done(0);
    progress.clear();
    const shown = text().split('\r\u001b[K');
    expect(shown).toEqual([
      '',
      '0 of 24 done, oak building',
      '0 of 24 done, oak building, a',
      '1 of 24 done, ash building',
      '',
    ]);
  });

  it('is not written where nobody watches', () => {
    const { progress, text } = watched(false, 80);
    progress.at(0, 'oak building');
    progress.done(0);
    progress.clear();
    expect(text()).toBe('');
  });
});

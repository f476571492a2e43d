import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkFolder, writeFolder } from '../../src/disk/folder.js';
import { BadInput } from '../../src/schema/fault.js';

/** No process has this number: Linux numbers end at 2^22, and no system reaches it. */
const DEAD = 999_999_999;

let out: string;
beforeEach(() => {
  out = mkdtempSync(join(tmpdir(), 'folder-test-'));
});
afterEach(() => rmSync(out, { recursive: true, force: true }));

const job = (mark: string) => JSON.stringify({ version: 1, recipe: { mark }, proof: {} });
const files = (mark: string) =>
  new Map<string, string | Uint8Array>([
    ['pocket.svg', mark],
    ['picture.png', new Uint8Array([1, 2])],
    ['job.json', job(mark)],
  ]);
const made = (mark: string) => writeFolder(out, 'lid', files(mark));
const markOf = (folder: string) => readFileSync(join(out, folder, 'pocket.svg'), 'utf8');
/** The mark now, or null in the moment between two renames. */
const markNow = (): string | null => {
  try {
    return markOf('lid');
  } catch {
    return null;
  }
};

function refusal(action: () => unknown): string {
  try {
    action();
  } catch (e) {
    expect(e).toBeInstanceOf(BadInput);
    expect((e as Error).message.split('\n')).toHaveLength(1);
    return (e as Error).message;
  }
  throw new Error('was not refused');
}

describe('a piece folder', () => {
  it('is written whole, and replaced whole, with nothing left beside it', () => {
    expect(made('one')).toBe(join(out, 'lid'));
    writeFileSync(join(out, 'lid', 'plug.dxf'), 'of the first run only');
    made('two');
    expect(markOf('lid')).toBe('two');
    expect(readdirSync(join(out, 'lid')).sort()).toEqual(['job.json', 'picture.png', 'pocket.svg']);
    expect(readFileSync(join(out, 'lid', 'picture.png'))).toEqual(Buffer.from([1, 2]));
    expect(readdirSync(out)).toEqual(['lid']);
  });

  it('makes the folders above it', () => {
    writeFolder(join(out, 'a', 'b'), 'lid', files('x'));
    expect(markOf('a/b/lid')).toBe('x');
  });
});

describe('what a killed run left', () => {
  it('before the renames: the old result stands, the half-written folder goes', () => {
    made('old');
    const dead = join(out, `.lid.new-${DEAD}-0123abcd`);
    mkdirSync(dead);
    writeFileSync(join(dead, 'pocket.svg'), 'ha');
    checkFolder(out, 'lid');
    expect(readdirSync(out)).toEqual(['lid']);
    expect(markOf('lid')).toBe('old');
  });

  it('between the renames: the old result is put back, also when the next run then fails', () => {
    made('old');
    renameSync(join(out, 'lid'), join(out, 'lid.old'));
    mkdirSync(join(out, `.lid.new-${DEAD}-0123abcd`));
    checkFolder(out, 'lid');
    expect(readdirSync(out)).toEqual(['lid']);
    expect(markOf('lid')).toBe('old');
  });

  it('between the renames: the next run replaces it', () => {
    made('old');
    renameSync(join(out, 'lid'), join(out, 'lid.old'));
    made('new');
    expect(readdirSync(out)).toEqual(['lid']);
    expect(markOf('lid')).toBe('new');
  });

  it('after the renames: the new result stands, the old one goes', () => {
    made('old');
    renameSync(join(out, 'lid'), join(out, 'lid.old'));
    mkdirSync(join(out, 'lid'));
    for (const [name, content] of files('new')) writeFileSync(join(out, 'lid', name), content);
    checkFolder(out, 'lid');
    expect(readdirSync(out)).toEqual(['lid']);
    expect(markOf('lid')).toBe('new');
  });

  it('leaves the folders of runs that live, and of other pieces', () => {
    const live = `.lid.new-${process.pid}-0123abcd`;
    const other = `.box.new-${DEAD}-0123abcd`;
    mkdirSync(join(out, live));
    mkdirSync(join(out, other));
    checkFolder(out, 'lid');
    expect(readdirSync(out).sort()).toEqual([other, live].sort());
  });
});

describe('what we did not make is refused and kept', () => {
  const keeps = (message: RegExp) => {
    const before = readdirSync(out, { recursive: true }).sort();
    expect(refusal(() => checkFolder(out, 'lid'))).toMatch(message);
    expect(refusal(() => made('new'))).toMatch(message);
    expect(readdirSync(out, { recursive: true }).sort()).toEqual(before);
  };

  it('a folder without job.json', () => {
    mkdirSync(join(out, 'lid'));
    keeps(/lid exists and was not made by inlaywright; move it away/);
  });

  it('a folder with another job.json', () => {
    mkdirSync(join(out, 'lid'));
    writeFileSync(join(out, 'lid', 'job.json'), '{"jobs": []}');
    keeps(/was not made by inlaywright/);
  });

  it('a file', () => {
    writeFileSync(join(out, 'lid'), 'x');
    keeps(/was not made by inlaywright/);
  });

  it('a link to a folder', () => {
    mkdirSync(join(out, 'elsewhere'));
    writeFileSync(join(out, 'elsewhere', 'job.json'), job('x'));
    symlinkSync(join(out, 'elsewhere'), join(out, 'lid'));
    keeps(/was not made by inlaywright/);
  });

  it('a result with a file added by its owner', () => {
    made('old');
    writeFileSync(join(out, 'lid', 'pocket.nc'), 'G0');
    keeps(/lid holds pocket\.nc, which inlaywright did not write/);
  });

  it('a folder in the place the old result goes to', () => {
    made('old');
    mkdirSync(join(out, 'lid.old'));
    keeps(/lid\.old exists and was not made by inlaywright/);
  });

  it('but a file that the system put there is no obstacle', () => {
    made('old');
    writeFileSync(join(out, 'lid', '.DS_Store'), '');
    made('new');
    expect(markOf('lid')).toBe('new');
  });
});

describe('places that cannot be written', () => {
  it('below a file', () => {
    writeFileSync(join(out, 'file'), '');
    expect(refusal(() => writeFolder(join(out, 'file', 'sub'), 'lid', files('x')))).toMatch(
      /a part of the path is a file/,
    );
    expect(refusal(() => writeFolder(join(out, 'file'), 'lid', files('x')))).toMatch(
      /cannot write .*; choose another folder with --out$/,
    );
  });

  it('a failure half way leaves the old result and nothing else', () => {
    made('old');
    const bad = new Map([...files('new'), ['no/such/folder.svg', 'x']] as [string, string][]);
    expect(refusal(() => writeFolder(out, 'lid', bad))).toMatch(/cannot write/);
    expect(readdirSync(out)).toEqual(['lid']);
    expect(markOf('lid')).toBe('old');
  });
});

describe('several runs at once', () => {
  it('leave one whole result, and no run fails', async () => {
    const script = `
      import { writeFolder } from ${JSON.stringify(new URL('../../dist/disk/folder.js', import.meta.url).href)};
      const mark = process.argv[1];
      const job = JSON.stringify({ version: 1, recipe: {}, proof: {} });
      for (let i = 0; i < 40; i++)
        writeFolder(${JSON.stringify(out)}, 'lid', new Map([['pocket.svg', mark + i], ['plug.svg', mark + i], ['job.json', job]]));`;
    const runs = ['a', 'b', 'c'].map(
      (mark) =>
        new Promise<number | null>((done) => {
          const child = spawn(process.execPath, ['--input-type=module', '-e', script, mark], {
            stdio: 'inherit',
          });
          child.on('exit', done);
        }),
    );
    expect(await Promise.all(runs)).toEqual([0, 0, 0]);
    expect(readdirSync(out)).toEqual(['lid']);
    expect(markOf('lid')).toMatch(/^[abc]39$/);
    expect(readFileSync(join(out, 'lid', 'plug.svg'), 'utf8')).toBe(markOf('lid'));
  });

  it('a run killed at any moment leaves a whole result as NAME or NAME.old', async () => {
    made('old');
    const script = `
      import { writeFolder } from ${JSON.stringify(new URL('../../dist/disk/folder.js', import.meta.url).href)};
      const job = JSON.stringify({ version: 1, recipe: {}, proof: {} });
      for (let i = 0; ; i++) writeFolder(${JSON.stringify(out)}, 'lid', new Map([['pocket.svg', 'n' + i], ['plug.svg', 'n' + i], ['job.json', job]]));`;
    for (let round = 0; round < 8; round++) {
      const child = spawn(process.execPath, ['--input-type=module', '-e', script], { stdio: 'ignore' });
      // Only once it writes does it matter when it is killed; how soon that is, depends on the machine.
      const before = markOf(existsSync(join(out, 'lid')) ? 'lid' : 'lid.old');
      while (markNow() === before) await new Promise((r) => setTimeout(r, 2));
      await new Promise((r) => setTimeout(r, round * 3));
      child.kill('SIGKILL');
      await new Promise((r) => child.on('exit', r));
      const folder = existsSync(join(out, 'lid')) ? 'lid' : 'lid.old';
      expect(readdirSync(join(out, folder)).length).toBe(3);
      checkFolder(out, 'lid');
      expect(readdirSync(out)).toEqual(['lid']);
    }
    expect(markOf('lid')).toMatch(/^n\d+$/);
  });
});

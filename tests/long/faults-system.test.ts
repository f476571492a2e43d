import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { FaultBench } from '../support/fault-bench.js';
import { cases, noteOf, notesIn, record } from '../support/fault-cases.js';
import { badlySaid, differences, putTree, type Ran, start, type Tree, treeOf } from '../support/faults.js';
import { noMount, SmallDisk } from '../support/mounts.js';

let bench: FaultBench;
let disk: SmallDisk | undefined;
afterEach(async () => {
  await bench.close();
  disk?.close();
  disk = undefined;
});

/** A failure as it has to be: said in one line with that reason, and everything as it was. */
function expectAsBefore(ran: Ran, reason: RegExp, is: Tree = treeOf(bench.dir)): void {
  expect(badlySaid(ran, bench.clean)).toEqual([]);
  expect(ran.stderr).toMatch(reason);
  expect(differences(is, bench.old)).toEqual([]);
}

/** What cannot replace a recipe cannot write it back either, and says so as an internal error. */

describe.skipIf(noMount)(`a small disk${noMount ? `, which cannot be mounted here: ${noMount}` : ''}`, () => {
  it('that is full: make keeps the old result, until there is room for the new one', async () => {
    disk = new SmallDisk(4000);
    bench = await FaultBench.of(cases.make!, disk.folder);
    const made: number[] = [];
    const rooms = [0, 1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 110, 144, 233];
    for (const blocks of rooms) {
      putTree(bench.dir, bench.old);
      disk.leave(blocks);
      const ran = await start(bench.dir, bench.of.args);
      disk.makeRoom();
      if (ran.code !== 0) expectAsBefore(ran, /: the disk is full; choose another folder/);
      else {
        made.push(blocks);
        expect(differences(treeOf(bench.dir), bench.new)).toEqual([]);
      }
    }
    expect(made).toContain(233);
    expect(made.length).toBeLessThan(rooms.length - 5);
  });

  it('that is full: the log keeps what it has, and takes the next line when there is room', async () => {
    disk = new SmallDisk(64);
    bench = await FaultBench.of(cases['fit record']!, disk.folder);
    const log = bench.old.get('lid.fitlog.jsonl')!;
    // A block of the disk is full but for so many bytes: the line fits in part, in whole, or not at all.
    for (const spare of [0, 1, 10, 100, 3000]) {
      const before = log.padEnd(4096 - spare, '\n');
      putTree(bench.dir, new Map([...bench.old, ['lid.fitlog.jsonl', before]]));
      disk.leave(0);
      const ran = await start(bench.dir, record(1));
      const after = treeOf(bench.dir).get('lid.fitlog.jsonl')!;
      expect(after.startsWith(before)).toBe(true);
      if (spare === 3000) expect(ran.code).toBe(0);
      else {
        expect(badlySaid(ran, bench.clean)).toEqual([]);
        expect(ran.stderr).toMatch(/the disk is full/);
        expect(after.length).toBe(4096);
      }
      disk.makeRoom();
      expect((await start(bench.dir, record(2))).code).toBe(0);
      expect(notesIn(bench.dir).filter(Boolean)).toEqual([...(spare === 3000 ? [1] : []), 2].map(noteOf));
    }
  });

  const written = Object.entries(cases).filter(([name, of]) => !of.slow && !/^(?:save|fit next)/.test(name));
  for (const [name, of] of written)
    it(`that is read-only: ${name} changes nothing`, async () => {
      disk = new SmallDisk(8000);
      bench = await FaultBench.of(of, disk.folder);
      putTree(bench.dir, bench.old);
      disk.readOnly(true);
      expectAsBefore(await start(bench.dir, of.args), /: the disk is read-only; /);
      disk.readOnly(false);
    });
});

/** Nobody in particular, when the tests run as one who may do all. */
const uid = process.getuid?.() === 0 ? 65534 : undefined;

describe.skipIf(process.platform === 'win32')('files of somebody else', () => {
  for (const name of ['make', 'fit record', 'letter', 'letter --replace', 'coupon'])
    it(`${name} changes nothing`, async () => {
      bench = await FaultBench.of(cases[name]!);
      putTree(bench.dir, bench.old);
      const mayWrite = (yes: boolean): void => {
        for (const path of ['', ...bench.old.keys()])
          chmodSync(join(bench.dir, path), /^$|\/$/.test(path) ? (yes ? 0o755 : 0o555) : yes ? 0o644 : 0o444);
      };
      mayWrite(false);
      const ran = await start(bench.dir, bench.of.args, uid === undefined ? {} : { uid });
      mayWrite(true);
      expectAsBefore(ran, /: permission denied; /);
    });
});

/** How many open files Node itself needs to start. */
function fewest(): number {
  for (let n = 4; ; n++)
    if (spawnSync('bash', ['-c', `ulimit -n ${n}; exec "$0" -e 0`, process.execPath]).status === 0) return n;
}

describe.skipIf(process.platform === 'win32')('few open files allowed', () => {
  const limits = (): number[] => {
    const least = fewest();
    return [...[0, 1, 2, 4, 8, 16, 32, 64, 128].map((more) => least + more), 256];
  };
  const runs = async (name: string): Promise<(Ran & { handles: number; is: Tree })[]> => {
    bench = await FaultBench.of(cases[name]!);
    const ran = [];
    for (const handles of limits()) {
      putTree(bench.dir, bench.old);
      ran.push({ handles, ...(await start(bench.dir, bench.of.args, { handles })), is: treeOf(bench.dir) });
    }
    return ran;
  };

  it.each(['make', 'letter --replace'])(
    '%s is done, or changes nothing; no system allows fewer than 256',
    async (name) => {
      const ran = await runs(name);
      expect(ran.at(-1)).toMatchObject({ handles: 256, code: 0 });
      for (const { code, is } of ran) expect(differences(is, code === 0 ? bench.new : bench.old)).toEqual([]);
      expect(ran[0]!.code).not.toBe(0);
    },
  );

  // Node loads all of the program's files at once, and what it says when it cannot is its own.
  it('make says that it is not done in one line', async () => {
    // With the fewest handles Node cannot open the command itself.
    const ours = (r: { stderr: string }): boolean => !/open '[^']*cli\.js'/.test(r.stderr);
    const failed = (await runs('make')).filter((r) => r.code !== 0 && ours(r));
    expect(failed.length).toBeGreaterThan(0);
    expect(failed.flatMap((r) => badlySaid(r, bench.clean).map((w) => `${r.handles}: ${w}`))).toEqual([]);
  });
});

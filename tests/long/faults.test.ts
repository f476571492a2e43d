import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { type Fault, FaultBench, killsFor, plansFor } from '../support/fault-bench.js';
import { cases, noteOf, notesIn, record } from '../support/fault-cases.js';
import { differences, type Plan, start, type Tree, treeOf } from '../support/faults.js';
import { seeded } from '../support/random.js';

/** How many moments, drawn at random, each a command or two: a fifth of INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Math.ceil(Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 1000) / 5);

let bench: FaultBench;
afterEach(() => bench.close());

/** No more than RUNS of a list, evenly over it. */
function some<T>(all: readonly T[]): T[] {
  const every = Math.ceil(all.length / RUNS);
  return all.filter((_, k) => k % every === 0);
}

describe('any call that fails, once or from then on: one line, exit code 2, the old result whole', () => {
  for (const [name, of] of Object.entries(cases))
    it(name, async () => {
      bench = await FaultBench.of(of);
      const faults: Fault[] = [];
      const every = of.slow ? 25 : 1;
      for (const plan of some(plansFor(bench).filter((_, k) => k % every === 0)))
        faults.push(...(await bench.faultsOf(plan)));
      expect(faults).toEqual([]);
    });
});

describe('killed at any moment: the old result or the new one whole, and the next run puts all right', () => {
  for (const name of [
    'make',
    'make with layouts',
    'coupon',
    'letter --replace',
    'adopt --replace',
    'fit record',
  ])
    it(`${name}: before and in the middle of each call`, async () => {
      bench = await FaultBench.of(cases[name]!);
      const wrong: string[] = [];
      for (const plan of some(killsFor(bench))) {
        const after = await bench.faultsOfKill({ plan });
        expect(after.killed).toBe(true);
        wrong.push(...after.wrong);
      }
      expect(wrong).toEqual([]);
    });

  it('make, when an earlier run was killed between the renames', async () => {
    bench = await FaultBench.of(cases.make!);
    const wrong: string[] = [];
    let killed = 0;
    // There may be another call or two than usual: on until it is done.
    for (let at = 1, on = true; on; at++) {
      const after = await bench.faultsOfKill({ plan: { at, what: 'kill' } }, bench.movedAside);
      on = after.killed;
      if (on) killed++;
      wrong.push(...after.wrong);
    }
    expect(wrong).toEqual([]);
    expect(killed).toBeGreaterThanOrEqual(bench.clean.calls.kill.length);
  });

  it(
    `make: at ${RUNS} moments of its time, most of them near its end`,
    async () => {
      bench = await FaultBench.of(cases.make!);
      const began = performance.now();
      await start(bench.dir, bench.of.args);
      const whole = performance.now() - began;
      const random = seeded(1);
      const wrong: string[] = [];
      for (let k = 0; k < RUNS; k++) {
        const part = random() < 0.75 ? 0.85 + 0.2 * random() : random();
        wrong.push(...(await bench.faultsOfKill({ delay: whole * part })).wrong);
      }
      expect(wrong).toEqual([]);
    },
    RUNS * 10_000 + 60_000,
  );

  it(`fit record: ${RUNS} runs, four at a time, and no line that was confirmed is lost`, async () => {
    bench = await FaultBench.of(cases['fit record']!);
    const { dir } = bench;
    const random = seeded(2);
    const confirmed: string[] = [];
    for (let k = 0; k < RUNS; k += 4)
      await Promise.all(
        [k, k + 1, k + 2, k + 3].map(async (n) => {
          const plan = { at: 1 + Math.floor(random() * 5), what: 'kill', half: random() < 0.5 } as const;
          const how = random() < 0.5 ? { plan } : { delay: 150 + 250 * random() };
          if ((await start(dir, record(n), how)).code === 0) confirmed.push(noteOf(n));
        }),
      );
    const { stdout } = await start(dir, ['fit', 'next', 'lid.json', '--json']);
    const used = JSON.parse(stdout).results.here as number;
    const notes = new Set(notesIn(dir));
    expect(confirmed.filter((note) => !notes.has(note))).toEqual([]);
    expect(used).toBeGreaterThanOrEqual(confirmed.length);
    expect(confirmed.length).toBeGreaterThan(0);
    expect(confirmed.length).toBeLessThan(RUNS);
  });
});

describe('several runs at once', () => {
  it('make one whole result, whosever it is', async () => {
    bench = await FaultBench.of(cases.make!);
    const { dir } = bench;
    const args = [5, 6, 7, 8].map((points) => ['make', 'lid.json', '--set', `pattern.points=${points}`]);
    const results: Tree[] = [];
    for (const one of args) {
      expect((await start(dir, one)).code).toBe(0);
      results.push(treeOf(dir));
    }
    const random = seeded(3);
    for (let round = 0; round < Math.ceil(RUNS / 10); round++) {
      const count = round % 2 === 0 ? 2 : 4;
      const place = mkdtempSync(join(tmpdir(), 'meeting-'));
      const plan = (): Plan => {
        const at = 1 + Math.floor(random() * bench.clean.calls.wait.length);
        return { at, what: 'wait', wait: { place, count } };
      };
      const ran = await Promise.all(args.slice(0, count).map((one) => start(dir, one, { plan: plan() })));
      rmSync(place, { recursive: true });
      expect(ran.map((r) => [r.code, r.stderr.match(/error|cannot/)])).toEqual(ran.map(() => [0, null]));
      const is = treeOf(dir);
      expect(Math.min(...results.map((result) => differences(is, result).length))).toBe(0);
    }
  });

  it('record into one log and lose no line', async () => {
    bench = await FaultBench.of(cases['fit record']!);
    const numbers = Array.from({ length: 4 * Math.ceil(RUNS / 20) }, (_, k) => k);
    for (let k = 0; k < numbers.length; k += 4) {
      const place = mkdtempSync(join(tmpdir(), 'meeting-'));
      // Before the file is opened, before the line is written, or before it is on the disk.
      const plan: Plan = { at: 1 + ((k / 4) % 3), what: 'wait', wait: { place, count: 4 } };
      const ran = await Promise.all(
        numbers.slice(k, k + 4).map((n) => start(bench.dir, record(n), { plan })),
      );
      rmSync(place, { recursive: true });
      expect(ran.map((r) => r.code)).toEqual([0, 0, 0, 0]);
    }
    expect(notesIn(bench.dir).filter(Boolean).sort()).toEqual(numbers.map(noteOf).sort());
  });
});

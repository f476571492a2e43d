import { rmSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { FaultBench, killsFor, plansFor } from '../support/fault-bench.js';
import { cases, noteOf, notesIn, record, workshop } from '../support/fault-cases.js';
import { type Plan, start } from '../support/faults.js';
import { seeded } from '../support/random.js';

/** A share of tests/long/faults.test.ts, which goes through every call of every command. */
const SHARE: Readonly<Record<string, number>> = {
  make: 3,
  'fit record': 16,
  'fit record behind half a line': 12,
  'fit next': 16,
  'save from the page': 16,
  'letter --replace': 1,
  'list --pictures': 1,
  'prove --picture': 3,
};

let bench: FaultBench | undefined;
afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

function some<T>(all: readonly T[], count: number, seed: number): T[] {
  const random = seeded(seed);
  return all
    .map((one) => ({ one, order: random() }))
    .sort((a, b) => a.order - b.order)
    .slice(0, count)
    .map(({ one }) => one);
}

describe('a call that fails: one line, exit code 2, the old result whole', () => {
  for (const [name, count] of Object.entries(SHARE))
    it(name, async () => {
      const of = cases[name]!;
      bench = await FaultBench.of(of);
      const wrong: string[] = [];
      for (const plan of some(plansFor(bench), count, 1))
        for (const { kind, text } of await bench.faultsOf(plan)) wrong.push(`${kind}: ${text}`);
      expect(wrong).toEqual([]);
    });
});

describe('killed: a whole result, old or new, and the next run puts it right', () => {
  const wrongAfter = async (name: string, moments: (all: Plan[]) => Plan[]): Promise<string[]> => {
    bench = await FaultBench.of(cases[name]!);
    const wrong: string[] = [];
    for (const plan of moments(killsFor(bench))) {
      const after = await bench.faultsOfKill({ plan });
      expect(after.killed).toBe(true);
      wrong.push(...after.wrong);
    }
    return wrong;
  };

  it('make', async () => {
    // In the middle of a file, and between the two renames.
    const moments = (all: Plan[]): Plan[] => [
      ...some(
        all.filter((p) => p.half),
        1,
        2,
      ),
      all.at(-4)!,
      all.at(-1)!,
    ];
    expect(await wrongAfter('make', moments)).toEqual([]);
  });

  it('fit record', async () => {
    expect(await wrongAfter('fit record', (all) => all)).toEqual([]);
  });
});

it('four runs that record at once lose no line', async () => {
  const dir = workshop();
  const runs = [0, 1, 2, 3].map((k) => start(dir, record(k)));
  expect((await Promise.all(runs)).map((r) => r.code)).toEqual([0, 0, 0, 0]);
  expect(notesIn(dir).sort()).toEqual([0, 1, 2, 3].map(noteOf));
  rmSync(dir, { recursive: true });
});

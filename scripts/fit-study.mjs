/**
 * Prints tables for the docs: how many coupons, and how many single trials, find the good range of simulated makers.
 * `node scripts/fit-study.mjs [makers] [seed]`. The same numbers give the same tables.
 */
import { bothEnds, coupons, halving, SPREAD, singles, stepDown, study } from './fit-makers.mjs';
import { isScript, main, ROOT, setUp } from './setup.mjs';

const MAKERS = {
  'Usual makers': SPREAD,
  'Narrow good range (0.02 to 0.04 mm wide)': { ...SPREAD, good: [0.02, 0.04] },
  'Rough makers (scatter 0.02 mm, 5 % slips)': { ...SPREAD, scatter: 0.02, slips: 0.05 },
};

async function print(count, seed) {
  const load = (file) => import(new URL(`dist/fit/log/${file}.js`, `file://${ROOT}/`));
  const [{ advise, ENOUGH }, { believe }, { surest }, { split }] = await Promise.all(
    ['advice', 'model', 'range', 'choose'].map(load),
  );
  const ways = {
    'coupons of 5 steps, by the fit log': coupons(advise),
    'one at a time, chosen and judged by the same model': singles({ believe, surest, split, ENOUGH }),
    'one at a time: halving, first good one used': halving(0),
    'one at a time: halving, a good one repeated once': halving(1),
    'one at a time: halving, a good one repeated twice': halving(2),
    'one at a time: 0.02 mm down from 0.20, first good one used': stepDown(0),
    'one at a time: 0.02 mm down from 0.20, a good one repeated once': stepDown(1),
    'one at a time: 0.02 mm down from 0.20, a good one repeated twice': stepDown(2),
    'one at a time: halving to both ends of the range, its middle used': bothEnds(),
  };
  for (const [name, spread] of Object.entries(MAKERS)) {
    console.log(`\n${name}\n`);
    console.log(
      '| way | trips to the machine, median | nine in ten makers | pieces cut, median | ended wrong | gave up |',
    );
    console.log('|---|---|---|---|---|---|');
    for (const [way, search] of Object.entries(ways)) {
      const r = study(search, count, seed, spread);
      const n = (value) => (Number.isFinite(value) ? value : 'not found');
      const share = (value) => `${(100 * value).toFixed(1)} %`;
      console.log(
        `| ${way} | ${n(r.visits)} | ${n(r.nine)} | ${n(r.pieces)} | ${share(r.wrong)} | ${share(r.never)} |`,
      );
    }
  }
  console.log(`\n${count} makers each, seed ${seed}.`);
}

if (isScript(import.meta.url)) {
  main(setUp);
  const [count = 200, seed = 1] = process.argv.slice(2).map(Number);
  await print(count, seed);
}

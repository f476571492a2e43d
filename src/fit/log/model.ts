import { exp, ln } from '../../geometry/power.js';
import { RESULTS, type Result, type Tried } from './entry.js';
import { beyond } from './noise.js';

/*
 * Four borders t1 < t2 < t3 < t4 (mm per side) part cracked, tight, good, loose and gappy for a glued fit. Glue swells
 * the wood, so a dry fit at clearance c comes out as a glued one at c + swell, swell >= 0: two scales, one shifted.
 * Which side of a border a fit shows on is unsure by a spread sigma (noise.ts), and one result in twenty is anything at
 * all: a slip of the hand or the pen. This is the cumulative ordinal model (McCullagh 1980) with an unknown shift.
 *
 * Every combination on a grid is weighed against the results: no chance enters, so the same log gives the same answer.
 * Each result concerns only the two borders beside it, so the borders are summed out one at a time: with t2 and t3 fixed
 * the sums over t1 and over t4 are apart (sum-product on a chain), which is what makes it quick.
 */

export interface Trial {
  /** mm per side. */
  readonly clearance: number;
  readonly result: Result;
  readonly tried: Tried;
}

/** Spacing of the grid, mm. Borders lie at half steps, so that a clearance at a whole step is never on a border. */
export const GRID = 0.005;

/** What is held possible before any result, each value as likely as the others; mm. Our own choice, wide on purpose. */
const PRIOR = {
  /** Border of tight and good for glued fits; below 0 when even no gap at all goes together. */
  first: [-0.0475, 0.3025],
  /** Widths of tight, good and loose. */
  tight: [0.01, 0.1],
  good: [0.01, 0.12],
  loose: [0.01, 0.12],
  swell: [0, 0.06],
  sigma: [0.005, 0.01, 0.02, 0.03],
} as const;
/** Grid steps of swell, in steps of GRID: it matters less than the borders. */
const SWELL_STEP = 2;

/** The share of results that say nothing. Our own choice. */
const SLIPS = 0.05;

/** What the results leave possible. `weight[i][k]`: the good range lies from `first[i]` to `first[i] + width[k]`, glued. */
export interface Belief {
  readonly first: readonly number[];
  readonly width: readonly number[];
  readonly weight: readonly Float64Array[];
  /** Mean of what glue adds, and of the spread, mm. */
  readonly swell: number;
  readonly sigma: number;
}

/** Weighs all that is possible against the trials. Weights add up to 1. */
export function believe(trials: readonly Trial[]): Belief {
  const grid = gridFor(trials);
  const { first, width } = grid;
  const cases = PRIOR.sigma.flatMap((sigma) =>
    range(PRIOR.swell, SWELL_STEP).map((swell) => ({
      sigma,
      swell,
      logs: logWeights(trials, grid, sigma, swell),
    })),
  );
  const top = Math.max(...cases.flatMap((c) => c.logs.map((row) => Math.max(...row))));
  const weight = first.map(() => new Float64Array(width.length));
  let total = 0;
  let swells = 0;
  let sigmas = 0;
  for (const { sigma, swell, logs } of cases) {
    let here = 0;
    logs.forEach((row, i) => {
      row.forEach((log, k) => {
        const w = exp(log - top);
        weight[i]![k]! += w;
        here += w;
      });
    });
    total += here;
    swells += here * swell;
    sigmas += here * sigma;
  }
  for (const row of weight) for (let k = 0; k < row.length; k++) row[k]! /= total;
  return { first, width, weight, swell: swells / total, sigma: sigmas / total };
}

interface Grid {
  readonly first: readonly number[];
  readonly tight: readonly number[];
  readonly width: readonly number[];
  readonly loose: readonly number[];
}

/** A log of wide gaps needs wider borders than the usual ones. */
function gridFor(trials: readonly Trial[]): Grid {
  const widest = Math.max(0, ...trials.map((t) => t.clearance));
  const reach = Math.ceil(Math.max(0, widest - 0.2) / GRID) * GRID;
  return {
    first: range([PRIOR.first[0], PRIOR.first[1] + reach]),
    tight: range(PRIOR.tight),
    width: range(PRIOR.good),
    loose: range(PRIOR.loose),
  };
}

function range([from, to]: readonly [number, number], step = 1): number[] {
  const n = Math.round((to - from) / (GRID * step));
  return Array.from({ length: n + 1 }, (_, k) => from + k * GRID * step);
}

/** Logarithm of the likelihood of the trials for every place and width of the good range; t1 and t4 summed out. */
function logWeights(trials: readonly Trial[], grid: Grid, sigma: number, swell: number): Float64Array[] {
  const { first, width } = grid;
  // All borders stand on one row of half steps: widths as counts of steps, places as counts from the lowest.
  const count = (lengths: readonly number[]): number[] => lengths.map((w) => Math.round(w / GRID));
  const [tight, good, loose] = [count(grid.tight), count(width), count(grid.loose)];
  const start = tight.at(-1)!;
  const lowest = first[0]! - start * GRID;
  const borders = start + first.length + good.at(-1)! + loose.at(-1)!;
  const places = RESULTS.map((result) => placesOf(trials, result, swell, { lowest, borders, sigma }));
  const log = (kind: number, from: number, to: number): number => logChance(places[kind]!, from, to);

  const [CRACKED, TIGHT, GOOD, LOOSE, GAPPY] = [0, 1, 2, 3, 4] as const;
  const torn = Array.from({ length: borders }, (_, t1) => log(CRACKED, -1, t1));
  const open = Array.from({ length: borders }, (_, t4) => log(GAPPY, t4, borders));
  const left = first.map((_, i) => {
    const t2 = start + i;
    return logMean(tight.map((w) => torn[t2 - w]! + log(TIGHT, t2 - w, t2)));
  });
  const ends = first.length + good.at(-1)! - good[0]!;
  const right = Array.from({ length: ends }, (_, i) => {
    const t3 = start + good[0]! + i;
    return logMean(loose.map((w) => open[t3 + w]! + log(LOOSE, t3, t3 + w)));
  });
  return first.map((_, i) =>
    Float64Array.from(good, (w) => left[i]! + log(GOOD, start + i, start + i + w) + right[i + w - good[0]!]!),
  );
}

/** Where a result was seen: the chance of its being beyond each border, and how often it was seen there. */
interface Place {
  /** By border from 1; at 0 and behind the last stand borders that everything, and nothing, is beyond. */
  readonly past: Float64Array;
  readonly times: number;
}

interface Row {
  readonly lowest: number;
  readonly borders: number;
  readonly sigma: number;
}

function placesOf(
  trials: readonly Trial[],
  result: Result,
  swell: number,
  { lowest, borders, sigma }: Row,
): Place[] {
  const times = new Map<number, number>();
  for (const t of trials) {
    if (t.result !== result) continue;
    const at = t.clearance + (t.tried === 'dry' ? swell : 0);
    times.set(at, (times.get(at) ?? 0) + 1);
  }
  const beyondBorder = beyond(sigma);
  return [...times].map(([at, n]) => {
    const past = new Float64Array(borders + 2);
    past[0] = 1;
    for (let k = 0; k < borders; k++) past[k + 1] = beyondBorder(at - (lowest + k * GRID));
    return { past, times: n };
  });
}

/** So many equal results are counted by logarithm: 0.01 to this power is far from the least number. */
const MANY = 40;

/** Logarithm of the chance that all these results lie between two borders. */
function logChance(places: readonly Place[], from: number, to: number): number {
  let sum = 0;
  let product = 1;
  for (const { past, times } of places) {
    const chance = (1 - SLIPS) * (past[from + 1]! - past[to + 1]!) + SLIPS / RESULTS.length;
    // The product of a few hundred chances is too small to be a number; logarithms take time.
    if (times > MANY) sum += times * ln(chance);
    else for (let k = 0; k < times; k++) product *= chance;
    if (product > 1e-200) continue;
    sum += ln(product);
    product = 1;
  }
  return product === 1 ? sum : sum + ln(product);
}

function logMean(logs: readonly number[]): number {
  const top = Math.max(...logs);
  if (logs.every((l) => l === top)) return top;
  return top + ln(logs.reduce((sum, l) => sum + exp(l - top), 0) / logs.length);
}

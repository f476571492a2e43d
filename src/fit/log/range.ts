import { type Belief, GRID } from './model.js';

/** Clearances, mm per side, and the chance that a glued fit is good all over them. */
export interface Good {
  readonly from: number;
  readonly to: number;
  readonly confidence: number;
}

/** The chance that a glued fit is good, for each clearance from 0 in steps of GRID. */
export function chances({ first, width, weight }: Belief): number[] {
  // The good range of each combination adds its weight where it begins and takes it away where it ends.
  const change: number[] = new Array(steps(first.at(-1)! + width.at(-1)!) + 2).fill(0);
  first.forEach((t2, i) => {
    width.forEach((w, k) => {
      change[steps(t2)]! += weight[i]![k]!;
      change[steps(t2 + w)]! -= weight[i]![k]!;
    });
  });
  let sum = 0;
  return change.map((c) => Math.min(1, Math.max(0, (sum += c))));
}

/** The chance that a glued fit of this clearance is good. */
export function chanceAt(belief: Belief, clearance: number): number {
  return chances(belief)[Math.round(clearance / GRID)] ?? 0;
}

/** The clearance that is most surely good, glued. */
export function surest(belief: Belief): { clearance: number; confidence: number } {
  const all = chances(belief);
  const confidence = Math.max(...all);
  // Of clearances as sure as each other, to a thousandth, the middle one.
  const ties = all.flatMap((p, k) => (p > confidence - 0.001 ? [k] : []));
  const middle = ties[Math.floor((ties.length - 1) / 2)]!;
  return { clearance: clean(middle * GRID), confidence: all[middle]! };
}

/** The widest range of clearances that is good all over with at least `confidence`, glued; null when there is none. */
export function widest({ first, width, weight }: Belief, confidence: number): Good | null {
  let best: Good | null = null;
  for (let i = 0; i < first.length; i++) {
    const from = clean(steps(first[i]!) * GRID);
    for (let to = from; ; to = clean(to + GRID)) {
      const sure = holds(first, width, weight, from, to);
      if (sure < confidence) break;
      if (!best || to - from > best.to - best.from + 1e-9) best = { from, to, confidence: sure };
    }
  }
  return best;
}

/** Where the ends of the good range lie, glued: each with one chance in ten on either side. mm. */
export interface Borders {
  readonly tightest: readonly [number, number];
  readonly loosest: readonly [number, number];
  /** Mean width of the good range. */
  readonly width: number;
}

export function borders({ first, width, weight }: Belief): Borders {
  const starts: number[] = new Array(first.length).fill(0);
  const ends: number[] = new Array(first.length + width.length - 1).fill(0);
  let mean = 0;
  weight.forEach((row, i) => {
    row.forEach((w, k) => {
      starts[i]! += w;
      ends[i + k]! += w;
      mean += w * width[k]!;
    });
  });
  const ten = (chances: readonly number[], from: number): [number, number] => {
    const at = (q: number): number => {
      let sum = 0;
      const k = chances.findIndex((p) => (sum += p) >= q);
      return clean(Math.max(0, from + (k < 0 ? chances.length - 1 : k) * GRID));
    };
    return [at(0.1), at(0.9)];
  };
  return { tightest: ten(starts, first[0]!), loosest: ten(ends, first[0]! + width[0]!), width: mean };
}

function holds(
  first: Belief['first'],
  width: Belief['width'],
  weight: Belief['weight'],
  from: number,
  to: number,
): number {
  let sum = 0;
  for (let i = 0; i < first.length && first[i]! < from; i++)
    for (let k = width.length - 1; k >= 0 && first[i]! + width[k]! > to; k--) sum += weight[i]![k]!;
  return sum;
}

/** The first clearance of the grid beyond a border, as a count of steps; never below 0. */
function steps(border: number): number {
  return Math.max(0, Math.ceil(border / GRID - 1e-6));
}

function clean(mm: number): number {
  return Math.round(mm * 10_000) / 10_000;
}

import { ln } from '../../geometry/power.js';
import { ladder } from '../ladder.js';
import { type Belief, GRID } from './model.js';

/** Ladders start at whole hundredths, mm: what is cut and written should be plain numbers. */
const PLAIN = 0.01;
/** The widest steps that are weighed, mm. */
const WIDEST = 0.06;

/**
 * The ladder of even steps that splits what is still possible into the most even parts: the entropy of the parts, where
 * two places of the good range are told apart when a step falls between them. Steps are `repeatability` apart or more.
 */
export function choose(belief: Belief, steps: number, repeatability: number): number[] {
  let best: { ladder: number[]; gain: number } | null = null;
  const last = belief.first.at(-1)! + belief.width.at(-1)!;
  const least = Math.ceil(repeatability / PLAIN - 1e-9) * PLAIN;
  for (let pitch = least; pitch <= Math.max(WIDEST, least) + 1e-9; pitch += PLAIN) {
    for (let from = 0; from + pitch * (steps - 1) <= last; from += PLAIN) {
      const rungs = ladder({ from, to: from + pitch * (steps - 1), steps, repeatability });
      const gain = split(belief, rungs);
      if (!best || gain > best.gain + 1e-9) best = { ladder: rungs, gain };
    }
  }
  return best?.ladder ?? ladder({ steps, repeatability });
}

/** Entropy (natural) of the parts into which the rungs split the places of the good range. */
export function split({ first, width, weight }: Belief, rungs: readonly number[]): number {
  const n = rungs.length + 1;
  const below = (t: number): number => rungs.filter((c) => c < t).length;
  const starts = first.map(below);
  // The far end of the range takes every place of the grid from the nearest on.
  const ends = Array.from({ length: first.length + width.length - 1 }, (_, i) =>
    below(first[0]! + width[0]! + i * GRID),
  );
  const parts = new Float64Array(n * n);
  for (let i = 0; i < first.length; i++)
    for (let k = 0; k < width.length; k++) parts[starts[i]! * n + ends[i + k]!]! += weight[i]![k]!;
  return parts.reduce((sum, p) => (p > 0 ? sum - p * ln(p) : sum), 0);
}

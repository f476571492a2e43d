import { RESULTS } from './entry.js';
import type { Trial } from './model.js';

/** Two results that cannot both be right: `looser` has the smaller clearance, or an equal one, and yet came out looser. */
export interface Contradiction<T extends Trial> {
  readonly looser: T;
  readonly tighter: T;
  /** How far the two together are off at least, mm. */
  readonly by: number;
}

/** A result that lies between two others is taken to be this wide at least, mm: a plain middling figure, our own choice. */
const BETWEEN = 0.03;
/** Two fits may each be off by this many times what the machine repeats, three quarters, before it is called odd. */
const ALLOWED = 1.5;

/**
 * The pairs of results that noise does not explain: the looser of two results at a clearance that is smaller by more
 * than one and a half times what the machine repeats. Dry results are held against dry, glued against glued; a glued
 * fit looser than a dry one is as odd, since glue makes a fit tighter and never looser.
 */
export function contradictions<T extends Trial>(
  trials: readonly T[],
  repeatability: number,
): Contradiction<T>[] {
  const found: Contradiction<T>[] = [];
  for (const looser of trials)
    for (const tighter of trials) {
      if (looser.tried === 'dry' && tighter.tried === 'glued') continue;
      const apart = RESULTS.indexOf(looser.result) - RESULTS.indexOf(tighter.result);
      if (apart <= 0) continue;
      const by = tighter.clearance - looser.clearance + (apart - 1) * BETWEEN;
      if (tighter.clearance >= looser.clearance && by >= ALLOWED * repeatability - 1e-9)
        found.push({ looser, tighter, by });
    }
  return found;
}

/**
 * The results to doubt: those in most contradictions, one after another until none is left. When both sides of a pair are
 * as much at odds with the rest, both are doubted.
 */
export function suspects<T extends Trial>(pairs: readonly Contradiction<T>[]): Set<T> {
  const doubted = new Set<T>();
  for (;;) {
    const left = pairs.filter(({ looser, tighter }) => !doubted.has(looser) && !doubted.has(tighter));
    if (left.length === 0) return doubted;
    const times = new Map<T, number>();
    for (const { looser, tighter } of left)
      for (const t of [looser, tighter]) times.set(t, (times.get(t) ?? 0) + 1);
    const most = Math.max(...times.values());
    const worst = [...times.keys()].filter((t) => times.get(t) === most);
    for (const t of worst) doubted.add(t);
  }
}

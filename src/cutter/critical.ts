import type { Artwork } from '../geometry/artwork.js';
import { Undecided } from '../geometry/fault.js';
import { Refusal } from '../schema/fault.js';
import { enforce } from './enforce.js';
import { losses } from './loss.js';
import type { Rule } from './rule.js';

/** How exactly critical values are found: the answer holds, and one this share further does not. */
export const PRECISION = 0.005;

/** Radii down to this share of the first are tried: the drawing 64 times as large. */
const SMALLEST = 1 / 64;

/**
 * The largest corner radius up to `r` at which the artwork keeps every part and hole, to PRECISION below; null when it
 * keeps them at none down to r / 64. By similarity a drawing s times as large keeps them with a corner radius s times
 * as large. A rule that refuses thin limbs counts as losing them.
 */
export function criticalRadius(artwork: Artwork, rule: Rule, r = rule.r): number | null {
  return lastHolding((x) => keepsAll(artwork, { ...rule, r: x }), r, r * SMALLEST);
}

/** The largest value found at which something holds: halving from `from`, then halving the interval. Null when none. */
export function lastHolding(holds: (x: number) => boolean, from: number, least: number): number | null {
  if (holds(from)) return from;
  let fails = from;
  let good = from / 2;
  while (!holds(good)) {
    fails = good;
    good /= 2;
    if (good < least * (1 - 1e-9)) return null;
  }
  while (fails > good * (1 + PRECISION)) {
    const middle = Math.sqrt(fails * good);
    if (holds(middle)) good = middle;
    else fails = middle;
  }
  return good;
}

function keepsAll(artwork: Artwork, rule: Rule): boolean {
  try {
    return losses(artwork, enforce(artwork, rule), rule.r).length === 0;
  } catch (e) {
    if (e instanceof Refusal || e instanceof Undecided) return false;
    throw e;
  }
}

import { atLeastZero, inRange } from './range.js';

/** Limits of size of one part. */
export interface Limits {
  readonly least: number;
  readonly greatest: number;
}

/**
 * Kind of fit in the words of ISO 286-1 (from memory; the terms as quoted by drawing manuals). Clearance fit: between
 * parts inside their limits there is always a gap, zero at the least. Interference fit: the inner part is never smaller
 * than the opening. Transition fit: either can happen.
 */
export type FitKind = 'clearance fit' | 'interference fit' | 'transition fit';

export interface FitLimits {
  /** Least and greatest clearance; a negative one is an interference of that much. */
  readonly least: number;
  readonly greatest: number;
  readonly kind: FitKind;
}

/** Digits that subtraction of sizes leaves behind, mm: less than this is zero. */
const NOTHING = 1e-9;

/**
 * Least clearance = least hole - greatest shaft (in ANSI B4.1's word the allowance), greatest clearance = greatest hole -
 * least shaft: hole the opening, shaft what goes into it. Full sizes, any one unit.
 */
export function fitLimits(hole: Limits, shaft: Limits): FitLimits {
  const least = hole.least - shaft.greatest;
  const greatest = hole.greatest - shaft.least;
  return { least, greatest, kind: kindOf(least, greatest) };
}

/**
 * Limits of the clearance per side, mm, when both boundaries, the pocket's and the plug's, may lie off their lines by
 * the machine's accuracy either way: nominal -+ 2 x accuracy. Estimate: the worst of both at once.
 * BadInput for a negative accuracy.
 */
export function clearanceLimits(nominal: number, accuracy: number): FitLimits {
  inRange('accuracy', accuracy, atLeastZero('mm'));
  return fitLimits(
    { least: nominal - accuracy, greatest: nominal + accuracy },
    { least: -accuracy, greatest: accuracy },
  );
}

function kindOf(least: number, greatest: number): FitKind {
  if (least >= -NOTHING) return 'clearance fit';
  return greatest <= NOTHING ? 'interference fit' : 'transition fit';
}

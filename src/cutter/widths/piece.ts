import { subtract, union } from '../../geometry/boolean.js';
import { type Contour, contourArea } from '../../geometry/region.js';
import { decided } from '../../geometry/thicken/decided.js';
import { tidied } from '../../geometry/tidy.js';
import { Refusal } from '../../schema/fault.js';
import type { Sound } from '../between.js';
import type { Rule } from '../rule.js';
import type { Change } from '../safe.js';
import { settle } from '../settle.js';
import type { Band } from './bands.js';
import type { Side } from './narrow.js';

type Point = readonly [number, number];

/** A piece with bands taken off or added, and where that did harm: then it must not be. */
export interface Tried {
  readonly piece: Sound;
  /** Null stands for a harm without a place. */
  readonly harm: readonly (Point | null)[];
}

/** A piece with bands taken away (gaps) or added (limbs), with reach r again. */
export function tried(piece: Sound, bands: readonly Band[], side: Side, { r, thin }: Rule): Tried {
  const contours = withBands(piece, bands, side);
  if (!contours) return { piece, harm: [null] };
  const changes: Change[] = [];
  try {
    const made = settle(piece.name, contours, r, thin === 'widen' ? 'widen' : 'drop', changes);
    const harm = changes.flatMap((c): Point[] => (isHarm(c, r) ? [c.at] : []));
    const whole =
      made.length === piece.contours.length && outers(made) === outers(piece.contours) ? [] : [null];
    return { piece: { name: piece.name, contours: made }, harm: harm.length > 0 ? harm : whole };
  } catch (e) {
    if (!(e instanceof Refusal)) throw e;
    return { piece, harm: [e.at] };
  }
}

function withBands(piece: Sound, bands: readonly Band[], side: Side): readonly Contour[] | null {
  const body = { contours: piece.contours };
  const added = bands.map((band) => ({ contours: band.contours }));
  const made = decided(() => (side === 'limb' ? union([body, ...added]) : subtract(body, union(added))));
  return made?.contours.map(tidied).filter((c) => c.length > 0) ?? null;
}

/** Slivers that a cut leaves at a tip, and the bottoms of corners down to 30 degrees, are none. */
function isHarm({ kind, size }: Change, r: number): boolean {
  return kind === 'split' || (kind === 'filled' && size > 3 * r) || (kind === 'vanished' && size > 2 * r);
}

function outers(contours: readonly Contour[]): number {
  return contours.filter((c) => contourArea(c) > 0).length;
}

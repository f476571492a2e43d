import type { Drawing } from './drawing.js';
import { fieldReach } from './field-reach.js';
import { type Reach, reach } from './reach.js';

/** The two routes must give the same reach within this, mm. */
const AGREE = 0.005;

/** How much finer the distance field looks when it differs at first. */
const FINER = 4;

export interface TwiceMeasured extends Reach {
  /** The reach by the distance field, mm. */
  readonly field: number;
  /** Null when both routes agree; else the sentence that says so, for a drawing called `name`, places from `middle`. */
  readonly disagree: ((name: string, middle: readonly [number, number]) => string) | null;
}

/**
 * The reach by both routes: in closed form on lines and arcs, and by the distance field. Where they differ, the field
 * is looked at once more with chords a quarter as long, since closed forms bear arcs of a few microns and chords do not.
 */
export function twice(drawing: Drawing, side: 'inside' | 'outside', cap: number): TwiceMeasured {
  const exact = reach(drawing, side, cap);
  let other = fieldReach(drawing, side, cap);
  if (!(Math.abs(other.reach - exact.reach) <= AGREE)) other = fieldReach(drawing, side, cap, FINER);
  const field = other.reach;
  if (Math.abs(field - exact.reach) <= AGREE) return { ...exact, field, disagree: null };
  const [x, y] = (exact.reach < field ? exact.at : other.at) ?? [0, 0];
  const disagree = (name: string, [mx, my]: readonly [number, number]): string =>
    `two measures of the ${name}'s reach from ${side} differ: ${fine(exact.reach)} mm along its edges and ${fine(field)} mm by the distance field, at (${fine(x - mx)}, ${fine(y - my)}); at most ${AGREE} may be rounding, so neither is trusted`;
  return { ...exact, field, disagree };
}

function fine(x: number): string {
  return x - x === 0 ? String(Math.round(x * 1e4) / 1e4 + 0) : 'an unknown length of';
}

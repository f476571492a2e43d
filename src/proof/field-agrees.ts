import type { Drawing } from './drawing.js';
import { fieldReach } from './field-reach.js';
import { type Reach, reach } from './reach.js';

/** The two routes must give the same reach within this, mm. */
const AGREE = 0.005;

/** How much finer the distance field looks, one look after the other, as long as it differs. */
const FINER = [1, 4, 16];

export interface TwiceMeasured extends Reach {
  /** The reach by the distance field, mm. */
  readonly field: number;
  /** Null when both routes agree; else the sentence that says so, for a drawing called `name`, places from `middle`. */
  readonly disagree: ((name: string, middle: readonly [number, number]) => string) | null;
}

/**
 * The reach by both routes: in closed form on lines and arcs, and by the distance field. Where they differ, the field is
 * looked at again with finer chords, since closed forms bear arcs of a few microns and shallow kinks, and chords do not:
 * at a kink of angle k a ball presses in by radius k k / 2, so a hair in k is much in the radius.
 */
export function twice(drawing: Drawing, side: 'inside' | 'outside', cap: number): TwiceMeasured {
  const exact = reach(drawing, side, cap);
  let other = fieldReach(drawing, side, cap);
  for (const fine of FINER.slice(1)) {
    if (Math.abs(other.reach - exact.reach) <= AGREE) break;
    other = fieldReach(drawing, side, cap, fine);
  }
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

import { Refusal } from '../../schema/fault.js';
import { mm } from '../values.js';
import type { Track } from './track.js';

/** What a band asks of its track, mm. */
export interface Wish {
  /** Half the height of the band, rails not counted. */
  readonly half: number;
  /** Length of a repeat, and the least it may shrink to where the track is tightest. */
  readonly repeat: number;
  readonly least: number;
  /** Room that the ends of a free band need beyond its repeats. */
  readonly caps?: number;
  /** Least radius of bends round corners that suits the band, in half heights; 1.9 unless said. */
  readonly bends?: number;
  /** How far inside the middle a repeat must still have its least length, mm; half the height unless said. */
  readonly depth?: number;
  /** How much further than other bands this one must run past a joint: where it meets the joint at a slant. */
  readonly past?: number;
}

/** Room for a band: half its height with its rails, mm, and how its repeats are counted. */
export interface Room extends Wish {
  readonly outer: number;
}

/** The track that a band is drawn on, and, when that is not yet the face, the track that brings it there. */
export interface Laid {
  readonly track: Track;
  readonly warp: Track | null;
  /** What the warp leaves of a width, at least, as a share of it; 1 without a warp. */
  readonly share: number;
}

/** A track on the face itself. */
export function unwarped(track: Track): Laid {
  return { track, warp: null, share: 1 };
}

/** More repeats than this are a slip of the keyboard. */
const MOST_REPEATS = 300;

/**
 * The whole number of repeats nearest to the wish on a length, mm. `tightest` is the least that a mm of the track's
 * middle shrinks to anywhere in the band.
 */
export function repeatsOn(length: number, tightest: number, { repeat, least }: Wish): number {
  const most = Math.floor((length * tightest) / least + 1e-9);
  if (most < 1)
    throw new Refusal(
      'no-room',
      `pattern.gap: the band runs ${mm(length)} and one repeat needs ${mm(least / tightest)}; use narrower straps and gaps or a larger outline`,
    );
  const n = Math.max(1, Math.min(Math.round(length / repeat), most));
  if (n > MOST_REPEATS)
    throw new Refusal(
      'too-large',
      `pattern.gap: ${n} repeats are too many; use straps and gaps, or a repeat, of ${mm(Math.ceil(length / MOST_REPEATS))} in all or more`,
    );
  return n;
}

/** The refusal of a band that is higher than the room there is, mm. */
export function noRoom(height: number, room: number): Refusal {
  return new Refusal(
    'no-room',
    `pattern.inset: the band is ${mm(height)} high and there is room for ${mm(Math.max(0, room))}; use a smaller inset, fewer rails or narrower straps and gaps`,
  );
}

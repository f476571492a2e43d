import type { Arrangement } from './arrangement.js';
import type { Point } from './isometry.js';
import { largest } from './largest.js';
import type { Stand } from './place.js';

/** The first steps of the search: a share of the largest size, and a turn. */
const FIRST_STEP = 1 / 10;
const FIRST_TURN = Math.PI / 8;

/** How often the steps are halved before the search ends. */
const HALVINGS = 4;

/** A move counts when it lets the motif grow by this factor. */
const WORTH = 1.005;

/** Smaller motifs than this are not looked for, mm. */
const LEAST = 1;

/** How the motif may be moved and how large it may be. */
export interface Search {
  readonly stand: Stand;
  /** May the arrangement have motifs of that size, mm? */
  fits(w: Arrangement, size: number): boolean;
  /** The largest size, mm; the search starts with steps of a tenth of it. */
  readonly most: number;
}

/**
 * The arrangement with its motif moved and turned, as far as its stand leaves it free, so that it can be large: from
 * where it stands, step by step to wherever it may grow, with ever smaller steps. Finds a good place near by, not the
 * best of all.
 */
export function snug(w: Arrangement, { stand, fits, most }: Search): Arrangement {
  let best = w;
  let size = largest((v) => fits(w, v), most);
  let share = 1;
  for (let k = 0; k < HALVINGS; ) {
    const worth = Math.max(Math.ceil(size * WORTH * 100) / 100, LEAST);
    const tried = moves(best, stand, most * FIRST_STEP * share, FIRST_TURN * share);
    const better = worth < most && tried.find((c) => fits(c, worth));
    if (better) {
      best = better;
      size = largest((v) => fits(better, v), most, worth);
    } else {
      share /= 2;
      k++;
    }
  }
  return best;
}

function moves(w: Arrangement, { free, turns }: Stand, step: number, turn: number): Arrangement[] {
  const along = (direction: Point | undefined): Point[] =>
    direction ? [0, 1, -1].map((k) => [direction[0] * k * step, direction[1] * k * step]) : [[0, 0]];
  const out: Arrangement[] = [];
  for (const t of turns ? [0, 1, -1] : [0])
    for (const p of along(free[0]))
      for (const q of along(free[1])) out.push(moved(w, t * turn, [p[0] + q[0], p[1] + q[1]]));
  return out;
}

/** The arrangement with its motif turned and moved; it stays one figure with the copies it was one with. */
export function moved(w: Arrangement, turn: number, [dx, dy]: Point): Arrangement {
  return {
    ...w,
    lean: w.lean + turn,
    place(size) {
      const [x, y] = w.place(size);
      return [x + dx, y + dy];
    },
  };
}

import { randomAt } from '../random-at.js';
import type { Meeting } from './plait.js';

export type BreaksName = 'none' | 'regular' | 'chance' | 'mirrored';

export interface Breaks {
  readonly name: BreaksName;
  /** Of regular breaks, so many cells from one row or column of them to the next. */
  readonly every: number;
  /** Share of the crossings that chance breaks, 0 to 1. */
  readonly share: number;
  readonly seed: number;
}

/** Where a plait of so many cells has breaks, by the middle of the side in half cells. */
export function meetings(breaks: Breaks, columns: number, rows: number): (x: number, y: number) => Meeting {
  const width = 2 * columns;
  const height = 2 * rows;
  switch (breaks.name) {
    case 'none':
      return () => 'cross';
    case 'regular':
      return (x, y) => {
        // The side's line, and its place on the line, each from the nearer edge of the grid.
        const level = y % 2 === 0;
        const line = level ? Math.min(y, height - y) / 2 : Math.min(x, width - x) / 2;
        const place = level ? Math.min(x, width - x) : Math.min(y, height - y);
        return line % breaks.every === 0 && ((place - 1) / 2) % 2 === 0 ? 'along' : 'cross';
      };
    case 'chance':
      return (x, y) => pick(breaks, x, y);
    case 'mirrored':
      return (x, y) => {
        const u = Math.abs(x - columns);
        const v = Math.abs(y - rows);
        // A square has mirrors along its diagonals too: they swap level and upright sides and keep along and across.
        return columns === rows ? pick(breaks, Math.max(u, v), Math.min(u, v)) : pick(breaks, u, v);
      };
  }
}

/** Makes the breaks of the default seed a figure that is whole in a square of four by four cells. */
const FIRST = 1;

function pick({ seed, share }: Breaks, x: number, y: number): Meeting {
  const chance = randomAt(seed + FIRST, x, y);
  if (chance() >= share) return 'cross';
  return chance() < 0.5 ? 'along' : 'across';
}

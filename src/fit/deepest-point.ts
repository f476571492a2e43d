import { bounds, type Contour, distanceToEdge, windingNumber } from '../geometry/region.js';

/** A point inside a part and how far it is from the part's boundary, mm. */
export interface Deepest {
  readonly at: readonly [number, number];
  readonly room: number;
}

/** How near the depth found is to the greatest there is, as a share of it. */
const FINE = 0.1;

/** Enough for any part a cutter can cut; a maze of very many turns just gets a good place and not the best. */
const MOST_CELLS = 200;

interface Cell extends Deepest {
  readonly half: number;
  /** No point of the cell can be deeper than this. */
  readonly bound: number;
}

/**
 * The point of a part (an outer contour and its holes) that is deepest inside it: its pole of inaccessibility, found by
 * halving squares, the most promising first. Distances to lines and arcs are exact.
 */
export function deepestPoint(part: readonly Contour[]): Deepest {
  const edges = part.flat();
  const { minX, minY, maxX, maxY } = bounds(part);
  const size = Math.min(maxX - minX, maxY - minY);
  const cell = (x: number, y: number, half: number): Cell => {
    let d = Number.POSITIVE_INFINITY;
    for (const e of edges) d = Math.min(d, distanceToEdge(e, x, y));
    const room = windingNumber(part, x, y) > 0 ? d : -d;
    return { at: [x, y], room, half, bound: room + half * Math.SQRT2 };
  };
  // Ordered by bound, the greatest last.
  const open: Cell[] = [];
  let best = cell((minX + maxX) / 2, (minY + maxY) / 2, 0);
  const fine = (): number => FINE * Math.max(0, best.room);
  let looked = 0;
  const look = (c: Cell): void => {
    looked++;
    // A tie goes to the first one looked at, so that the last digit of a sum decides nothing.
    if (c.room > best.room + fine() / 4) best = c;
    if (c.bound <= best.room + fine()) return;
    let at = open.length;
    while (at > 0 && open[at - 1]!.bound > c.bound) at--;
    open.splice(at, 0, c);
  };
  const across = Math.max(1, Math.ceil((maxX - minX) / size - 1e-9));
  const up = Math.max(1, Math.ceil((maxY - minY) / size - 1e-9));
  for (let j = up - 1; j >= 0; j--)
    for (let i = 0; i < across; i++) look(cell(minX + (i + 0.5) * size, minY + (j + 0.5) * size, size / 2));
  for (let c = open.pop(); c && (looked < MOST_CELLS || best.room <= 0); c = open.pop()) {
    if (c.bound <= best.room + fine()) break;
    const h = c.half / 2;
    for (const [i, j] of QUARTERS) look(cell(c.at[0] + i * h, c.at[1] + j * h, h));
  }
  return { at: best.at, room: best.room };
}

const QUARTERS = [
  [-1, 1],
  [1, 1],
  [-1, -1],
  [1, -1],
] as const;

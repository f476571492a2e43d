import { bounds, polygon, type Region } from '../../geometry/region.js';
import { placer } from '../field.js';
import type { Cells } from './plait.js';
import type { Point } from './strand.js';

/** Cells laid out on the piece. */
export interface LaidCells {
  readonly cells: Cells;
  /** Side of a cell, mm. */
  readonly cell: number;
  /** The grid's lower left corner. */
  readonly corner: Point;
}

/**
 * The largest grid of so many cells that fits the field about its middle, or null when none of `least` mm does. Bands
 * keep `spare` mm off the grid's edge, so it may stand out of the field by that.
 */
export function fittedCells(
  field: Region,
  columns: number,
  rows: number,
  least: number,
  spare: number,
): LaidCells | null {
  const place = placer(field);
  const fits = (cell: number): boolean => {
    const x = (columns * cell) / 2 - spare;
    const y = (rows * cell) / 2 - spare;
    return place({ contours: [box(-x, -y, x, y)] }) === 'inside';
  };
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  let lo = least;
  let hi = Math.max((maxX - minX + 2 * spare) / columns, (maxY - minY + 2 * spare) / rows);
  if (!fits(lo)) return null;
  if (fits(hi)) lo = hi;
  while (hi - lo > 1e-9) {
    const mid = (lo + hi) / 2;
    if (fits(mid)) lo = mid;
    else hi = mid;
  }
  return {
    cells: { columns, rows, has: (i, j) => i >= 0 && j >= 0 && i < columns && j < rows },
    cell: lo,
    corner: [(-columns * lo) / 2, (-rows * lo) / 2],
  };
}

/** How far from the size asked for a cell may be, to fill the field better. */
const SMALLEST = 0.85;
const LARGEST = 1.15;
const TRIES = 30;

/**
 * The cells of about the size asked for that lie whole in the field, in a grid about its middle with mirror lines. Of
 * the sizes near it, those that fit the field's box exactly among them, and of even and odd numbers of rows and
 * columns, the ones that cover most; half a percent more for every percent off the size asked for.
 */
export function fillingCells(field: Region, about: number, least: number, spare: number): LaidCells | null {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const sizes = Array.from(
    { length: TRIES + 1 },
    (_, k) => about * (LARGEST - ((LARGEST - SMALLEST) * k) / TRIES),
  );
  for (const reach of [2 * Math.min(maxX, -minX), 2 * Math.min(maxY, -minY)]) {
    const most = Math.floor((reach + 2 * spare) / (SMALLEST * about));
    for (let n = most; n > 0 && (reach + 2 * spare) / n <= LARGEST * about; n--)
      sizes.push((reach + 2 * spare) / n);
  }
  let best: LaidCells | null = null;
  let most = 0;
  for (const cell of sizes) {
    if (cell < least) continue;
    for (const oddColumns of [0, 1])
      for (const oddRows of [0, 1]) {
        const { laid, count } = filled(field, cell, oddColumns, oddRows, spare);
        const merit = count * cell * cell * (1 - Math.abs(cell / about - 1) / 2);
        if (merit <= most) continue;
        most = merit;
        best = laid;
      }
  }
  return best;
}

function filled(
  field: Region,
  cell: number,
  oddColumns: number,
  oddRows: number,
  spare: number,
): { laid: LaidCells; count: number } {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const number = (reach: number, odd: number): number =>
    2 * Math.max(0, Math.floor((2 * (reach + spare)) / cell / 2 + 1e-9 - odd / 2)) + odd;
  const columns = number(Math.min(maxX, -minX), oddColumns);
  const rows = number(Math.min(maxY, -minY), oddRows);
  const corner: Point = [(-columns * cell) / 2, (-rows * cell) / 2];
  const place = placer(field);
  const present = new Set<number>();
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      const x = corner[0] + i * cell;
      const y = corner[1] + j * cell;
      const square = box(x + spare, y + spare, x + cell - spare, y + cell - spare);
      if (place({ contours: [square] }) === 'inside') present.add(j * columns + i);
    }
  const has = (i: number, j: number): boolean => i >= 0 && i < columns && present.has(j * columns + i);
  return { laid: { cells: { columns, rows, has }, cell, corner }, count: present.size };
}

function box(x0: number, y0: number, x1: number, y1: number): ReturnType<typeof polygon> {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

import type { Vector } from '../../geometry/bezier.js';
import { wholePower } from '../../geometry/power.js';

/**
 * Hilbert's curve (D. Hilbert, Mathematische Annalen 38, 1891) through the 4^order points of a square grid, one apart,
 * from the lower left to the upper left; columns of such squares; and closed curves of two columns (of two squares
 * each: E. H. Moore, Transactions of the American Mathematical Society 1, 1900). All visit each point of their grid once.
 */
export function hilbertPath(order: number): Vector[] {
  const out: Vector[] = [];
  // A square by its corner and its two sides; the curve leaves along the first and comes back at the end of the second.
  const draw = (x: number, y: number, ax: number, ay: number, bx: number, by: number, k: number): void => {
    if (k === 0) {
      out.push([x + (ax + bx - 1) / 2, y + (ay + by - 1) / 2]);
      return;
    }
    const [cx, cy, dx, dy] = [ax / 2, ay / 2, bx / 2, by / 2];
    draw(x, y, dx, dy, cx, cy, k - 1);
    draw(x + cx, y + cy, cx, cy, dx, dy, k - 1);
    draw(x + cx + dx, y + cy + dy, cx, cy, dx, dy, k - 1);
    draw(x + cx + bx, y + cy + by, -dx, -dy, -cx, -cy, k - 1);
  };
  const n = wholePower(2, order);
  draw(0, 0, n, 0, 0, n, order);
  return out;
}

/** How squares of one order follow each other. */
export interface Course {
  readonly order: number;
  /** Squares in a column. */
  readonly count: number;
  /** One column up and its mirror image down, closed; else one column, open. */
  readonly closed: boolean;
  /** Laid on its side. */
  readonly lying: boolean;
}

/** The course's points about (0, 0), one apart. A closed one names its start once. */
export function coursePath({ order, count, closed, lying }: Course): Vector[] {
  const n = wholePower(2, order);
  const square = hilbertPath(order);
  const column = Array.from({ length: count }, (_, k) =>
    square.map(([x, y]): Vector => [x, y + k * n]),
  ).flat();
  const up = column.map(([x, y]): Vector => [-x - 0.5, y]);
  const path = closed ? [...up, ...up.map(([x, y]): Vector => [-x, y]).reverse()] : column;
  const dx = closed ? 0 : (n - 1) / 2;
  const dy = (count * n - 1) / 2;
  return path.map(([x, y]): Vector => (lying ? [y - dy, x - dx] : [x - dx, y - dy]));
}

/** Points of the course's grid across and up. */
export function courseSize({ order, count, closed, lying }: Course): [number, number] {
  const n = wholePower(2, order);
  const wide = closed ? 2 * n : n;
  return lying ? [count * n, wide] : [wide, count * n];
}

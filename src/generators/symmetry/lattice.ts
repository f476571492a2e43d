import type { Box } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Cell } from './groups.js';
import type { Isometry, Point } from './isometry.js';
import type { Operation } from './positions.js';

/** The two sides of a cell, mm; b lies counter-clockwise from a. */
export interface Lattice {
  readonly a: Point;
  readonly b: Point;
}

/** A cell with its first side `side` mm along x. Proportion and angle (radians) count only where the kind leaves them free. */
export function latticeOf(cell: Cell, side: number, proportion: number, angle: number): Lattice {
  const a: Point = [side, 0];
  const second = side * proportion;
  switch (cell) {
    case 'oblique':
      return { a, b: [second * cos(angle), second * sin(angle)] };
    case 'rectangular':
      return { a, b: [0, second] };
    case 'square':
      return { a, b: [0, side] };
    case 'hexagonal':
      return { a, b: [-side / 2, (side * Math.sqrt(3)) / 2] };
  }
}

export function cellArea({ a, b }: Lattice): number {
  return a[0] * b[1] - a[1] * b[0];
}

/** Lengths of the cell's sides, mm. */
export function sides({ a, b }: Lattice): { shorter: number; longer: number } {
  const first = Math.sqrt(a[0] * a[0] + a[1] * a[1]);
  const second = Math.sqrt(b[0] * b[0] + b[1] * b[1]);
  return { shorter: Math.min(first, second), longer: Math.max(first, second) };
}

/** The point at cell coordinates (u, v). */
export function atCell({ a, b }: Lattice, [u, v]: Point): Point {
  return [u * a[0] + v * b[0], u * a[1] + v * b[1]];
}

/** An operation in cell coordinates as a motion in mm: L M L^-1, where L has the cell's sides as columns. */
export function motion(lattice: Lattice, { matrix: [m, n, p, q], shift }: Operation): Isometry {
  const {
    a: [ax, ay],
    b: [bx, by],
  } = lattice;
  const area = cellArea(lattice);
  // L M, then times L^-1 = [[by, -bx], [-ay, ax]] / area.
  const [ux, uy] = atCell(lattice, [m, p]);
  const [vx, vy] = atCell(lattice, [n, q]);
  const [dx, dy] = atCell(lattice, shift);
  return {
    xx: (ux * by - vx * ay) / area,
    xy: (vx * ax - ux * bx) / area,
    yx: (uy * by - vy * ay) / area,
    yy: (vy * ax - uy * bx) / area,
    dx,
    dy,
  };
}

/** Every step of the lattice that brings the point into the box, row by row. */
export function stepsInto(box: Box, lattice: Lattice, [x, y]: Point): Point[] {
  const { a, b } = lattice;
  const area = cellArea(lattice);
  const corners = [box.minX - x, box.maxX - x].flatMap((u) =>
    [box.minY - y, box.maxY - y].map((v) => [(u * b[1] - v * b[0]) / area, (v * a[0] - u * a[1]) / area]),
  );
  const range = (k: 0 | 1): [number, number] => {
    const all = corners.map((c) => c[k]!);
    return [Math.ceil(Math.min(...all)), Math.floor(Math.max(...all))];
  };
  const [i0, i1] = range(0);
  const [j0, j1] = range(1);
  const out: Point[] = [];
  for (let j = j0; j <= j1; j++)
    for (let i = i0; i <= i1; i++) {
      const [dx, dy] = atCell(lattice, [i, j]);
      const inside = x + dx >= box.minX && x + dx <= box.maxX && y + dy >= box.minY && y + dy <= box.maxY;
      if (inside) out.push([dx, dy]);
    }
  return out;
}

import type { Vector } from '../../geometry/bezier.js';
import type { Box } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import { mm } from '../values.js';

/** Two steps that carry a lattice point to its neighbours. */
export type Steps = readonly [Vector, Vector];

export type LatticeKind = 'square' | 'hexagonal' | 'quincunx' | 'oblique';

/** A lattice whose nearest points lie 1 apart. Oblique: steps under `angle` radians, the second `ratio` times the first. */
export function unitLattice(kind: LatticeKind, angle: number, ratio: number): Steps {
  const half = Math.SQRT1_2;
  if (kind === 'square') return [[1, 0], [0, 1]]; // biome-ignore format: two steps
  if (kind === 'hexagonal') return [[1, 0], [0.5, Math.sqrt(3) / 2]]; // biome-ignore format: two steps
  if (kind === 'quincunx') return [[2 * half, 0], [half, half]]; // biome-ignore format: two steps
  const oblique: Steps = [[1, 0], [ratio * cos(angle), ratio * sin(angle)]]; // biome-ignore format: two steps
  return scaled(oblique, 1 / size(reduced(oblique)[0]));
}

/** The two shortest independent steps of a lattice, the shorter first (Lagrange's reduction, 1773, from memory). */
export function reduced([a, b]: Steps): Steps {
  let [u, v] = size(a) <= size(b) ? [a, b] : [b, a];
  for (;;) {
    const k = Math.round((u[0] * v[0] + u[1] * v[1]) / (u[0] * u[0] + u[1] * u[1]));
    v = [v[0] - k * u[0], v[1] - k * u[1]];
    if (size(v) >= size(u) * (1 - 1e-12)) return [u, v];
    [u, v] = [v, u];
  }
}

export function scaled([a, b]: Steps, k: number): Steps {
  return [
    [a[0] * k, a[1] * k],
    [b[0] * k, b[1] * k],
  ];
}

export function turned([x, y]: Vector, angle: number): Vector {
  const c = cos(angle);
  const s = sin(angle);
  return [x * c - y * s, x * s + y * c];
}

/** Area of the lattice's cell. */
export function cellArea([a, b]: Steps): number {
  return Math.abs(a[0] * b[1] - a[1] * b[0]);
}

export interface LatticePoint {
  readonly i: number;
  readonly j: number;
  readonly x: number;
  readonly y: number;
}

/** The lattice's points in a box, row by row; `origin` is where point 0, 0 lies. */
export function latticePoints(steps: Steps, origin: Vector, box: Box): LatticePoint[] {
  const [[ax, ay], [bx, by]] = steps;
  const det = ax * by - ay * bx;
  const corners = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].map((y): Vector => [x - origin[0], y - origin[1]]),
  );
  const across = corners.map(([x, y]) => (x * by - y * bx) / det);
  const up = corners.map(([x, y]) => (y * ax - x * ay) / det);
  const out: LatticePoint[] = [];
  for (let j = Math.floor(Math.min(...up)); j <= Math.ceil(Math.max(...up)); j++)
    for (let i = Math.floor(Math.min(...across)); i <= Math.ceil(Math.max(...across)); i++) {
      const x = origin[0] + i * ax + j * bx;
      const y = origin[1] + i * ay + j * by;
      if (x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY) out.push({ i, j, x, y });
    }
  return out;
}

const MOST_FIGURES = 20_000;

/** Refuses a flood of figures: `name` is the parameter that sets the steps, `value` its value, mm. */
export function refuseFlood(steps: Steps, box: Box, name: string, value: number): void {
  const count = ((box.maxX - box.minX) * (box.maxY - box.minY)) / cellArea(steps);
  if (count <= MOST_FIGURES) return;
  const least = Math.ceil(value * Math.sqrt(count / MOST_FIGURES) * 100) / 100;
  throw new Refusal(
    'too-large',
    `pattern.${name}: ${mm(value)} makes about ${Math.round(count)} figures, more than ${MOST_FIGURES}; use ${mm(least)} or more`,
  );
}

function size([x, y]: Vector): number {
  return Math.sqrt(x * x + y * y);
}

import type { Vector } from '../../geometry/bezier.js';
import { closedChain } from '../../geometry/chain.js';
import { type Edge, line } from '../../geometry/edge.js';
import { curveArcs } from '../../geometry/parametric.js';
import type { Box, Contour } from '../../geometry/region.js';
import { SAME_POINT } from '../../geometry/tolerances.js';
import type { Surface } from './smooth.js';

/** Heights at the points of a square grid over a box. */
export interface Samples {
  readonly box: Box;
  /** Distance of the points, mm. */
  readonly cell: number;
  readonly across: number;
  readonly up: number;
  readonly heights: Float64Array;
}

export function sampled(surface: Surface, box: Box, cell: number): Samples {
  const across = Math.ceil((box.maxX - box.minX) / cell) + 1;
  const up = Math.ceil((box.maxY - box.minY) / cell) + 1;
  const heights = new Float64Array(across * up);
  for (let j = 0; j < up; j++)
    for (let i = 0; i < across; i++)
      heights[j * across + i] = surface.value(box.minX + i * cell, box.minY + j * cell);
  return { box, cell, across, up, heights };
}

/**
 * The outlines of what lies higher than `level`, with high ground on the left, as arcs within CURVE_FIT of the surface's
 * own level line. High ground ends one step of the grid before the edge of the samples, in straight lines there.
 */
export function levelContours(surface: Surface, samples: Samples, level: number): Contour[] {
  return loops(samples, level).map((loop) => fitted(surface, level, loop, samples));
}

/** A point where the level line passes between two grid points; `edge` where it runs along the edge of the samples. */
interface Crossing {
  readonly at: Vector;
  readonly edge: boolean;
}

/** Sides of a grid square from its lower left corner on: below, right, above, left. */
type Side = 0 | 1 | 2 | 3;

/** By which corners are high (1 lower left, 2 lower right, 4 upper right, 8 upper left): from which side to which. */
const STEPS: readonly (readonly [Side, Side][])[] = [
  [],
  [[0, 3]],
  [[1, 0]],
  [[1, 3]],
  [[2, 1]],
  [[0, 3], [2, 1]], // biome-ignore format: one case a line
  [[2, 0]],
  [[2, 3]],
  [[3, 2]],
  [[0, 2]],
  [[1, 0], [3, 2]], // biome-ignore format: one case a line
  [[1, 2]],
  [[3, 1]],
  [[0, 1]],
  [[3, 0]],
  [],
];

/** Marching squares (Lorensen and Cline, 1987, in the plane): closed loops of crossings. */
function loops({ box, cell, across, up, heights }: Samples, level: number): Crossing[][] {
  const high = (i: number, j: number): boolean =>
    i > 0 && j > 0 && i < across - 1 && j < up - 1 && heights[j * across + i]! > level;
  // Grid sides are numbered: 2k from point k to the right, 2k + 1 from point k upwards.
  const sideOf = (i: number, j: number, s: Side): number =>
    2 * ((s === 2 ? j + 1 : j) * across + (s === 1 ? i + 1 : i)) + (s % 2);
  const next = new Map<number, number>();
  for (let j = 0; j + 1 < up; j++)
    for (let i = 0; i + 1 < across; i++) {
      const corners =
        (high(i, j) ? 1 : 0) +
        (high(i + 1, j) ? 2 : 0) +
        (high(i + 1, j + 1) ? 4 : 0) +
        (high(i, j + 1) ? 8 : 0);
      for (const [from, to] of STEPS[corners]!) next.set(sideOf(i, j, from), sideOf(i, j, to));
    }
  const crossing = (side: number): Crossing => {
    const p = side >> 1;
    const q = side % 2 === 0 ? p + 1 : p + across;
    const [i, j] = [p % across, Math.floor(p / across)];
    const [k, l] = [q % across, Math.floor(q / across)];
    const edge = i === 0 || j === 0 || k === across - 1 || l === up - 1;
    const t = edge ? 0.5 : (level - heights[p]!) / (heights[q]! - heights[p]!);
    return { at: [box.minX + (i + t * (k - i)) * cell, box.minY + (j + t * (l - j)) * cell], edge };
  };
  const out: Crossing[][] = [];
  for (const start of next.keys()) {
    const loop: Crossing[] = [];
    for (let side = start; next.has(side); ) {
      loop.push(crossing(side));
      const after = next.get(side)!;
      next.delete(side);
      side = after;
    }
    if (loop.length > 2) out.push(loop);
  }
  return out;
}

/** Pieces of a curve to start fitting from: grid steps in each. */
const STEPS_IN_PIECE = 4;

/** The loop as arcs along the surface's level line, and straight lines along the edge of the samples. */
function fitted(surface: Surface, level: number, loop: readonly Crossing[], samples: Samples): Edge[] {
  const n = loop.length;
  const points = loop.map((c) => (c.edge ? c.at : onLevel(surface, level, c.at, samples.cell)));
  // A start at the edge, if there is one, so that no free stretch runs over the end of the list.
  const first = Math.max(
    0,
    loop.findIndex((c) => c.edge),
  );
  const at = (k: number): Vector => points[(first + k) % n]!;
  const free = (k: number): boolean => !loop[(first + k) % n]!.edge;
  const out: Edge[] = [];
  for (let k = 0; k < n; ) {
    let end = k;
    while (end < n && free(end) && free(end + 1)) end++;
    if (end > k) {
      const curve = {
        point: (t: number): Vector => {
          const i = Math.floor(t);
          const [p, q] = [at(i), at(i + 1)];
          const s = t - i;
          if (s === 0) return p;
          return onLevel(surface, level, [p[0] + s * (q[0] - p[0]), p[1] + s * (q[1] - p[1])], samples.cell);
        },
        // High ground on the left: the gradient turned to the right.
        tangent(t: number): Vector {
          const [x, y] = this.point(t);
          const [gx, gy] = surface.gradient(x, y);
          return [gy, -gx];
        },
      };
      out.push(
        ...curveArcs(curve, k, end, Math.max(end === n ? 4 : 1, Math.ceil((end - k) / STEPS_IN_PIECE))),
      );
      k = end;
    } else {
      const [p, q] = [at(k), at(k + 1)];
      if (Math.abs(p[0] - q[0]) + Math.abs(p[1] - q[1]) > SAME_POINT) out.push(line(p[0], p[1], q[0], q[1]));
      k++;
    }
  }
  return closedChain(out);
}

/** Near enough to the level line, as a share of a grid step. */
const ON_LEVEL = 1e-14;

/** The point on the level line near p: Newton's steps up or down the slope, none longer than the grid's. */
function onLevel(surface: Surface, level: number, p: Vector, cell: number): Vector {
  let [x, y] = p;
  for (let k = 0; k < 20; k++) {
    const off = level - surface.value(x, y);
    const [gx, gy] = surface.gradient(x, y);
    const steep = gx * gx + gy * gy;
    if (steep === 0) break;
    const step = Math.abs(off) / Math.sqrt(steep);
    if (step < ON_LEVEL * cell) break;
    const t = (off / steep) * Math.min(1, cell / 2 / step);
    x += t * gx;
    y += t * gy;
  }
  return [x, y];
}

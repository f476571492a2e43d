import { atan2 } from '../../geometry/trig.js';
import { distance } from './inset.js';
import { type CellTile, inCells, type Periodic } from './lay.js';
import { middleOf, type Point } from './tile.js';
import type { Uniform } from './uniform.js';

/** Points of unit tilings nearer than this are one. */
const SAME = 1e-6;

/**
 * The dual of a uniform tiling: round each of its corners one tile, whose corners are the middles of the tiles that
 * meet there (a Laves tiling: Grunbaum and Shephard, Tilings and Patterns, 1987, section 2.7). Each tile starts at
 * the middle of the largest tile. Its edges cross those of the uniform tiling, of length 1, at right angles.
 */
export function dualOf(tiling: Uniform): Periodic {
  const cell = around(tiling).map((points): CellTile => ({ kind: 'tile', noun: 'tile', points }));
  return { steps: tiling.steps, cell };
}

/** The dual scaled so that its longest edges have length 1. */
export function unitDual(tiling: Uniform): Periodic {
  const { steps, cell } = dualOf(tiling);
  const longest = Math.max(...cell[0]!.points.map((p, i, all) => distance(p, all[(i + 1) % all.length]!)));
  const scaled = ([x, y]: Point): Point => [x / longest, y / longest];
  return {
    steps: [scaled(steps[0]), scaled(steps[1])],
    cell: cell.map((t) => ({ ...t, points: t.points.map(scaled) })),
  };
}

/** The tiles round the corners of one cell, each corner once. */
function around(tiling: Uniform): Point[][] {
  const [[ax, ay], [bx, by]] = tiling.steps;
  const near = [-2, -1, 0, 1, 2];
  const copies = tiling.cell.flatMap(({ points }) =>
    near.flatMap((i) =>
      near.map((j) => points.map(([x, y]): Point => [x + i * ax + j * bx, y + i * ay + j * by])),
    ),
  );
  const done: Point[] = [];
  const out: Point[][] = [];
  for (const corner of tiling.cell.flatMap((t) => t.points)) {
    if (done.some((d) => repeats(tiling, d, corner))) continue;
    done.push(corner);
    const meeting = copies
      .filter((points) => points.some((p) => distance(p, corner) < SAME))
      .map((points) => ({ sides: points.length, middle: middleOf(points) }))
      .map((t) => ({ ...t, angle: atan2(t.middle[1] - corner[1], t.middle[0] - corner[0]) }))
      .sort((s, t) => s.angle - t.angle);
    const most = Math.max(...meeting.map((t) => t.sides));
    const first = meeting.findIndex((t) => t.sides === most);
    out.push([...meeting.slice(first), ...meeting.slice(0, first)].map((t) => t.middle));
  }
  return out;
}

/** Whether one point is another moved by whole steps. */
function repeats(tiling: Uniform, p: Point, q: Point): boolean {
  return inCells(tiling, q[0] - p[0], q[1] - p[1]).every((v) => Math.abs(v - Math.round(v)) < SAME);
}

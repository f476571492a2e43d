import { angleOf, DEGREES, PI } from './angle.js';
import { turnCosine, turnSine } from './ball.js';
import { type Drawing, MM_PER } from './drawing.js';
import { STRIDE } from './edge-index.js';
import { halfChord, sweepOf } from './nesting.js';

/** Coordinates are written to this, in the file's unit (design: SVG). */
const GRID = 1e-6;

/** An edge whose direction the grid leaves open by more than this (radians, 0.02 degree) is judged with its neighbours. */
const UNSURE = 3.5e-4;

export interface Joint {
  readonly degrees: number;
  readonly at: readonly [number, number] | null;
}

/**
 * The greatest turn of direction where one edge meets the next, degrees. Edges too short to have a sure direction
 * (4 microns in a file in mm, 0.1 mm in one in inches) are stepped over: what must agree then is the turn between
 * their longer neighbours and the sweeps of the arcs stepped over, so a corner cannot hide in crumbs.
 */
export function worstJoint(drawing: Drawing): Joint {
  const { edges, index, starts } = drawing;
  const sure = (GRID * MM_PER[drawing.unit] * Math.SQRT2) / UNSURE;
  let worst = -1;
  let at: [number, number] | null = null;
  for (let k = 0; k < drawing.contours; k++) {
    const from = starts[k]!;
    const to = starts[k + 1]!;
    let first = from;
    while (first < to && 2 * halfChord(edges, first) < sure) first++;
    // A contour of crumbs only has no longer edges to go by.
    const all = first === to;
    if (all) first = from;
    let i = first;
    do {
      let j = index.next[i]!;
      let swept = 0;
      while (!all && 2 * halfChord(edges, j) < sure) {
        swept += edges.r[j]! > 0 ? sweepOf(edges, j) : -sweepOf(edges, j);
        j = index.next[j]!;
      }
      const turn = turnBetween(drawing, i, j) - swept;
      const off = Math.abs(turn - 2 * PI * Math.round(turn / (2 * PI)));
      if (off > worst) {
        worst = off;
        at = [edges.x1[i]!, edges.y1[i]!];
      }
      i = j;
    } while (i !== first);
  }
  return { degrees: worst < 0 ? 0 : worst * DEGREES, at };
}

/** Signed turn from the end of edge i to the start of edge j, radians, left positive. */
function turnBetween(drawing: Drawing, i: number, j: number): number {
  const { edges, index } = drawing;
  const p = index.pieces;
  const [a, b] = [i * STRIDE, j * STRIDE];
  const [ri, rj] = [edges.r[i]!, edges.r[j]!];
  return angleOf(turnSine(p, a, ri, b, rj), turnCosine(p, a, ri, b, rj));
}

import { CX, CY, R, U0X, U0Y, U1X, U1Y, WIDE, X0, X1, Y0, Y1 } from './edge-index.js';

/**
 * Writes into `out` the piece that the centre of a ball of radius rho follows as it rolls along the piece at `o`.
 * `turn` is +1 or -1 by which side of a straight piece (left, right as travelled) the ball is on; for an arc +1
 * when the ball is on the centre's side, -1 when on the other. Past the centre an inner ball comes out opposite.
 */
export function rollBall(p: Float64Array, o: number, turn: number, rho: number, out: Float64Array): void {
  const r = p[o + R]!;
  if (r < 0) {
    const nx = -p[o + U0Y]! * turn * rho;
    const ny = p[o + U0X]! * turn * rho;
    out[X0] = p[o + X0]! + nx;
    out[Y0] = p[o + Y0]! + ny;
    out[X1] = p[o + X1]! + nx;
    out[Y1] = p[o + Y1]! + ny;
    out[R] = -1;
    out[U0X] = p[o + U0X]!;
    out[U0Y] = p[o + U0Y]!;
    return;
  }
  const signed = r - turn * rho;
  const sign = signed < 0 ? -1 : 1;
  const cx = (out[CX] = p[o + CX]!);
  const cy = (out[CY] = p[o + CY]!);
  out[R] = signed * sign;
  out[U0X] = p[o + U0X]! * sign;
  out[U0Y] = p[o + U0Y]! * sign;
  out[U1X] = p[o + U1X]! * sign;
  out[U1Y] = p[o + U1Y]! * sign;
  out[WIDE] = p[o + WIDE]!;
  out[X0] = cx + signed * p[o + U0X]!;
  out[Y0] = cy + signed * p[o + U0Y]!;
  out[X1] = cx + signed * p[o + U1X]!;
  out[Y1] = cy + signed * p[o + U1Y]!;
}

/** Unit direction of travel at an end of an edge: `end` 0 its start, 1 its end. `r` is the edge's signed radius. */
export function tangentX(p: Float64Array, o: number, r: number, end: 0 | 1): number {
  if (r === 0) return p[o + U0X]!;
  return r > 0 ? -p[o + (end === 0 ? U0Y : U1Y)]! : p[o + (end === 0 ? U1Y : U0Y)]!;
}

export function tangentY(p: Float64Array, o: number, r: number, end: 0 | 1): number {
  if (r === 0) return p[o + U0Y]!;
  return r > 0 ? p[o + (end === 0 ? U0X : U1X)]! : -p[o + (end === 0 ? U1X : U0X)]!;
}

/** Sine of the turn from the end of edge i, of signed radius ri, to the start of edge j: left positive. */
export function turnSine(p: Float64Array, i: number, ri: number, j: number, rj: number): number {
  const ax = tangentX(p, i, ri, 1);
  const ay = tangentY(p, i, ri, 1);
  return ax * tangentY(p, j, rj, 0) - ay * tangentX(p, j, rj, 0);
}

/** Its cosine. Both take the places of the edges' pieces. */
export function turnCosine(p: Float64Array, i: number, ri: number, j: number, rj: number): number {
  return tangentX(p, i, ri, 1) * tangentX(p, j, rj, 0) + tangentY(p, i, ri, 1) * tangentY(p, j, rj, 0);
}

import type { Vector } from './bezier.js';
import { fitStretch } from './biarc.js';
import type { Edge } from './edge.js';

/** A smooth curve by formula: its points, mm, and its derivative, of any length but never zero. */
export interface Parametric {
  point(t: number): Vector;
  tangent(t: number): Vector;
}

/**
 * The curve from t0 to t1 as a chain of tangent arcs that stay within CURVE_FIT of it. `pieces` is the number of
 * equal stretches of t to start from: enough that none turns by more than about 90 degrees. A closed curve
 * (t0 and t1 at one point) ends exactly where it starts.
 */
export function curveArcs(curve: Parametric, t0: number, t1: number, pieces: number): Edge[] {
  const smooth = {
    point: (t: number) => curve.point(t),
    tangent(t: number): Vector {
      const [x, y] = curve.tangent(t);
      const l = Math.sqrt(x * x + y * y);
      return [x / l, y / l];
    },
  };
  const out: Edge[] = [];
  const start = curve.point(t0);
  const last = curve.point(t1);
  const closes = Math.abs(last[0] - start[0]) + Math.abs(last[1] - start[1]) < CLOSES;
  let at = start;
  for (let i = 0; i < pieces; i++) {
    const from = t0 + ((t1 - t0) * i) / pieces;
    const final = i + 1 === pieces;
    const to = final ? t1 : t0 + ((t1 - t0) * (i + 1)) / pieces;
    const end = final ? (closes ? start : last) : curve.point(to);
    fitStretch(smooth, from, to, at, end, out);
    at = end;
  }
  return out;
}

/** Ends nearer than this are one point that rounding has parted, mm. */
const CLOSES = 1e-6;

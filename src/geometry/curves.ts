import { cubicBreaks, cubicOf, cubicPoint, cubicTangent, turnsAlong, type Vector } from './bezier.js';
import { chain, fitStretch } from './biarc.js';
import type { Edge } from './edge.js';
import { CURVE_FIT, SAME_POINT } from './tolerances.js';

/** Bezier curves as chains of tangent circular arcs, fitted between the places where a curve bends the other way. */

/** A bend smaller than this is a corner, and a curve smaller than this a straight line. */
const TINY = CURVE_FIT / 10;

/** A curve whose control points leave the chord by less than this share of their extent is straight. */
const STRAIGHT = 1e-7;

/** Arcs along a quadratic Bezier curve from p0 to p2 with handle p1, mm. Empty when the curve is a point. */
export function quadraticArcs(p0: Vector, p1: Vector, p2: Vector): Edge[] {
  const third = (a: Vector, b: Vector): Vector => [
    a[0] + (2 / 3) * (b[0] - a[0]),
    a[1] + (2 / 3) * (b[1] - a[1]),
  ];
  return cubicArcs(p0, third(p0, p1), third(p2, p1), p2);
}

/** Arcs along a cubic Bezier curve from p0 to p3 with handles p1 and p2, mm. Empty when the curve is a point. */
export function cubicArcs(p0: Vector, p1: Vector, p2: Vector, p3: Vector): Edge[] {
  const curve = cubicOf(p0, p1, p2, p3);
  const points = [p0, p1, p2, p3];
  const far = farthest(points, p0);
  if (far.distance < SAME_POINT) return [];
  if (far.distance < TINY) return chain([p0, p3]);
  const ux = (far.point[0] - p0[0]) / far.distance;
  const uy = (far.point[1] - p0[1]) / far.distance;
  if (points.every((p) => Math.abs(ux * (p[1] - p0[1]) - uy * (p[0] - p0[0])) < STRAIGHT * far.distance)) {
    return chain([p0, ...turnsAlong(curve, ux, uy).map((t) => cubicPoint(curve, t)), p3]);
  }
  const breaks = cubicBreaks(curve, TINY);
  const smooth = {
    point: (t: number) => cubicPoint(curve, t),
    tangent: (t: number, side: 1 | -1) => cubicTangent(curve, t, side, TINY),
  };
  const out: Edge[] = [];
  let at: Vector = p0;
  for (let i = 0; i + 1 < breaks.length; i++) {
    const end = i + 2 === breaks.length ? p3 : cubicPoint(curve, breaks[i + 1]!);
    fitStretch(smooth, breaks[i]!, breaks[i + 1]!, at, end, out);
    at = end;
  }
  return out;
}

function farthest(points: readonly Vector[], from: Vector): { point: Vector; distance: number } {
  let best = { point: from, distance: 0 };
  for (const p of points) {
    const dx = p[0] - from[0];
    const dy = p[1] - from[1];
    const d = Math.sqrt(dx * dx + dy * dy);
    if (d > best.distance) best = { point: p, distance: d };
  }
  return best;
}

import type { Vector } from '../../geometry/bezier.js';
import { chainBetween } from '../../geometry/chain.js';
import type { Edge } from '../../geometry/edge.js';
import { curveArcs } from '../../geometry/parametric.js';
import { SAME_POINT } from '../../geometry/tolerances.js';

/** Stretches of a Bezier curve's parameter that are looked at for how far it turns. */
const LOOKED_AT = 32;

/** No stretch to be fitted turns further: cos 60 degrees. */
const TURN = 0.5;

/**
 * A rational Bezier curve of any degree, mm, as lines and arcs within CURVE_FIT.
 * @param points control points, both ends among them
 * @param weights one a point, above 0
 */
export function rationalEdges(
  points: readonly Vector[],
  weights: readonly number[],
  at: Vector,
  to: Vector,
): Edge[] {
  const net = points.map(([x, y], i) => [x * weights[i]!, y * weights[i]!, weights[i]!] as const);
  const place = (t: number): Vector => {
    const [p] = deCasteljau(net, t, 1);
    return [p![0] / p![2], p![1] / p![2]];
  };
  const direction = (t: number): Vector => {
    // The last two points of the scheme lie along the tangent.
    const [p, q] = deCasteljau(net, t, 2) as [Weighted, Weighted];
    const [x, y] = [q[0] / q[2] - p[0] / p[2], q[1] / q[2] - p[1] / p[2]];
    if (Math.abs(x) + Math.abs(y) > SAME_POINT) return [x, y];
    // Where points coincide the curve all but stops: the way it comes and goes tells.
    const [ax, ay] = place(Math.max(0, t - STEP));
    const [bx, by] = place(Math.min(1, t + STEP));
    return ax === bx && ay === by ? [1, 0] : [bx - ax, by - ay];
  };
  const curve = { point: place, tangent: direction };
  const stops = stopsOf(direction);
  const out: Edge[] = [];
  for (let k = 0; k + 1 < stops.length; k++) out.push(...curveArcs(curve, stops[k]!, stops[k + 1]!, 1));
  return chainBetween(
    out.filter((e) => Math.abs(e.x1 - e.x0) + Math.abs(e.y1 - e.y0) >= SAME_POINT),
    at,
    to,
  );
}

type Weighted = readonly [number, number, number];

const STEP = 1e-4;

/** The points of de Casteljau's scheme at t when `left` of them are left. */
function deCasteljau(net: readonly Weighted[], t: number, left: number): Weighted[] {
  let row = [...net];
  while (row.length > left)
    row = row.slice(1).map((q, i): Weighted => {
      const p = row[i]!;
      return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t, p[2] + (q[2] - p[2]) * t];
    });
  return row;
}

/** Parameters between which the curve turns by no more than TURN. */
function stopsOf(direction: (t: number) => Vector): number[] {
  const stops = [0];
  let from = unit(direction(0));
  for (let k = 1; k <= LOOKED_AT; k++) {
    const d = unit(direction(k / LOOKED_AT));
    if (k < LOOKED_AT && from[0] * d[0] + from[1] * d[1] > TURN) continue;
    stops.push(k / LOOKED_AT);
    from = d;
  }
  return stops;
}

function unit([x, y]: Vector): Vector {
  const l = Math.sqrt(x * x + y * y);
  return [x / l, y / l];
}

import type { Vector } from '../../../geometry/bezier.js';
import { atan2 } from '../../../geometry/trig.js';
import { type EllipseArc, lineTo, type Step, type Subpath } from '../outline-path.js';
import { Unreadable } from '../unreadable.js';
import type { Entity } from './entity.js';

const MOST_DEGREE = 5;

/** A point of a rational curve: w x, w y, w. */
type Weighted = readonly [number, number, number];

/**
 * A SPLINE entity as Bezier steps, one a stretch between knots that differ: exact, whatever its degree (1 to 5) and
 * weights. Throws Unreadable.
 */
export function splinePath(entity: Entity): Subpath[] {
  const degree = entity.number(71, 3);
  const points = entity.points(10);
  const knots = entity.list(40);
  const weights = entity.list(41);
  if (points.length === 0 && entity.codes.includes(11))
    throw new Unreadable(
      'is a spline of fit points alone, whose course every program guesses in its own way; export it with control points, or as polylines',
    );
  if (!(degree >= 1 && degree <= MOST_DEGREE && degree % 1 === 0))
    throw new Unreadable(
      `is a spline of degree ${degree}; 1 to ${MOST_DEGREE} are read: export it as polylines`,
    );
  if (points.length <= degree || knots.length !== points.length + degree + 1)
    throw new Unreadable(
      `is a spline of degree ${degree} with ${points.length} control points and ${knots.length} knots, which do not go together; export it again`,
    );
  if (knots.some((k, i) => i > 0 && k < knots[i - 1]!))
    throw new Unreadable('is a spline whose knots do not rise; export it again');
  if (weights.length > 0 && (weights.length !== points.length || weights.some((w) => w <= 0)))
    throw new Unreadable('is a spline whose weights are not above 0, one a control point; export it again');
  const even = weights.every((w) => w === weights[0]);
  const net = points.map(([x, y], i): Weighted => {
    const w = even ? 1 : weights[i]!;
    return [w * x, w * y, w];
  });
  const steps: Step[] = [];
  let start: Vector | null = null;
  for (let k = degree; k < points.length; k++) {
    const [a, b] = [knots[k]!, knots[k + 1]!];
    if (!(b > a)) continue;
    const bezier = Array.from({ length: degree + 1 }, (_, j) => blossom(net, knots, k, degree, a, b, j));
    start ??= plain(bezier[0]!);
    steps.push(bezierStep(bezier, even));
  }
  if (!start) throw new Unreadable('is a spline whose knots are all one; export it again');
  return [{ start, steps, closed: false }];
}

/** The j-th Bezier point of the stretch from knot a to b: the curve's polar form at b j times, at a else (de Boor). */
function blossom(
  net: readonly Weighted[],
  knots: readonly number[],
  k: number,
  degree: number,
  a: number,
  b: number,
  j: number,
): Weighted {
  let row = net.slice(k - degree, k + 1);
  for (let level = 1; level <= degree; level++) {
    const t = level <= j ? b : a;
    row = row.slice(1).map((q, i): Weighted => {
      const low = knots[k - degree + level + i]!;
      const high = knots[k + 1 + i]!;
      const share = (t - low) / (high - low);
      const p = row[i]!;
      return [p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share, p[2] + (q[2] - p[2]) * share];
    });
  }
  return row[0]!;
}

function plain([x, y, w]: Weighted): Vector {
  return [x / w, y / w];
}

function bezierStep(bezier: readonly Weighted[], even: boolean): Step {
  const points = bezier.map(plain);
  const to = points[points.length - 1]!;
  if (even || bezier.every((p) => Math.abs(p[2] - bezier[0]![2]) < 1e-12 * p[2])) {
    if (points.length === 2) return lineTo(to);
    if (points.length === 3) return { kind: 'quadratic', handle: points[1]!, to };
    if (points.length === 4) return { kind: 'cubic', first: points[1]!, second: points[2]!, to };
  }
  const arc = points.length === 3 ? ellipseOf(points, bezier) : null;
  if (arc) return { kind: 'arc', arc, to };
  return { kind: 'rational', points, weights: bezier.map((p) => p[2]), to };
}

/**
 * A rational quadratic as an arc of an ellipse, which it is when w1^2 < w0 w2: with k = w1 / sqrt(w0 w2) = cos(h), the
 * curve runs 2 h round it. Null for parabolas and hyperbolas.
 */
function ellipseOf(points: readonly Vector[], bezier: readonly Weighted[]): EllipseArc | null {
  const k2 = (bezier[1]![2] * bezier[1]![2]) / (bezier[0]![2] * bezier[2]![2]);
  // Near a parabola the ellipse is endless, and a half turn has its handle there: both are drawn as curves.
  if (!(k2 > 1e-4 && k2 < 1 - 1e-6)) return null;
  const [p, q, r] = points as [Vector, Vector, Vector];
  const k = Math.sqrt(k2);
  const s = Math.sqrt(1 - k2);
  // On the unit circle the ends are (k, -s) and (k, s), the handle (1 / k, 0), the middle of the ends (k, 0).
  const middle: Vector = [(p[0] + r[0]) / 2, (p[1] + r[1]) / 2];
  const share = 1 / (1 / k - k);
  const u: Vector = [(q[0] - middle[0]) * share, (q[1] - middle[1]) * share];
  const v: Vector = [(r[0] - p[0]) / (2 * s), (r[1] - p[1]) / (2 * s)];
  const half = atan2(s, k);
  return { centre: [middle[0] - k * u[0], middle[1] - k * u[1]], u, v, from: -half, by: 2 * half };
}

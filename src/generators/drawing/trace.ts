import type { Vector } from '../../geometry/bezier.js';
import { chainBetween, endingAt } from '../../geometry/chain.js';
import { cubicArcs, quadraticArcs } from '../../geometry/curves.js';
import { arc, type Edge, line, splitArc } from '../../geometry/edge.js';
import { curveArcs } from '../../geometry/parametric.js';
import type { Contour, Region } from '../../geometry/region.js';
import { SAME_POINT } from '../../geometry/tolerances.js';
import { atan2 } from '../../geometry/trig.js';
import { arcPoint, arcTangent } from './ellipse.js';
import { apply, applyLinear, type Matrix } from './matrix.js';
import type { EllipseArc, Step, Subpath } from './outline-path.js';
import { rationalEdges } from './rational.js';

/** Axes that differ by less than this share, or are out of square by it, are a circle's. */
const ROUND = 1e-9;

/** Stretches that a full turn of an ellipse is fitted in. */
const STRETCHES = 8;

/** A path's run as lines and arcs where `m` puts it, mm. Curves are followed within CURVE_FIT there. */
export function traced(run: Subpath, m: Matrix): Edge[] {
  const out: Edge[] = [];
  let at = apply(m, run.start);
  for (const step of run.steps) {
    const to = apply(m, step.to);
    out.push(...edgesOf(step, m, at, to));
    const last = out[out.length - 1];
    if (last) at = [last.x1, last.y1];
  }
  return out;
}

/** The run's contour: closed to the last bit. Null when it encloses nothing. */
export function closedContour(run: Subpath, m: Matrix): Contour | null {
  const edges = closing(traced(run, m));
  return edges.length > 1 ? edges : null;
}

/** The chain with a straight edge from its end to its start, if they are apart. */
export function closing(edges: readonly Edge[]): Edge[] {
  const first = edges[0];
  const last = edges[edges.length - 1];
  if (!first || !last) return [];
  if (apart(last.x1, last.y1, first.x0, first.y0))
    return [...edges, line(last.x1, last.y1, first.x0, first.y0)];
  return endingAt(edges, first.x0, first.y0);
}

function apart(x0: number, y0: number, x1: number, y1: number): boolean {
  return Math.abs(x1 - x0) + Math.abs(y1 - y0) >= SAME_POINT;
}

function edgesOf(step: Step, m: Matrix, at: Vector, to: Vector): Edge[] {
  switch (step.kind) {
    case 'line':
      return apart(at[0], at[1], to[0], to[1]) ? [line(at[0], at[1], to[0], to[1])] : [];
    case 'quadratic':
      return quadraticArcs(at, apply(m, step.handle), to);
    case 'cubic':
      return cubicArcs(at, apply(m, step.first), apply(m, step.second), to);
    case 'arc':
      return ellipseEdges(step.arc, m, at, to);
    case 'rational':
      return rationalEdges(
        step.points.map((p) => apply(m, p)),
        step.weights,
        at,
        to,
      );
  }
}

/** An arc of an ellipse through a map: a true arc where it becomes a circle, else a chain of arcs along it. */
export function ellipseEdges(own: EllipseArc, m: Matrix, at: Vector, to: Vector): Edge[] {
  const ellipse: EllipseArc = {
    ...own,
    centre: apply(m, own.centre),
    u: applyLinear(m, own.u),
    v: applyLinear(m, own.v),
  };
  const { centre, u, v, from, by } = ellipse;
  const uu = u[0] * u[0] + u[1] * u[1];
  const vv = v[0] * v[0] + v[1] * v[1];
  const uv = u[0] * v[0] + u[1] * v[1];
  if (!(uu > SAME_POINT * SAME_POINT || vv > SAME_POINT * SAME_POINT)) return [];
  if (Math.abs(uu - vv) <= ROUND * uu && Math.abs(uv) <= ROUND * uu) {
    const turnsLeft = u[0] * v[1] - u[1] * v[0] > 0 === by > 0;
    const r = Math.sqrt((uu + vv) / 2);
    if (!apart(at[0], at[1], to[0], to[1]) && Math.abs(by) < 1) return [];
    return splitArc(arc(at[0], at[1], to[0], to[1], centre[0], centre[1], turnsLeft ? r : -r), Math.abs(by));
  }
  const pieces = Math.ceil((STRETCHES * Math.abs(by)) / (2 * Math.PI));
  const way = by < 0 ? -1 : 1;
  const curve = {
    point: (s: number): Vector => arcPoint(ellipse, from + way * s),
    tangent(s: number): Vector {
      const [x, y] = arcTangent(ellipse, from + way * s);
      return [x * way, y * way];
    },
  };
  const edges = curveArcs(curve, 0, Math.abs(by), pieces).filter((e) => apart(e.x0, e.y0, e.x1, e.y1));
  return chainBetween(edges, at, to);
}

/** A region through any map: its arcs become parts of ellipses. */
export function mapped(region: Region, m: Matrix): Contour[] {
  return region.contours.flatMap((c) => {
    const out: Edge[] = [];
    for (const e of c) {
      const at = apply(m, [e.x0, e.y0]);
      const to = apply(m, [e.x1, e.y1]);
      if (e.r === 0) {
        if (apart(at[0], at[1], to[0], to[1])) out.push(line(at[0], at[1], to[0], to[1]));
      } else out.push(...ellipseEdges(circleArc(e), m, at, to));
    }
    const closed = closing(out);
    return closed.length > 1 ? [closed] : [];
  });
}

function circleArc(e: Edge): EllipseArc {
  const r = Math.abs(e.r);
  const from = atan2(e.y0 - e.cy, e.x0 - e.cx);
  let by = atan2(e.y1 - e.cy, e.x1 - e.cx) - from;
  if (e.r > 0 && by < 0) by += 2 * Math.PI;
  if (e.r < 0 && by > 0) by -= 2 * Math.PI;
  return { centre: [e.cx, e.cy], u: [r, 0], v: [0, r], from, by };
}

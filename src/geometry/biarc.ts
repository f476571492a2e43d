import type { Vector } from './bezier.js';
import { bulged, type Edge, line } from './edge.js';
import { distanceToEdge } from './region.js';
import { CURVE_FIT, SAME_POINT } from './tolerances.js';

/**
 * Smooth curves as chains of tangent circular arcs. A stretch is covered by the longest biarc (two arcs that share a
 * tangent) that stays within CURVE_FIT of the curve, found by bisection, until the end is reached. The biarc keeps
 * both end tangents and has its joint on the curve (Bolton, "Biarc curves", Computer-Aided Design 7, 1975, from
 * memory; the joint on the curve is what makes the two arcs share the error fairly).
 */

/** A curve without corners: its points, mm, and its unit direction just after (side 1) or before (-1) a place. */
export interface Smooth {
  point(t: number): Vector;
  tangent(t: number, side: 1 | -1): Vector;
}

/** Points at which a biarc is measured against the curve. Its error has about four lobes; 15 points see 97 % of each. */
const SAMPLES = 16;

/** No biarc turns further than this: cos 100 degrees. */
const FURTHEST_TURN = -0.17;

/** tan(170 degrees / 4): the bulge of the widest arc. */
const WIDEST = 0.9163;

/**
 * Covers t0..t1, a stretch that bends one way or little, from `start` to `end`, with as few biarcs as the tolerance
 * lets, and appends them to `out`.
 */
export function fitStretch(c: Smooth, t0: number, t1: number, start: Vector, end: Vector, out: Edge[]): void {
  let from = t0;
  let at = start;
  while (from < t1) {
    const tangent = c.tangent(from, 1);
    const attempt = (to: number): Edge[] | null => {
      const p = to === t1 ? end : c.point(to);
      return biarcAlong(c, from, to, at, tangent, p, c.tangent(to, -1));
    };
    let best = attempt(t1);
    let reached = t1;
    if (!best) {
      let lo = from;
      let hi = t1;
      for (let k = 0; k < 40 && (!best || hi - lo > (t1 - from) / 64); k++) {
        const mid = (lo + hi) / 2;
        const got = attempt(mid);
        if (got) {
          best = got;
          lo = mid;
        } else hi = mid;
      }
      reached = lo;
    }
    if (!best) {
      // Only a stretch too small to matter fits no biarc however short: a straight step over it.
      reached = Math.min(t1, from + (t1 - t0) / 1024);
      best = chain([at, reached === t1 ? end : c.point(reached)]);
    }
    out.push(...best);
    from = reached;
    at = reached === t1 ? end : c.point(reached);
  }
}

/** The biarc over from..to, or null when it strays too far from the curve. */
function biarcAlong(
  c: Smooth,
  from: number,
  to: number,
  p: Vector,
  tp: Vector,
  q: Vector,
  tq: Vector,
): Edge[] | null {
  if (tp[0] * tq[0] + tp[1] * tq[1] < FURTHEST_TURN) return null;
  const first = biarc(p, tp, q, tq, null);
  if (!first) return null;
  const arcs = biarc(p, tp, q, tq, crossing(c, from, to, first.joint, p, q)) ?? first;
  let nearest = 0;
  for (let i = 1; i < SAMPLES; i++) {
    const [x, y] = c.point(from + ((to - from) * i) / SAMPLES);
    // The curve runs along the first arc, then the second: never back.
    let d = distanceToEdge(arcs.edges[nearest]!, x, y);
    if (nearest === 0 && arcs.edges.length > 1) {
      const d1 = distanceToEdge(arcs.edges[1]!, x, y);
      if (d1 < d) {
        d = d1;
        nearest = 1;
      }
    }
    if (d > CURVE_FIT) return null;
  }
  return arcs.edges;
}

/**
 * Where the curve between from and to crosses the circle of possible joints, the one through p, the given joint and
 * q. A point sees p and q under the joint's own angle exactly there, so a cross product against a dot product tells
 * the side and no centre (which may be very far away) is needed.
 */
function crossing(c: Smooth, from: number, to: number, joint: Vector, p: Vector, q: Vector): Vector | null {
  const view = (m: Vector): [number, number] => {
    const ax = p[0] - m[0];
    const ay = p[1] - m[1];
    const bx = q[0] - m[0];
    const by = q[1] - m[1];
    return [ax * by - ay * bx, ax * bx + ay * by];
  };
  const [s, d] = view(joint);
  const f = (t: number): number => {
    const [ms, md] = view(c.point(t));
    return ms * d - md * s;
  };
  const lo = from + (to - from) / 8;
  const hi = to - (to - from) / 8;
  const [low, high] = [f(lo), f(hi)];
  if (low > 0 === high > 0) return null;
  return c.point(root(f, lo, low, hi, high, (to - from) * SURE));
}

/** Share of a stretch to which the crossing is found: far below what a file can hold. */
const SURE = 2.3e-10;

/**
 * Where f, of opposite signs at lo and hi, is 0, to within `sure`: by false position, halving the value of an end that
 * stays (the Illinois rule: Dowell and Jarratt, BIT 11, 1971, from memory), then by plain halving if that takes long.
 */
function root(
  f: (t: number) => number,
  lo: number,
  low: number,
  hi: number,
  high: number,
  sure: number,
): number {
  let [a, fa, b, fb] = [lo, low, hi, high];
  let moved: 'a' | 'b' | null = null;
  let last = a;
  for (let k = 0; k < 60 && b - a > sure; k++) {
    const t = k < 12 ? a + ((b - a) * fa) / (fa - fb) : (a + b) / 2;
    const ft = f(t);
    if (ft === 0 || Math.abs(t - last) < sure) return t;
    last = t;
    if (ft > 0 === fb > 0) {
      [b, fb] = [t, ft];
      if (moved === 'b') fa /= 2;
      moved = 'b';
    } else {
      [a, fa] = [t, ft];
      if (moved === 'a') fb /= 2;
      moved = 'a';
    }
  }
  return (a + b) / 2;
}

/**
 * Two arcs from p (leaving along tp) to q (arriving along tq), joined at `via` or, without it, evenly. The joint is
 * worked out anew from the length of the first arc's tangents, which makes the arcs tangent to rounding.
 */
export function biarc(
  p: Vector,
  tp: Vector,
  q: Vector,
  tq: Vector,
  via: Vector | null,
): { edges: Edge[]; joint: Vector } | null {
  const vx = q[0] - p[0];
  const vy = q[1] - p[1];
  const v2 = vx * vx + vy * vy;
  if (v2 < SAME_POINT * SAME_POINT) return null;
  const turn = tp[0] * tq[0] + tp[1] * tq[1] - 1;
  let d0: number;
  if (via) {
    const wx = via[0] - p[0];
    const wy = via[1] - p[1];
    const along = wx * tp[0] + wy * tp[1];
    if (along <= 0) return null;
    d0 = (wx * wx + wy * wy) / (2 * along);
  } else {
    // Both arcs with tangents of one length d: 2 turn d^2 - 2 (v . (tp + tq)) d + v^2 = 0; the positive root.
    const b = vx * (tp[0] + tq[0]) + vy * (tp[1] + tq[1]);
    const root = Math.sqrt(b * b - 2 * turn * v2);
    if (b + root <= 0) return null;
    d0 = v2 / (b + root);
  }
  const bottom = vx * tq[0] + vy * tq[1] - d0 * turn;
  const d1 = (v2 / 2 - d0 * (vx * tp[0] + vy * tp[1])) / bottom;
  if (!(d0 > 0 && d1 > 0)) return null;
  const share = d0 / (d0 + d1);
  const jx = p[0] + d0 * tp[0] + share * (q[0] - d1 * tq[0] - p[0] - d0 * tp[0]);
  const jy = p[1] + d0 * tp[1] + share * (q[1] - d1 * tq[1] - p[1] - d0 * tp[1]);
  const b0 = bulgeFrom(tp, jx - p[0], jy - p[1]);
  const b1 = -bulgeFrom([-tq[0], -tq[1]], jx - q[0], jy - q[1]);
  if (Math.abs(b0) > WIDEST || Math.abs(b1) > WIDEST) return null;
  return {
    edges: [bulged(p[0], p[1], jx, jy, b0), bulged(jx, jy, q[0], q[1], b1)],
    joint: [jx, jy],
  };
}

/** Bulge of the arc that leaves along unit vector t and ends (dx, dy) away: tan(half the angle between them). */
function bulgeFrom(t: Vector, dx: number, dy: number): number {
  const cross = t[0] * dy - t[1] * dx;
  const dot = t[0] * dx + t[1] * dy;
  return cross / (Math.sqrt(dx * dx + dy * dy) + dot);
}
/** Straight steps from point to point, none for steps too small to draw. */
export function chain(points: readonly Vector[]): Edge[] {
  const out: Edge[] = [];
  let [x, y] = points[0]!;
  for (const p of points.slice(1)) {
    if (Math.abs(p[0] - x) + Math.abs(p[1] - y) < SAME_POINT) continue;
    out.push(line(x, y, p[0], p[1]));
    [x, y] = p;
  }
  return out;
}

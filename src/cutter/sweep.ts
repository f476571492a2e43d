import { capsule } from '../geometry/capsule.js';
import { arc, type Edge, line } from '../geometry/edge.js';
import { type Contour, circle, reversedContour } from '../geometry/region.js';

type Point = readonly [number, number];

/** How far a fitted stretch may stray from the sampled middle line; with the sampling error it stays under SPARE. */
const FIT = 0.001;

/** Bends tighter than this share of w are followed by short chords; the disc hides them. */
const TIGHTEST = 0.1;

/**
 * A disc of radius w swept along a sampled line, as counter-clockwise contours that may overlap: one straight or bent
 * capsule for each stretch of the line that a segment or an arc follows to FIT.
 */
export function swept(points: readonly Point[], w: number): Contour[] {
  const out: Contour[] = [];
  let i = 0;
  if (points.length === 1) return [capsule(points[0]![0], points[0]![1], points[0]![0], points[0]![1], w)];
  while (i < points.length - 1) {
    const straight = longest(points, i, (j) => isStraight(points, i, j));
    const bent = longest(points, i, (j) => arcThrough(points, i, j, w) !== null);
    const p = points[i]!;
    if (bent > straight) {
      out.push(...arcCapsule(arcThrough(points, i, bent, w)!, w));
      i = bent;
    } else {
      const q = points[straight]!;
      out.push(capsule(p[0], p[1], q[0], q[1], w));
      i = straight;
    }
  }
  return out;
}

/** The furthest j for which the stretch i..j passes, by doubling and halving; at least i + 1. */
function longest(points: readonly Point[], i: number, passes: (j: number) => boolean): number {
  const last = points.length - 1;
  let good = i + 1;
  let step = 1;
  while (good + step <= last && passes(good + step)) {
    good += step;
    step *= 2;
  }
  for (; step >= 1; step = Math.floor(step / 2)) if (good + step <= last && passes(good + step)) good += step;
  return good;
}

function isStraight(points: readonly Point[], i: number, j: number): boolean {
  const [px, py] = points[i]!;
  const [qx, qy] = points[j]!;
  const dx = qx - px;
  const dy = qy - py;
  const l = Math.sqrt(dx * dx + dy * dy);
  if (l === 0) return false;
  for (let k = i + 1; k < j; k++) {
    const [x, y] = points[k]!;
    if (Math.abs((x - px) * dy - (y - py) * dx) > FIT * l) return false;
  }
  return true;
}

/** The arc through the first, middle and last point of a stretch, when it follows the others and is gentle enough. */
function arcThrough(points: readonly Point[], i: number, j: number, w: number): Edge | null {
  if (j - i < 2) return null;
  const [ax, ay] = points[i]!;
  const [bx, by] = points[(i + j) >> 1]!;
  const [qx, qy] = points[j]!;
  const ux = bx - ax;
  const uy = by - ay;
  const vx = qx - ax;
  const vy = qy - ay;
  const cross = ux * vy - uy * vx;
  if (cross === 0) return null;
  const u2 = ux * ux + uy * uy;
  const v2 = vx * vx + vy * vy;
  const cx = ax + (vy * u2 - uy * v2) / (2 * cross);
  const cy = ay + (ux * v2 - vx * u2) / (2 * cross);
  const radius = Math.sqrt((ax - cx) * (ax - cx) + (ay - cy) * (ay - cy));
  // Under half a circle: its ends are seen from its middle under more than a right angle.
  if ((ax - bx) * (qx - bx) + (ay - by) * (qy - by) >= 0) return null;
  if (radius < TIGHTEST * w || radius > 1e5 || v2 > 2.5 * radius * radius) return null;
  for (let k = i; k <= j; k++) {
    const dx = points[k]![0] - cx;
    const dy = points[k]![1] - cy;
    if (Math.abs(Math.sqrt(dx * dx + dy * dy) - radius) > FIT) return null;
  }
  return arc(ax, ay, qx, qy, cx, cy, cross > 0 ? radius : -radius);
}

/** All points within w of an arc, as counter-clockwise contours that may overlap. */
function arcCapsule(e: Edge, w: number): Contour[] {
  const radius = Math.abs(e.r);
  const outer = (radius + w) / radius;
  const turn = e.r > 0 ? 1 : -1;
  const at = (x: number, y: number, k: number): Point => [e.cx + (x - e.cx) * k, e.cy + (y - e.cy) * k];
  const o0 = at(e.x0, e.y0, outer);
  const o1 = at(e.x1, e.y1, outer);
  const rim = arc(o0[0], o0[1], o1[0], o1[1], e.cx, e.cy, turn * (radius + w));
  if (radius < w * 1.02) {
    // The disc reaches the centre: a slice of the full disc about it, and the disc at either end.
    const slice = [line(e.cx, e.cy, o0[0], o0[1]), rim, line(o1[0], o1[1], e.cx, e.cy)];
    return [turn > 0 ? slice : reversedContour(slice), circle(e.x0, e.y0, w), circle(e.x1, e.y1, w)];
  }
  const inner = (radius - w) / radius;
  const i0 = at(e.x0, e.y0, inner);
  const i1 = at(e.x1, e.y1, inner);
  const tip = (x: number, y: number, s: number): Point => [
    x - (s * turn * (y - e.cy) * w) / radius,
    y + (s * turn * (x - e.cx) * w) / radius,
  ];
  const [t0, t1] = [tip(e.x0, e.y0, -1), tip(e.x1, e.y1, 1)];
  const cap = (p: Point, q: Point, x: number, y: number): Edge => arc(p[0], p[1], q[0], q[1], x, y, turn * w);
  const loop: Edge[] = [
    rim,
    cap(o1, t1, e.x1, e.y1),
    cap(t1, i1, e.x1, e.y1),
    arc(i1[0], i1[1], i0[0], i0[1], e.cx, e.cy, -turn * (radius - w)),
    cap(i0, t0, e.x0, e.y0),
    cap(t0, o0, e.x0, e.y0),
  ];
  return [turn > 0 ? loop : reversedContour(loop)];
}

import {
  arc,
  type Edge,
  endTangent,
  parameterEnd,
  pointParameter,
  startTangent,
  withEnds,
} from '../geometry/edge.js';
import type { Contour } from '../geometry/region.js';
import { SAME_POINT, SMOOTH } from '../geometry/tolerances.js';

/** The arc that rounds one corner: its centre, and where it leaves the first edge (p) and meets the second (q). */
interface Fillet {
  /** Whether there is a corner to be rounded. */
  needed: boolean;
  cx: number;
  cy: number;
  r: number;
  px: number;
  py: number;
  qx: number;
  qy: number;
  /** The same places as parameters of the two edges. */
  end: number;
  start: number;
}

/**
 * The corners before and after an edge and the one that closes the contour, written anew for each: most of what would be made
 * for every corner would be gone a moment later. The kernel is synchronous, and nothing keeps a reference.
 */
const closing = blank();
const odd = blank();
const even = blank();

function blank(): Fillet {
  return {
    needed: false,
    cx: 0.5,
    cy: 0.5,
    r: 0.5,
    px: 0.5,
    py: 0.5,
    qx: 0.5,
    qy: 0.5,
    end: 0.5,
    start: 0.5,
  };
}

/**
 * Rounds every corner of a contour to radius r with the tangent arc of two edges, set where it belongs and leaving the
 * rest of both edges as they were. Null when some corner's arc does not fit on its edges, or an arc of the contour is
 * itself tighter than r: then only morphology can tell what a cutter leaves.
 */
export function filleted(contour: Contour, r: number): Contour | null {
  const n = contour.length;
  if (n === 0) return [];
  if (!fits(contour[n - 1]!, contour[0]!, r, closing)) return null;
  const out: Edge[] = [];
  let before = closing;
  for (let i = 0; i < n; i++) {
    const e = contour[i]!;
    if (e.r !== 0 && Math.abs(e.r) < r - SAME_POINT) return null;
    const after = i === n - 1 ? closing : i % 2 === 0 ? even : odd;
    if (i < n - 1 && !fits(e, contour[i + 1]!, r, after)) return null;
    const from = before.needed ? before.start : 0;
    const to = after.needed ? after.end : parameterEnd(e);
    const least = e.r === 0 ? SAME_POINT : SAME_POINT / Math.abs(e.r);
    if (to < from - least) return null;
    // When the arcs use an edge up, they meet where the first one ends.
    const left = to > from + least;
    const x0 = before.needed ? before.qx : e.x0;
    const y0 = before.needed ? before.qy : e.y0;
    const x1 = !left ? x0 : after.needed ? after.px : e.x1;
    const y1 = !left ? y0 : after.needed ? after.py : e.y1;
    if (left) out.push(withEnds(e, x0, y0, x1, y1));
    if (after.needed) pushArc(after, x1, y1, e, out);
    before = after;
  }
  return out;
}

/** Works out the corner between two edges; false where no arc fits on them. */
function fits(e: Edge, f: Edge, r: number, into: Fillet): boolean {
  const [ax, ay] = endTangent(e);
  const [bx, by] = startTangent(f);
  const cross = ax * by - ay * bx;
  const dot = ax * bx + ay * by;
  into.needed = !(Math.abs(cross) < SMOOTH && dot > 0);
  if (!into.needed) return true;
  if (dot < -0.99999) return false;
  const signed = cross > 0 ? r : -r;
  if (e.r !== 0 || f.r !== 0) return fitsArcs(e, f, signed, into);
  const setback = (r * Math.abs(cross)) / (1 + dot);
  const end = parameterEnd(e) - setback;
  if (end < -SAME_POINT || setback > parameterEnd(f) + SAME_POINT) return false;
  const px = e.x1 - ax * setback;
  const py = e.y1 - ay * setback;
  into.cx = px - ay * signed;
  into.cy = py + ax * signed;
  into.r = signed;
  into.px = px;
  into.py = py;
  into.qx = f.x0 + bx * setback;
  into.qy = f.y0 + by * setback;
  into.end = end;
  into.start = setback;
  return true;
}

/** Centres of circles of radius |r| tangent to both edges' carriers, on the side the corner turns to; the nearest that fits. */
function fitsArcs(e: Edge, f: Edge, r: number, into: Fillet): boolean {
  let least = Number.POSITIVE_INFINITY;
  for (const [cx, cy] of meet(carrier(e, r), carrier(f, r))) {
    const end = footParameter(e, cx, cy);
    const start = footParameter(f, cx, cy);
    if (!(end >= -SAME_POINT && end <= parameterEnd(e))) continue;
    if (!(start >= 0 && start <= parameterEnd(f) + SAME_POINT)) continue;
    const distance = (cx - e.x1) * (cx - e.x1) + (cy - e.y1) * (cy - e.y1);
    if (distance >= least) continue;
    least = distance;
    [into.px, into.py] = foot(e, cx, cy);
    [into.qx, into.qy] = foot(f, cx, cy);
    into.cx = cx;
    into.cy = cy;
    into.r = r;
    into.end = end;
    into.start = start;
  }
  return least < Number.POSITIVE_INFINITY;
}

/** A whole line (through x, y along ux, uy) or a whole circle. */
type Carrier = { x: number; y: number; ux: number; uy: number; radius: number };

/** The carrier of an edge moved left by d. */
function carrier(e: Edge, d: number): Carrier {
  if (e.r !== 0) return { x: e.cx, y: e.cy, ux: 0, uy: 0, radius: Math.abs(e.r - d) };
  const [ux, uy] = startTangent(e);
  return { x: e.x0 - uy * d, y: e.y0 + ux * d, ux, uy, radius: 0 };
}

function meet(p: Carrier, q: Carrier): [number, number][] {
  if (p.radius === 0) return lineCircle(p, q);
  if (q.radius === 0) return lineCircle(q, p);
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d === 0) return [];
  const a = (p.radius * p.radius - q.radius * q.radius + d * d) / (2 * d);
  const h2 = p.radius * p.radius - a * a;
  if (h2 < 0) return [];
  const h = Math.sqrt(h2);
  const mx = p.x + (dx * a) / d;
  const my = p.y + (dy * a) / d;
  return [
    [mx - (dy * h) / d, my + (dx * h) / d],
    [mx + (dy * h) / d, my - (dx * h) / d],
  ];
}

function lineCircle(l: Carrier, c: Carrier): [number, number][] {
  const along = (c.x - l.x) * l.ux + (c.y - l.y) * l.uy;
  const away = (c.x - l.x) * l.uy - (c.y - l.y) * l.ux;
  const h2 = c.radius * c.radius - away * away;
  if (h2 < 0) return [];
  const h = Math.sqrt(h2);
  return [
    [l.x + l.ux * (along - h), l.y + l.uy * (along - h)],
    [l.x + l.ux * (along + h), l.y + l.uy * (along + h)],
  ];
}

/** Where on an edge the point nearest to a fillet's centre lies; NaN when the carrier's near side is off the edge. */
function footParameter(e: Edge, cx: number, cy: number): number {
  if (e.r === 0) return pointParameter(e, cx, cy);
  const t = pointParameter(e, cx, cy);
  return Number.isFinite(t) ? t : Number.NaN;
}

/** The fillet's arc from where its first edge ends (x0, y0). */
function pushArc(f: Fillet, x0: number, y0: number, e: Edge, out: Edge[]): void {
  const ux = x0 - f.cx;
  const uy = y0 - f.cy;
  const vx = f.qx - f.cx;
  const vy = f.qy - f.cy;
  if (ux * vx + uy * vy > -0.98 * f.r * f.r) {
    out.push(arc(x0, y0, f.qx, f.qy, f.cx, f.cy, f.r));
    return;
  }
  // Nearly half a turn: in two, so that no arc comes near a semicircle. Its middle faces the corner itself.
  const dx = e.x1 - f.cx;
  const dy = e.y1 - f.cy;
  const k = Math.abs(f.r) / Math.sqrt(dx * dx + dy * dy);
  const mx = f.cx + dx * k;
  const my = f.cy + dy * k;
  out.push(arc(x0, y0, mx, my, f.cx, f.cy, f.r), arc(mx, my, f.qx, f.qy, f.cx, f.cy, f.r));
}

/** The point of an edge's carrier nearest to (cx, cy). */
function foot(e: Edge, cx: number, cy: number): [number, number] {
  if (e.r === 0) {
    const [tx, ty] = startTangent(e);
    const t = (cx - e.x0) * tx + (cy - e.y0) * ty;
    return [e.x0 + tx * t, e.y0 + ty * t];
  }
  const dx = cx - e.cx;
  const dy = cy - e.cy;
  const k = Math.abs(e.r) / Math.sqrt(dx * dx + dy * dy);
  return [e.cx + dx * k, e.cy + dy * k];
}

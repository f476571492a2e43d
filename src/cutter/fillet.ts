import { arc, type Edge, endTangent, parameterEnd, pointParameter, startTangent } from '../geometry/edge.js';
import type { Contour } from '../geometry/region.js';
import { SAME_POINT, SMOOTH } from '../geometry/tolerances.js';

/** The arc that rounds one corner: its centre, and where it leaves the first edge (p) and meets the second (q). */
interface Fillet {
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  readonly px: number;
  readonly py: number;
  readonly qx: number;
  readonly qy: number;
  /** The same places as parameters of the two edges. */
  readonly end: number;
  readonly start: number;
}

/**
 * Rounds every corner of a contour to radius r with the tangent arc of two edges, set where it belongs and leaving the
 * rest of both edges as they were. Null when some corner's arc does not fit on its edges, or an arc of the contour is
 * itself tighter than r: then only morphology can tell what a cutter leaves.
 */
export function filleted(contour: Contour, r: number): Contour | null {
  const n = contour.length;
  const fillets: (Fillet | null)[] = [];
  for (let i = 0; i < n; i++) {
    const e = contour[i]!;
    if (e.r !== 0 && Math.abs(e.r) < r - SAME_POINT) return null;
    const f = filletBetween(e, contour[i + 1 < n ? i + 1 : 0]!, r);
    if (f === 'none fits') return null;
    fillets.push(f);
  }
  const out: Edge[] = [];
  for (let i = 0; i < n; i++) {
    const e = contour[i]!;
    const before = fillets[i > 0 ? i - 1 : n - 1]!;
    const after = fillets[i]!;
    const from = before ? before.start : 0;
    const to = after ? after.end : parameterEnd(e);
    const least = e.r === 0 ? SAME_POINT : SAME_POINT / Math.abs(e.r);
    if (to < from - least) return null;
    // When the arcs use an edge up, they meet where the first one ends.
    const left = to > from + least;
    const x0 = before ? before.qx : e.x0;
    const y0 = before ? before.qy : e.y0;
    const x1 = !left ? x0 : after ? after.px : e.x1;
    const y1 = !left ? y0 : after ? after.py : e.y1;
    if (left) out.push({ x0, y0, x1, y1, cx: e.cx, cy: e.cy, r: e.r });
    if (after) pushArc(after, x1, y1, e, out);
  }
  return out;
}

function filletBetween(e: Edge, f: Edge, r: number): Fillet | null | 'none fits' {
  const [ax, ay] = endTangent(e);
  const [bx, by] = startTangent(f);
  const cross = ax * by - ay * bx;
  const dot = ax * bx + ay * by;
  if (Math.abs(cross) < SMOOTH && dot > 0) return null;
  if (dot < -0.99999) return 'none fits';
  const signed = cross > 0 ? r : -r;
  if (e.r === 0 && f.r === 0) {
    const setback = (r * Math.abs(cross)) / (1 + dot);
    const end = parameterEnd(e) - setback;
    if (end < -SAME_POINT || setback > parameterEnd(f) + SAME_POINT) return 'none fits';
    const px = e.x1 - ax * setback;
    const py = e.y1 - ay * setback;
    return {
      cx: px - ay * signed,
      cy: py + ax * signed,
      r: signed,
      px,
      py,
      qx: f.x0 + bx * setback,
      qy: f.y0 + by * setback,
      end,
      start: setback,
    };
  }
  return general(e, f, signed);
}

/** Centres of circles of radius |r| tangent to both edges' carriers, on the side the corner turns to; the nearest that fits. */
function general(e: Edge, f: Edge, r: number): Fillet | 'none fits' {
  let best: Fillet | 'none fits' = 'none fits';
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const [cx, cy] of meet(carrier(e, r), carrier(f, r))) {
    const end = footParameter(e, cx, cy);
    const start = footParameter(f, cx, cy);
    if (!(end >= -SAME_POINT && end <= parameterEnd(e))) continue;
    if (!(start >= 0 && start <= parameterEnd(f) + SAME_POINT)) continue;
    const distance = (cx - e.x1) * (cx - e.x1) + (cy - e.y1) * (cy - e.y1);
    if (distance >= bestDistance) continue;
    bestDistance = distance;
    const [px, py] = foot(e, cx, cy);
    const [qx, qy] = foot(f, cx, cy);
    best = { cx, cy, r, px, py, qx, qy, end, start };
  }
  return best;
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

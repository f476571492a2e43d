import {
  arc,
  type Edge,
  endTangent,
  parameterEnd,
  part,
  pointParameter,
  startTangent,
} from '../geometry/edge.js';
import type { Contour } from '../geometry/region.js';
import { SAME_POINT, SMOOTH } from '../geometry/tolerances.js';

/** The arc that rounds one corner: its centre, where it leaves the first edge and where it meets the second. */
interface Fillet {
  readonly cx: number;
  readonly cy: number;
  readonly end: number;
  readonly start: number;
  readonly r: number;
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
    const f = filletBetween(e, contour[(i + 1) % n]!, r);
    if (f === 'none fits') return null;
    fillets.push(f);
  }
  const out: Edge[] = [];
  for (let i = 0; i < n; i++) {
    const e = contour[i]!;
    const before = fillets[(i + n - 1) % n]!;
    const after = fillets[i]!;
    const end = parameterEnd(e);
    const from = before?.start ?? 0;
    const to = after?.end ?? end;
    const least = e.r === 0 ? SAME_POINT : SAME_POINT / Math.abs(e.r);
    if (to < from - least) return null;
    if (to > from + least) out.push(part(e, from, to));
    if (after) pushArc(after, e, contour[(i + 1) % n]!, out);
  }
  return closedUp(out);
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
    return {
      cx: e.x1 - ax * setback - ay * signed,
      cy: e.y1 - ay * setback + ax * signed,
      end,
      start: setback,
      r: signed,
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
    if (
      !(end >= -SAME_POINT && end <= parameterEnd(e) && start >= 0 && start <= parameterEnd(f) + SAME_POINT)
    )
      continue;
    const distance = (cx - e.x1) * (cx - e.x1) + (cy - e.y1) * (cy - e.y1);
    if (distance < bestDistance) {
      bestDistance = distance;
      best = { cx, cy, end, start, r };
    }
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

function pushArc(f: Fillet, e: Edge, next: Edge, out: Edge[]): void {
  const [x0, y0] = foot(e, f);
  const [x1, y1] = foot(next, f);
  const ux = x0 - f.cx;
  const uy = y0 - f.cy;
  const vx = x1 - f.cx;
  const vy = y1 - f.cy;
  if (ux * vx + uy * vy > -0.98 * f.r * f.r) {
    out.push(arc(x0, y0, x1, y1, f.cx, f.cy, f.r));
    return;
  }
  // Nearly half a turn: in two, so that no arc comes near a semicircle. Its middle faces the corner itself.
  const dx = e.x1 - f.cx;
  const dy = e.y1 - f.cy;
  const k = Math.abs(f.r) / Math.sqrt(dx * dx + dy * dy);
  const mx = f.cx + dx * k;
  const my = f.cy + dy * k;
  out.push(arc(x0, y0, mx, my, f.cx, f.cy, f.r), arc(mx, my, x1, y1, f.cx, f.cy, f.r));
}

/** The point of an edge's carrier nearest to the fillet's centre. */
function foot(e: Edge, f: Fillet): [number, number] {
  if (e.r === 0) {
    const [tx, ty] = startTangent(e);
    const t = (f.cx - e.x0) * tx + (f.cy - e.y0) * ty;
    return [e.x0 + tx * t, e.y0 + ty * t];
  }
  const dx = f.cx - e.cx;
  const dy = f.cy - e.cy;
  const k = Math.abs(e.r) / Math.sqrt(dx * dx + dy * dy);
  return [e.cx + dx * k, e.cy + dy * k];
}

/** Takes every edge's start from the end before it; they agree to rounding. */
function closedUp(edges: readonly Edge[]): Contour {
  return edges.map((e, i) => {
    const before = edges[(i + edges.length - 1) % edges.length]!;
    return before.x1 === e.x0 && before.y1 === e.y0 ? e : { ...e, x0: before.x1, y0: before.y1 };
  });
}

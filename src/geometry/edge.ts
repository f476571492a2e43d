import { STRAIGHT_BULGE } from './tolerances.js';
import { atan, cos, sin } from './trig.js';

/** 170 degrees: wider arcs are split, in the kernel and in the files, so that no reader meets a near-semicircle. */
export const MAX_SWEEP = (170 / 180) * Math.PI;

/**
 * One side of a contour: a straight segment or a circular arc. Millimetres, y up.
 *
 * `r` is a signed radius: 0 for a straight segment, positive for an arc that turns left (counter-clockwise),
 * negative for one that turns right. Moving an edge by `d` towards its left normal turns r into r - d whatever
 * the sign, which keeps offsetting free of cases. Arcs inside the kernel sweep less than 180 degrees
 * (see `splitArc`), so "is this direction on the arc" is two cross products and needs no angle.
 */
export interface Edge {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** Centre of the arc; 0, 0 for a straight segment. */
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
}

export function line(x0: number, y0: number, x1: number, y1: number): Edge {
  return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0 };
}

/** An arc by its ends, centre and signed radius (positive: counter-clockwise). The caller vouches that they agree. */
export function arc(x0: number, y0: number, x1: number, y1: number, cx: number, cy: number, r: number): Edge {
  return { x0, y0, x1, y1, cx, cy, r };
}

/**
 * The same line or circle between other ends. Edges are made here, never by spreading one into another: an engine keeps
 * the numbers of these apart, and sums that meet both put every number they read on the heap.
 */
export function withEnds(e: Edge, x0: number, y0: number, x1: number, y1: number): Edge {
  return { x0, y0, x1, y1, cx: e.cx, cy: e.cy, r: e.r };
}

/** The edge from one point to the next with a bulge, tan(sweep / 4), positive counter-clockwise, as DXF has it. */
export function bulged(x0: number, y0: number, x1: number, y1: number, bulge: number): Edge {
  if (Math.abs(bulge) < STRAIGHT_BULGE) return line(x0, y0, x1, y1);
  const dx = x1 - x0;
  const dy = y1 - y0;
  // Distance of the centre from the chord's middle, in chord lengths, towards the left.
  const h = (1 - bulge * bulge) / (4 * bulge);
  const cx = (x0 + x1) / 2 - dy * h;
  const cy = (y0 + y1) / 2 + dx * h;
  const radius = (Math.sqrt(dx * dx + dy * dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return arc(x0, y0, x1, y1, cx, cy, bulge > 0 ? radius : -radius);
}

/**
 * The edge with its centre moved so that both ends, which may have been moved, lie on its circle again; the radius stays.
 * Offsetting multiplies what an end is off by. With `kink`, an end off by more than that share of the chord is left,
 * since the arc would visibly turn.
 */
export function onItsCircle(e: Edge, kink = Number.POSITIVE_INFINITY): Edge {
  if (e.r === 0) return e;
  const radius = Math.abs(e.r);
  const off = (x: number, y: number): number =>
    Math.sqrt((x - e.cx) * (x - e.cx) + (y - e.cy) * (y - e.cy)) - radius;
  const off0 = off(e.x0, e.y0);
  const off1 = off(e.x1, e.y1);
  if (Math.abs(off0) < 1e-12 && Math.abs(off1) < 1e-12) return e;
  const l = chordLength(e);
  if (l >= 1.99 * radius || Math.abs(off0 - off1) > kink * l) return e;
  const h = (Math.sqrt(radius * radius - (l * l) / 4) / l) * (e.r > 0 ? 1 : -1);
  const cx = (e.x0 + e.x1) / 2 - (e.y1 - e.y0) * h;
  const cy = (e.y0 + e.y1) / 2 + (e.x1 - e.x0) * h;
  return arc(e.x0, e.y0, e.x1, e.y1, cx, cy, e.r);
}

/** tan(half the sweep), never negative; exact 0 for a straight segment. Arcs sweep under 180 degrees. */
export function halfTangent(e: Edge): number {
  if (e.r === 0) return 0;
  return pointParameter(e, e.x1, e.y1);
}

/**
 * Where a point's direction lies along an arc: tan(angle from the start / 2), measured in the arc's own sense.
 * Rises from 0 along the arc; negative or beyond `halfTangent` means off the arc. For a segment: distance from the start.
 */
export function pointParameter(e: Edge, x: number, y: number): number {
  if (e.r === 0) {
    const dx = e.x1 - e.x0;
    const dy = e.y1 - e.y0;
    return ((x - e.x0) * dx + (y - e.y0) * dy) / Math.sqrt(dx * dx + dy * dy);
  }
  const ux = e.x0 - e.cx;
  const uy = e.y0 - e.cy;
  const vx = x - e.cx;
  const vy = y - e.cy;
  const cross = ux * vy - uy * vx;
  const dot = ux * vx + uy * vy;
  const both = Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
  const s = e.r > 0 ? cross : -cross;
  // tan(a/2) has two forms; each is exact where the other loses digits.
  return dot > 0 ? s / (both + dot) : s === 0 ? Number.POSITIVE_INFINITY : (both - dot) / s;
}

/** The length of the edge in parameters of `pointParameter`. */
export function parameterEnd(e: Edge): number {
  return e.r === 0 ? chordLength(e) : halfTangent(e);
}

/** The point at a parameter as `pointParameter` measures it. */
export function pointAt(e: Edge, t: number): [number, number] {
  goTo(e, t);
  return [spot.x, spot.y];
}

/** Where `goTo` went last: no pair is made of it. The kernel is synchronous, and nothing keeps a reference. */
const spot = { x: 0.5, y: 0.5 };

function goTo(e: Edge, t: number): void {
  if (e.r === 0) {
    const dx = e.x1 - e.x0;
    const dy = e.y1 - e.y0;
    const l = Math.sqrt(dx * dx + dy * dy);
    spot.x = l === 0 ? e.x0 : e.x0 + (dx * t) / l;
    spot.y = l === 0 ? e.y0 : e.y0 + (dy * t) / l;
    return;
  }
  const ux = e.x0 - e.cx;
  const uy = e.y0 - e.cy;
  const q = 1 + t * t;
  const c = (1 - t * t) / q;
  const s = (e.r > 0 ? 2 * t : -2 * t) / q;
  spot.x = e.cx + ux * c - uy * s;
  spot.y = e.cy + ux * s + uy * c;
}

/** A point about half way along the edge (exactly half way on arcs too). */
export function midpoint(e: Edge): [number, number] {
  if (e.r === 0) return [(e.x0 + e.x1) / 2, (e.y0 + e.y1) / 2];
  return pointAt(e, halveTangent(halfTangent(e)));
}

/** tan(a / 2) from tan(a). */
export function halveTangent(t: number): number {
  return t / (1 + Math.sqrt(1 + t * t));
}

export function chordLength(e: Edge): number {
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Sweep of an arc in radians, never negative; 0 for a segment. */
export function sweep(e: Edge): number {
  return e.r === 0 ? 0 : 2 * atan(halfTangent(e));
}

/** Length along the edge, mm. */
export function edgeLength(e: Edge): number {
  return e.r === 0 ? chordLength(e) : Math.abs(e.r) * sweep(e);
}

/** DXF bulge of the edge: tan(sweep / 4), signed. */
export function bulge(e: Edge): number {
  if (e.r === 0) return 0;
  const t = halveTangent(halfTangent(e));
  return e.r > 0 ? t : -t;
}

export function reversed(e: Edge): Edge {
  return arc(e.x1, e.y1, e.x0, e.y0, e.cx, e.cy, e.r === 0 ? 0 : -e.r);
}

/** Unit tangent at the start of the edge, in the direction of travel. */
export function startTangent(e: Edge): [number, number] {
  return tangentAt(e, e.x0, e.y0);
}

/** Unit tangent at the end of the edge, in the direction of travel. */
export function endTangent(e: Edge): [number, number] {
  return tangentAt(e, e.x1, e.y1);
}

/** Unit tangent at a point known to lie on the edge. */
export function tangentAt(e: Edge, x: number, y: number): [number, number] {
  if (e.r === 0) {
    const dx = e.x1 - e.x0;
    const dy = e.y1 - e.y0;
    const l = Math.sqrt(dx * dx + dy * dy) || 1;
    return [dx / l, dy / l];
  }
  const ux = x - e.cx;
  const uy = y - e.cy;
  const l = Math.sqrt(ux * ux + uy * uy) || 1;
  return e.r > 0 ? [-uy / l, ux / l] : [uy / l, -ux / l];
}

/** The part of an edge between two parameters (ends are computed, not copied, unless they are the edge's own). */
export function part(e: Edge, t0: number, t1: number): Edge {
  let { x0, y0, x1, y1 } = e;
  if (t0 > 0) {
    goTo(e, t0);
    x0 = spot.x;
    y0 = spot.y;
  }
  if (t1 < parameterEnd(e)) {
    goTo(e, t1);
    x1 = spot.x;
    y1 = spot.y;
  }
  return withEnds(e, x0, y0, x1, y1);
}

/** Cuts an arc given by bulge (any sweep under 360 degrees) into arcs of at most 170 degrees, in order. */
export function splitArc(e: Edge, sweepRadians: number): Edge[] {
  const n = Math.max(1, Math.ceil(sweepRadians / MAX_SWEEP));
  if (n === 1) return [e];
  const out: Edge[] = [];
  const step = (e.r > 0 ? sweepRadians : -sweepRadians) / n;
  const ux = e.x0 - e.cx;
  const uy = e.y0 - e.cy;
  let px = e.x0;
  let py = e.y0;
  for (let i = 1; i <= n; i++) {
    const c = cos(step * i);
    const s = sin(step * i);
    const last = i === n;
    const qx = last ? e.x1 : e.cx + ux * c - uy * s;
    const qy = last ? e.y1 : e.cy + ux * s + uy * c;
    out.push(arc(px, py, qx, qy, e.cx, e.cy, e.r));
    px = qx;
    py = qy;
  }
  return out;
}

import { type Edge, line, parameterEnd } from './edge.js';
import { distanceToEdge } from './region.js';

/**
 * Which stretches of one edge after another lie too near to others. The innermost work of the kernel: what is known of the
 * edge is worked out once, and no numbers are put on the heap, neither for lists nor for calls. The kernel is synchronous,
 * and nothing keeps a reference.
 */

/** The edge that is asked about, and what all its cuts need of it. */
let edge = line(0, 0, 0, 0);
const own = {
  /** Its length in parameters of `pointParameter`. */
  end: 0.5,
  /** From its start: along a line, of length 1; from an arc's centre, as long as its radius by its start. */
  ux: 0.5,
  uy: 0.5,
  u2: 0.5,
};

/** The circle or line (nx x + ny y = c) that the edge is cut by. */
const circle = { x: 0.5, y: 0.5, r: 0.5 };
const straight = { nx: 0.5, ny: 0.5, c: 0.5 };

/** A point of the edge, and what is too near. */
const point = { x: 0.5, y: 0.5, least: 0.5 };

function pointNear(s: Edge): boolean {
  return distanceToEdge(s, point.x, point.y) < point.least;
}

/** Parameters at which one other edge cuts it, eight at most: two for each of two parallels and of two circles about its ends. */
const cuts = new Float64Array(16);
let count = 0;

/** Pairs of parameters: the stretches found near so far. */
let near = new Float64Array(64);
let length = 0;

/** Begins with an edge; gives its length in parameters, which is not above 0 for an edge that has none. */
export function beginStretches(e: Edge): number {
  edge = e;
  length = 0;
  const end = parameterEnd(e);
  own.end = end;
  const ux = e.r === 0 ? (e.x1 - e.x0) / end : e.x0 - e.cx;
  const uy = e.r === 0 ? (e.y1 - e.y0) / end : e.y0 - e.cy;
  own.ux = ux;
  own.uy = uy;
  own.u2 = ux * ux + uy * uy;
  return end;
}

/**
 * Adds the stretches of the edge that lie nearer than `r` (by more than `graze`) to edge `s`; tells whether they are all of it.
 *
 * The points at distance r from s form two parallel curves and two end circles. Cutting the edge at all of them leaves
 * stretches that are wholly near or wholly far, so one point of each decides; no case analysis is needed.
 */
export function addNear(s: Edge, r: number, graze: number): boolean {
  const e = edge;
  const end = own.end;
  if (length + 2 * cuts.length > near.length) makeRoom();
  count = 0;
  point.least = r - graze;
  circle.r = r;
  circle.x = s.x0;
  circle.y = s.y0;
  cutByCircle(e);
  circle.x = s.x1;
  circle.y = s.y1;
  cutByCircle(e);
  if (s.r === 0) {
    const dx = s.x1 - s.x0;
    const dy = s.y1 - s.y0;
    const l = Math.sqrt(dx * dx + dy * dy);
    if (l > 0) {
      const nx = -dy / l;
      const ny = dx / l;
      const c = nx * s.x0 + ny * s.y0;
      straight.nx = nx;
      straight.ny = ny;
      straight.c = c + r;
      cutByLine(e);
      straight.c = c - r;
      cutByLine(e);
    }
  } else {
    const radius = Math.abs(s.r);
    circle.x = s.cx;
    circle.y = s.cy;
    circle.r = radius + r;
    cutByCircle(e);
    if (radius !== r) {
      circle.r = Math.abs(radius - r);
      cutByCircle(e);
    }
  }
  sort();
  const before = length;
  let from = 0;
  for (let i = 0; i <= count; i++) {
    const to = i < count ? cuts[i]! : end;
    if (to > from) {
      const t = (from + to) / 2;
      if (e.r === 0) {
        point.x = e.x0 + ((e.x1 - e.x0) * t) / end;
        point.y = e.y0 + ((e.y1 - e.y0) * t) / end;
      } else {
        // As `pointAt`, without making a pair of them.
        const q = 1 + t * t;
        const c = (1 - t * t) / q;
        const d = (e.r > 0 ? 2 * t : -2 * t) / q;
        point.x = e.cx + own.ux * c - own.uy * d;
        point.y = e.cy + own.ux * d + own.uy * c;
      }
      if (pointNear(s)) {
        if (length > 0 && near[length - 1] === from) near[length - 1] = to;
        else {
          near[length++] = from;
          near[length++] = to;
        }
      }
      from = to;
    }
  }
  return length === before + 2 && near[before] === 0 && near[before + 1] === end;
}

/** Whether no stretch of the edge has been found near. */
export function noneNear(): boolean {
  return length === 0;
}

/** What the stretches found near leave of the edge: calls `keep` for each stretch, in order. */
export function betweenStretches(keep: (from: number, to: number) => void): void {
  const end = own.end;
  let from = 0;
  while (from < end) {
    // The nearest taken stretch that starts at or before `from` and reaches beyond it pushes `from` on.
    let to = end;
    let pushed = false;
    for (let k = 0; k < length; k += 2) {
      if (near[k]! <= from && near[k + 1]! > from) {
        from = near[k + 1]!;
        pushed = true;
      } else if (near[k]! > from && near[k]! < to) to = near[k]!;
    }
    if (pushed) continue;
    keep(from, to);
    from = to;
  }
}

function makeRoom(): void {
  const longer = new Float64Array(2 * near.length);
  longer.set(near);
  near = longer;
}

/** Leaves of the cuts those within the edge, in order. By hand: there are a few, and the call would cost more than the work. */
function sort(): void {
  const end = own.end;
  let n = 0;
  for (let i = 0; i < count; i++) {
    const v = cuts[i]!;
    if (!(v > 0 && v < end)) continue;
    let k = n++;
    for (; k > 0 && cuts[k - 1]! > v; k--) cuts[k] = cuts[k - 1]!;
    cuts[k] = v;
  }
  count = n;
}

function cutByCircle(e: Edge): void {
  const { x: qx, y: qy, r: q } = circle;
  if (e.r === 0) {
    const { ux, uy } = own;
    const along = (qx - e.x0) * ux + (qy - e.y0) * uy;
    const away = (qx - e.x0) * uy - (qy - e.y0) * ux;
    const h2 = q * q - away * away;
    if (h2 < 0) return;
    const h = Math.sqrt(h2);
    keep(along - h);
    keep(along + h);
    return;
  }
  const radius = Math.abs(e.r);
  const dx = qx - e.cx;
  const dy = qy - e.cy;
  const d2 = dx * dx + dy * dy;
  const d = Math.sqrt(d2);
  if (d === 0 || d > radius + q || d < Math.abs(radius - q)) return;
  const a = (radius * radius - q * q + d2) / (2 * d);
  const h = Math.sqrt(Math.max(0, radius * radius - a * a));
  keepPoint(e, e.cx + (dx * a - dy * h) / d, e.cy + (dy * a + dx * h) / d);
  keepPoint(e, e.cx + (dx * a + dy * h) / d, e.cy + (dy * a - dx * h) / d);
}

function cutByLine(e: Edge): void {
  const { nx, ny, c } = straight;
  if (e.r === 0) {
    const f0 = nx * e.x0 + ny * e.y0 - c;
    const f1 = nx * e.x1 + ny * e.y1 - c;
    if (f0 !== f1) keep((own.end * f0) / (f0 - f1));
    return;
  }
  const f = nx * e.cx + ny * e.cy - c;
  const h2 = e.r * e.r - f * f;
  if (h2 < 0) return;
  const h = Math.sqrt(h2);
  keepPoint(e, e.cx - nx * f - ny * h, e.cy - ny * f + nx * h);
  keepPoint(e, e.cx - nx * f + ny * h, e.cy - ny * f - nx * h);
}

/** Cuts an arc at a point of its circle: `pointParameter` with what is known already. */
function keepPoint(e: Edge, x: number, y: number): void {
  const { ux, uy } = own;
  const vx = x - e.cx;
  const vy = y - e.cy;
  const cross = ux * vy - uy * vx;
  const dot = ux * vx + uy * vy;
  const both = Math.sqrt(own.u2 * (vx * vx + vy * vy));
  const s = e.r > 0 ? cross : -cross;
  keep(dot > 0 ? s / (both + dot) : s === 0 ? Number.POSITIVE_INFINITY : (both - dot) / s);
}

function keep(t: number): void {
  cuts[count++] = t;
}

import { pointToPiece2 } from './distance.js';
import type { Drawing } from './drawing.js';
import { CX, CY, R, STRIDE, U0X, U0Y, X0, X1, Y0, Y1 } from './edge-index.js';
import { halfChord } from './nesting.js';
import { PRESS } from './press.js';
import { Search } from './search.js';

export type TightKind = 'inside corner' | 'gap' | 'slot';

/** A place that a ball no larger than `radius` gets into. mm, y up. */
export interface TightPlace {
  /** Radius of the largest ball that touches the boundary there, mm. */
  readonly radius: number;
  /** Its centre. */
  readonly centre: readonly [number, number];
  /** On the boundary at a corner; the middle of a gap or slot. */
  readonly at: readonly [number, number];
  /** Gap: between two contours. Slot: between two walls of one. Inside corner: where a boundary turns about the ball. */
  readonly kind: TightKind;
}

/** Cosine of how far apart, seen from the ball, it touches walls that are all but parallel: 170 degrees. */
const FACING = -0.985;

interface Bound {
  /** Edge the ball rolls on, or, past the number of edges, the corner at that edge's end. */
  readonly path: number;
  readonly against: number;
  readonly reach: number;
  readonly centre: readonly [number, number];
}

/** Of two places nearer than this share of `cap`, only the tighter counts; so too where their balls overlap. */
const APART = 0.125;

/** Walls nearer along the boundary than this many radii belong to one corner. */
const ROUND = 4;

/** A ball in a corner of 15 degrees touches its walls that many radii apart along the boundary. */
const WIDE = 16;

/** The tightest `top` distinct places whose balls are smaller than `cap`, mm, tightest first. */
export function tightPlaces(
  drawing: Drawing,
  side: 'inside' | 'outside',
  cap: number,
  top: number,
): TightPlace[] {
  if (drawing.edges.count === 0) return [];
  const search = new Search(drawing, side, cap);
  const found: { path: number; against: number; reach: number }[] = [];
  search.each(cap, (path, against, reach) => found.push({ path, against, reach }));
  found.sort((a, b) => a.reach - b.reach || a.path - b.path);
  const chosen: Bound[] = [];
  for (const f of found) {
    if (chosen.length === top) break;
    const bound: Bound = { ...f, centre: search.centre(f.path, f.against, f.reach) };
    if (empty(drawing, bound) && chosen.every((c) => distinct(drawing, c, bound, cap * APART)))
      chosen.push(bound);
  }
  return chosen.map((b) => described(drawing, b));
}

/** Is nothing deeper in the ball than balls may press in? Else another edge holds it off, at a place of its own. */
function empty(drawing: Drawing, { centre: [x, y], reach }: Bound): boolean {
  const { tree, blocks, pieces } = drawing.index;
  const r = reach - 2 * PRESS;
  if (r <= 0) return true;
  return tree!.search(x - r, y - r, x + r, y + r).every((k) => {
    for (let j = blocks[k]!; j < blocks[k + 1]!; j++) {
      if (pointToPiece2(x, y, pieces, j * STRIDE) < r * r) return false;
    }
    return true;
  });
}

/**
 * Does the way along the contour from edge i to edge j, of `most` mm between them, pass both edges of a tighter place? A
 * ball set farther back into a corner touches the same walls and is no place of its own.
 */
function spans(drawing: Drawing, i: number, j: number, both: readonly number[], most: number): boolean {
  const { index, edges } = drawing;
  if (index.contourOf[i] !== index.contourOf[j]) return false;
  let way = 0;
  let met = 0;
  for (let k = i; way <= most; k = index.next[k]!) {
    if (both.includes(k)) met++;
    if (k === j) return met === new Set(both).size;
    if (k !== i) way += 2 * halfChord(edges, k);
    if (index.next[k] === i) return false;
  }
  return false;
}

/** Two walls that follow each other along one slot are one place, as are balls that overlap by half. */
function distinct(drawing: Drawing, a: Bound, b: Bound, apart: number): boolean {
  const dx = a.centre[0] - b.centre[0];
  const dy = a.centre[1] - b.centre[1];
  const least = Math.max(apart, a.reach, b.reach);
  if (dx * dx + dy * dy < least * least) return false;
  const [ai, aj, bi, bj] = [a.path, a.against, b.path, b.against].map((p) => edgeOf(drawing, p)) as [
    number,
    number,
    number,
    number,
  ];
  const set = !facing(drawing, b);
  if (
    set &&
    (spans(drawing, bi, bj, [ai, aj], WIDE * b.reach) || spans(drawing, bj, bi, [ai, aj], WIDE * b.reach))
  )
    return false;
  // Two corners may share a wall and are still two.
  if (near(drawing, ai, aj) || near(drawing, bi, bj)) return true;
  const same =
    (near(drawing, ai, bi) && near(drawing, aj, bj)) || (near(drawing, ai, bj) && near(drawing, aj, bi));
  return !same;
}

function edgeOf(drawing: Drawing, path: number): number {
  return path < drawing.edges.count ? path : path - drawing.edges.count;
}

/** Is it the same edge, or the one before or after? */
function near(drawing: Drawing, i: number, j: number): boolean {
  const { next } = drawing.index;
  return i === j || next[i] === j || next[j] === i;
}

/** Where the ball touches: on its path, and on what holds it. */
function touching(drawing: Drawing, b: Bound): [[number, number], [number, number]] {
  const { edges } = drawing;
  const i = edgeOf(drawing, b.path);
  const p: [number, number] = b.path === i ? nearestOf(drawing, i, b.centre) : [edges.x1[i]!, edges.y1[i]!];
  return [p, nearestOf(drawing, b.against, b.centre)];
}

/** Are the two walls all but parallel, one on either side of the ball? */
function facing(drawing: Drawing, b: Bound): boolean {
  const [[px, py], [qx, qy]] = touching(drawing, b);
  const [x, y] = b.centre;
  return (px - x) * (qx - x) + (py - y) * (qy - y) < FACING * b.reach * b.reach;
}

function described(drawing: Drawing, b: Bound): TightPlace {
  const { index } = drawing;
  const i = edgeOf(drawing, b.path);
  const place = { radius: b.reach, centre: b.centre };
  const [p, q] = touching(drawing, b);
  const middle: [number, number] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  if (index.contourOf[i] !== index.contourOf[b.against]) return { ...place, at: middle, kind: 'gap' };
  const most = ROUND * b.reach;
  const [from, to] = along(drawing, i, b.against, most)
    ? [i, b.against]
    : along(drawing, b.against, i, most)
      ? [b.against, i]
      : [-1, -1];
  const touch = near(drawing, i, b.against);
  if (from < 0 || (!touch && facing(drawing, b))) return { ...place, at: middle, kind: 'slot' };
  return { ...place, at: cornerOf(drawing, from, to, b), kind: 'inside corner' };
}

/** The middle of a corner that runs from edge i to edge j: of its arc, or where the two meet. */
function cornerOf(drawing: Drawing, i: number, j: number, b: Bound): [number, number] {
  const { index, edges } = drawing;
  const own = [i, j].find((k) => edges.r[k] !== 0 && Math.abs(edges.r[k]!) < 1.2 * b.reach);
  const between: number[] = [];
  for (let k = index.next[i]!; i !== j && k !== j; k = index.next[k]!) between.push(k);
  const half = between.length >> 1;
  if (between.length % 2 === 1) return middleOf(drawing, between[half]!, b);
  if (own !== undefined && between.length === 0) return middleOf(drawing, own, b);
  if (i === j) return middleOf(drawing, i, b);
  const last = half === 0 ? i : between[half - 1]!;
  return [edges.x1[last]!, edges.y1[last]!];
}

/** Is the way along the contour, from the end of edge i to the start of edge j, no longer than `most`? */
function along(drawing: Drawing, i: number, j: number, most: number): boolean {
  const { index, edges } = drawing;
  let way = 0;
  if (i === j) return true;
  for (let k = index.next[i]!; k !== j; k = index.next[k]!) {
    way += 2 * halfChord(edges, k);
    if (way > most || k === i) return false;
  }
  return true;
}

/** The middle of an edge. */
function middleOf(drawing: Drawing, i: number, b: Bound): [number, number] {
  const { edges: e } = drawing;
  if (e.r[i] === 0) return [(e.x0[i]! + e.x1[i]!) / 2, (e.y0[i]! + e.y1[i]!) / 2];
  const mx = (e.x0[i]! + e.x1[i]!) / 2 - e.cx[i]!;
  const my = (e.y0[i]! + e.y1[i]!) / 2 - e.cy[i]!;
  const m = Math.sqrt(mx * mx + my * my);
  const r = Math.abs(e.r[i]!);
  if (m < 1e-6 * r) return [b.centre[0], b.centre[1]];
  const way = e.wide[i] === 1 ? -r / m : r / m;
  return [e.cx[i]! + mx * way, e.cy[i]! + my * way];
}

/** The point of edge i nearest to (x, y). */
function nearestOf(drawing: Drawing, i: number, [x, y]: readonly [number, number]): [number, number] {
  const p = drawing.index.pieces;
  const o = i * STRIDE;
  const d = Math.sqrt(pointToPiece2(x, y, p, o));
  if (p[o + R]! < 0) {
    const f = (x - p[o + X0]!) * p[o + U0X]! + (y - p[o + Y0]!) * p[o + U0Y]!;
    const at = Math.max(0, Math.min(f, 2 * halfChord(drawing.edges, i)));
    return [p[o + X0]! + at * p[o + U0X]!, p[o + Y0]! + at * p[o + U0Y]!];
  }
  const vx = x - p[o + CX]!;
  const vy = y - p[o + CY]!;
  const v = Math.sqrt(vx * vx + vy * vy);
  const r = p[o + R]!;
  // On the arc when that is as far as the piece is; else at the nearer end.
  if (v > 1e-9 && Math.abs(Math.abs(v - r) - d) < 1e-9)
    return [p[o + CX]! + (vx * r) / v, p[o + CY]! + (vy * r) / v];
  const a = (x - p[o + X0]!) * (x - p[o + X0]!) + (y - p[o + Y0]!) * (y - p[o + Y0]!);
  const c = (x - p[o + X1]!) * (x - p[o + X1]!) + (y - p[o + Y1]!) * (y - p[o + Y1]!);
  return a <= c ? [p[o + X0]!, p[o + Y0]!] : [p[o + X1]!, p[o + Y1]!];
}

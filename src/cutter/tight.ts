import { surelyApart } from '../geometry/apart.js';
import { type Edge, parameterEnd, pointAt, reversed } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import { movedLeft } from '../geometry/inset.js';
import { nearestPoints } from '../geometry/nearest.js';
import { type Contour, writeBox } from '../geometry/region.js';
import { TIGHT } from '../geometry/tolerances.js';
import { addNear, beginStretches, noneNear } from '../geometry/too-near.js';
import { mayFace } from './facing.js';

/** A kink the proof would not take for a smooth joint (0.1 degree = 0.00175). */
const KINK = 1e-3;

/**
 * Places where a ball of radius r cannot roll along both sides of the contours touching every point: each a point of
 * the boundary. Empty when the boundary has reach r on both sides (Federer 1959), give or take TIGHT.
 * Stops after the first when `first` is set.
 */
export function tightPlaces(contours: readonly Contour[], r: number, first = false): [number, number][] {
  // Most are sound, and that is sooner seen than where they are not.
  return isSound(contours, r) ? [] : placesByEdges(contours, r, first);
}

/** The same without that short cut. */
export function placesByEdges(contours: readonly Contour[], r: number, first = false): [number, number][] {
  const edges: Edge[] = contours.flat();
  const index = new EdgesIndex(edges);
  const out: [number, number][] = [];
  let base = 0;
  for (const c of contours) {
    for (let i = 0; i < c.length; i++) {
      const e = c[i]!;
      const place = kinked(e, c[(i + 1) % c.length]!)
        ? endOf(e)
        : tightAt(e, r, base, c.length, i, edges, index);
      if (place) out.push(place);
      if (first && place) return out;
    }
    base += c.length;
  }
  return out;
}

/** Below this many edges a plain walk over their boxes beats building a tree. */
const FEW = 64;

/** The boxes of a few edges; the kernel is synchronous, and nothing keeps a reference. */
const boxes = new Array<number>(4 * FEW).fill(0);

/** Whether a ball of radius r rolls along both sides of the contours touching every point, give or take TIGHT. */
export function isSound(contours: readonly Contour[], r: number): boolean {
  for (const c of contours)
    for (let i = 0; i < c.length; i++) {
      const e = c[i]!;
      if (e.r !== 0 && Math.abs(e.r) < r - TIGHT) return false;
      if (kinked(e, c[i + 1 < c.length ? i + 1 : 0]!)) return false;
    }
  const few = contours.length === 1 && contours[0]!.length <= FEW;
  return few ? fewApart(contours[0]!, r) : allApart(contours, r);
}

function fewApart(c: Contour, r: number): boolean {
  const n = c.length;
  for (let i = 0; i < n; i++) writeBox(c[i]!, boxes, 4 * i);
  const d = 2 * r;
  for (let i = 0, b = 0; i < n; i++, b += 4) {
    const minX = boxes[b]!;
    const minY = boxes[b + 1]!;
    const maxX = boxes[b + 2]!;
    const maxY = boxes[b + 3]!;
    // The one after is a neighbour.
    for (let j = i + 2, k = 4 * j; j < n; j++, k += 4) {
      const dx = Math.max(boxes[k]! - maxX, minX - boxes[k + 2]!);
      const dy = Math.max(boxes[k + 1]! - maxY, minY - boxes[k + 3]!);
      if (dx > d || dy > d || isNeighbour(j, i, n, c, 0)) continue;
      if (!pairApart(c[i]!, c[j]!, dx <= 0 && dy <= 0, r)) return false;
    }
  }
  return true;
}

function allApart(contours: readonly Contour[], r: number): boolean {
  const edges: Edge[] = contours.flat();
  const index = new EdgesIndex(edges);
  let base = 0;
  for (const c of contours) {
    for (let i = 0; i < c.length; i++) {
      const e = c[i]!;
      const near = index.nearAfter(base + i, 2 * r);
      for (let k = 0; k < near.length; k++) {
        const j = near[k]!;
        if (isNeighbour(j - base, i, c.length, edges, base)) continue;
        if (!pairApart(e, edges[j]!, index.overlap(base + i, j), r)) return false;
      }
    }
    base += c.length;
  }
  return true;
}

/** Whether no ball that rolls along either of two edges comes into the other. Only pairs that face each other or cross matter. */
function pairApart(e: Edge, f: Edge, mayCross: boolean, r: number): boolean {
  if (!mayCross && !mayFace(e, f, 2 * r)) return true;
  return surelyApart(e, f, 2 * r) || !(touches(e, f, r) || touches(f, e, r));
}

/** Whether a ball on either side of an edge comes into another one. */
function touches(e: Edge, f: Edge, r: number): boolean {
  return tooNear(movedLeft(e, r), f, r) || tooNear(movedLeft(reversed(e), r), f, r);
}

function endOf(e: Edge): [number, number] {
  return [e.x1, e.y1];
}

/** Whether two edges meet at more than KINK. Tangents are taken as they come, as long as the edges: no pairs are made of them. */
function kinked(e: Edge, after: Edge): boolean {
  if (e.r === 0 && after.r === 0) return !collinear(e, after);
  const turn = e.r > 0 ? 1 : -1;
  const ax = e.r === 0 ? e.x1 - e.x0 : (e.cy - e.y1) * turn;
  const ay = e.r === 0 ? e.y1 - e.y0 : (e.x1 - e.cx) * turn;
  const next = after.r > 0 ? 1 : -1;
  const bx = after.r === 0 ? after.x1 - after.x0 : (after.cy - after.y0) * next;
  const by = after.r === 0 ? after.y1 - after.y0 : (after.x0 - after.cx) * next;
  const cross = ax * by - ay * bx;
  return ax * bx + ay * by <= 0 || cross * cross > KINK * KINK * (ax * ax + ay * ay) * (bx * bx + by * by);
}

/** A place on edge `i` of a contour where the ball on either side does not fit, or null. */
function tightAt(
  e: Edge,
  r: number,
  base: number,
  length: number,
  i: number,
  edges: readonly Edge[],
  index: EdgesIndex,
): [number, number] | null {
  if (e.r !== 0 && Math.abs(e.r) < r - TIGHT) return pointAt(e, parameterEnd(e) / 2);
  let left: Edge | null = null;
  let right: Edge | null = null;
  let moved = false;
  // Both balls stay within 2r of the edge; on sound drawings hardly anything but the edge's own neighbours does.
  for (const j of index.nearEdge(base + i, 2 * r)) {
    if (isNeighbour(j - base, i, length, edges, base) || surelyApart(e, edges[j]!, 2 * r)) continue;
    if (!moved) {
      // An arc of just r moves to a point: its ball stands still, and is its neighbours' ball at their ends.
      left = movedLeft(e, r);
      right = movedLeft(reversed(e), r);
      moved = true;
    }
    const near = tooNear(left, edges[j]!, r) || tooNear(right, edges[j]!, r);
    if (near) return nearestPoints([e], [edges[j]!])!.p as [number, number];
  }
  return null;
}

/** Lines that meet: no corner between them. */
function collinear(e: Edge, after: Edge): boolean {
  const ax = e.x1 - e.x0;
  const ay = e.y1 - e.y0;
  const bx = after.x1 - after.x0;
  const by = after.y1 - after.y0;
  const cross = ax * by - ay * bx;
  return ax * bx + ay * by > 0 && cross * cross <= KINK * KINK * (ax * ax + ay * ay) * (bx * bx + by * by);
}

/** Whether the ball's centre, on its way along the moved edge, comes nearer than r to another edge. */
function tooNear(moved: Edge | null, f: Edge, r: number): boolean {
  if (!moved) return false;
  beginStretches(moved);
  addNear(f, r - TIGHT, 0);
  return !noneNear();
}

/** The edge itself, or a smooth neighbour: next to each other they cannot trouble a ball that fits each alone. */
function isNeighbour(k: number, i: number, length: number, edges: readonly Edge[], base: number): boolean {
  if (k < 0 || k >= length) return false;
  const apart = Math.abs(k - i);
  const steps = Math.min(apart, length - apart);
  if (steps <= 1) return true;
  if (steps > 2) return false;
  // Line, corner arc, line: the ball stops where the arc begins, and the arc is the ball's own circle or gentler.
  // Arc, line, arc: a ball that touches the line before an arc gentler than itself never reaches into it.
  const between = ((apart === steps ? Math.min(k, i) : Math.max(k, i)) + 1) % length;
  const straight = edges[base + between]!.r === 0;
  return (edges[base + k]!.r === 0) !== straight && (edges[base + i]!.r === 0) !== straight;
}

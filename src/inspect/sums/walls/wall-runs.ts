import { type Edge, edgeLength, parameterEnd, pointAt, withEnds } from '../../../geometry/edge.js';
import { nearestPoints } from '../../../geometry/nearest.js';
import { distanceToEdge, type Region } from '../../../geometry/region.js';
import { type Ball, type Boundary, boundaryOf } from '../../../geometry/thicken/balls.js';
import { clearance, isFreeEnd } from '../../../geometry/thicken/ends.js';
import { BEYOND, narrowRuns, type Run, turned } from '../../../geometry/thicken/runs.js';
import { tipOf } from '../../../geometry/thicken/tips.js';
import { tan } from '../../../geometry/trig.js';

/** A narrow part of a region: a stretch of its medial axis between the same two contours. */
export interface NarrowPart {
  /** Along its axis, at close steps. */
  readonly balls: readonly Ball[];
  /** Whether the axis closes on itself, as in a ring. */
  readonly closed: boolean;
  /** Least width, mm: exact where the two sides are nearest, else to a step of the axis. */
  readonly width: number;
  readonly at: readonly [number, number];
  /** Number of the ball that is nearest to that place. */
  readonly least: number;
  /** The contours of the region that lie to its right and left. */
  readonly sides: readonly [number, number];
  /** Ends of the axis that are free: nothing but the tip lies beyond. None, where it is closed. */
  readonly freeEnds: number;
}

/** Sides count as the two sides of one part while the contacts lie at least 120 degrees apart: about a neck they close in fast. */
const FACING = -0.5;

/** At 150 degrees somewhere: sides that close in faster than 30 degrees everywhere are a corner, no wall. */
export const ABREAST = -0.866;

/** Edges are cut into pieces of this many times the widest width at most. */
const LONG = 2;

/** An end wider than this share of the widest goes on into wider wood. */
const WIDE = 0.95;

/** The narrow parts of a region up to `widest` mm wide, in boundary order. Needs a sound region. */
export function narrowParts(region: Region, widest: number): NarrowPart[] {
  const b = boundaryOf(region.contours.map((c) => c.flatMap((e) => shortened(e, LONG * widest))));
  const r = widest / 2 / BEYOND;
  return narrowRuns(b, r, FACING)
    .runs.flatMap((run) => bySides(b, settled(b, run)))
    .filter((run) => run.balls.some((ball) => ball.facing < ABREAST))
    .map((run) => part(b, run, widest / 2));
}

/** The edge in pieces of one length, at most `most` mm, so that what lies near a piece is not most of the drawing. */
function shortened(e: Edge, most: number): Edge[] {
  const n = Math.ceil(edgeLength(e) / most);
  if (n <= 1) return [e];
  const half = e.r === 0 ? 0 : edgeLength(e) / Math.abs(e.r) / 2;
  const end = parameterEnd(e);
  const out: Edge[] = [];
  let rest = [e.x0, e.y0] as const;
  for (let k = 1; k <= n; k++) {
    const to =
      k === n ? ([e.x1, e.y1] as const) : pointAt(e, e.r === 0 ? (end * k) / n : tan((half * k) / n));
    out.push(withEnds(e, rest[0], rest[1], to[0], to[1]));
    rest = to;
  }
  return out;
}

/**
 * A contact at the end of an edge may be numbered as the start of the next one in the list; where that begins another
 * contour, it is numbered a hair before.
 */
function settled(b: Boundary, { balls, closed }: Run): Run {
  const own = (place: number, x: number, y: number): number => {
    const k = Math.floor(place);
    if (k !== place) return place;
    const e = b.edges[k];
    return e && Math.abs(e.x0 - x) + Math.abs(e.y0 - y) < 1e-6 ? place : place - 1e-9;
  };
  return {
    balls: balls.map((ball) => ({
      ...ball,
      p: own(ball.p, ball.px, ball.py),
      q: own(ball.q, ball.qx, ball.qy),
    })),
    closed,
  };
}

function sidesOf(b: Boundary, { p, q }: Ball): [number, number] {
  return [b.home[Math.floor(p)]!, b.home[Math.floor(q)]!];
}

/** A run cut where it comes to lie between other contours: there one wall ends and the next begins. */
function bySides(b: Boundary, { balls, closed }: Run): Run[] {
  const same = (x: Ball, y: Ball): boolean => {
    const [p, q, u, v] = [...sidesOf(b, x), ...sidesOf(b, y)];
    return (p === u && q === v) || (p === v && q === u);
  };
  const n = balls.length;
  const cuts = balls.flatMap((ball, i) =>
    (i > 0 || closed) && !same(balls[(i + n - 1) % n]!, ball) ? [i] : [],
  );
  if (cuts.length === 0) return [{ balls, closed }];
  // A closed run is opened at its first cut.
  const start = closed ? cuts[0]! : 0;
  const opened = [...balls.slice(start), ...balls.slice(0, start)];
  const at = [...new Set([0, ...cuts.map((c) => c - start), n])];
  return at.slice(1).map((to, k) => ({ balls: opened.slice(at[k]!, to), closed: false }));
}

function part(b: Boundary, { balls, closed }: Run, limit: number): NarrowPart {
  let least = 0;
  balls.forEach((ball, i) => {
    if (ball.w < balls[least]!.w) least = i;
  });
  // Where it grows wider than is looked at, a body follows, however small.
  const free = (ball: Ball): boolean =>
    ball.w < WIDE * limit && isFreeEnd(b, ball, tipOf(b, ball, limit).distance);
  const [first, last] = [turned([balls[0]!])[0]!, balls[balls.length - 1]!];
  const freeEnds = closed ? 0 : Number(free(first)) + Number(free(last));
  return { balls, closed, ...neck(b, balls[least]!), least, sides: sidesOf(b, balls[least]!), freeEnds };
}

/** The two sides' nearest points about the narrowest ball, if a ball between them touches nothing else. */
function neck(b: Boundary, ball: Ball): { width: number; at: readonly [number, number] } {
  const round = (x: number, y: number): number[] => {
    const box = { minX: x, maxX: x, minY: y, maxY: y };
    const reach = 0.6 * ball.w;
    return b.index.near(box, reach).filter((i) => distanceToEdge(b.edges[i]!, x, y) <= reach);
  };
  const qs = round(ball.qx, ball.qy);
  const ps = round(ball.px, ball.py).filter((i) => !qs.includes(i));
  const edges = (list: readonly number[]) => list.map((i) => b.edges[i]!);
  const near = nearestPoints(edges(ps), edges(qs.filter((i) => ps.every((j) => !neighbours(b, i, j)))));
  const sampled = { width: 2 * ball.w, at: [ball.x, ball.y] as const };
  if (!near || near.distance > 2 * ball.w || near.distance < ball.w) return sampled;
  const at = [(near.p[0] + near.q[0]) / 2, (near.p[1] + near.q[1]) / 2] as const;
  const fits = clearance(b, at[0], at[1], ball.w) > near.distance / 2 - 1e-6;
  return fits ? { width: near.distance, at } : sampled;
}

/** Whether two edges meet, one after the other on a contour. */
function neighbours(b: Boundary, i: number, j: number): boolean {
  if (b.home[i] !== b.home[j]) return false;
  const [from, to] = [b.first[b.home[i]!]!, b.first[b.home[i]! + 1]!];
  const after = (k: number): number => (k + 1 < to ? k + 1 : from);
  return after(i) === j || after(j) === i;
}

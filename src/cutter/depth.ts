import { type Edge, edgeLength, endTangent, startTangent, tangentAt } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import { type Contour, distanceToEdge, windingNumber } from '../geometry/region.js';
import { pointAlong } from './along.js';

/** A stretch of the drawn boundary that what is left does not follow: an end that was cut off, or a gap that was filled. */
export interface Depth {
  readonly side: 'limb' | 'gap';
  /** The point furthest from what is left, mm. */
  readonly at: readonly [number, number];
  /** How far that is, mm. */
  readonly depth: number;
  /** What of it a sharp corner at that point does not explain, mm. */
  readonly over: number;
}

/** Points along the drawn boundary lie this share of r apart, or so that an edge has no more than so many. */
const STEP = 0.5;
const MOST_POINTS = 64;

/** Nearer than this share of r the boundary was followed. */
const FOLLOWED = 0.5;

/** A corner is looked at this share of r to either side of its tip, so that a tip blunted by a hair is a tip. */
const TIP = 1 / 16;

/** cos(176 degrees): sides that turn by more run side by side, and have no corner between them. */
const PARALLEL = -0.9976;

/**
 * cos(172 degrees): the two sides of what was lost, where it begins and ends, make a wedge when they turn by less, as
 * the flat-ended crotch of a 4 does; by more, a slot or an arm with sides all but parallel.
 */
const SLOT = -0.9903;

/**
 * How far a drawn boundary strays from what the cutter left of it, stretch by stretch. A corner of angle a loses
 * r (1 / sin(a / 2) - 1) of its tip to a disc of radius r at any size of the drawing; `over` is what lies deeper.
 */
export function depths(drawn: readonly Contour[], left: readonly Contour[], r: number): Depth[] {
  const meter = new Meter(left);
  return drawn.flatMap((c) => strays(samples(c, r), meter, r).map((run) => measured(run, c, r)));
}

interface Sample {
  readonly x: number;
  readonly y: number;
  /** The edge it lies on, and how far from that edge's start. */
  readonly edge: number;
  readonly along: number;
}

interface Stray extends Sample {
  readonly depth: number;
  readonly side: 'limb' | 'gap';
}

function samples(c: Contour, r: number): Sample[] {
  return c.flatMap((e, edge) => {
    const length = edgeLength(e);
    const n = Math.max(1, Math.min(MOST_POINTS, Math.ceil(length / (STEP * r))));
    return Array.from({ length: n }, (_, k) => {
      const [x, y] = pointAlong(e, k / n);
      return { x, y, edge, along: (length * k) / n };
    });
  });
}

/** Runs of neighbouring samples that stray to the same side. */
function strays(all: readonly Sample[], meter: Meter, r: number): Stray[][] {
  const seen = all.map((s): Stray | null => {
    const depth = meter.distance(s.x, s.y, r * FOLLOWED);
    return depth > r * FOLLOWED ? { ...s, depth, side: meter.holds(s.x, s.y) ? 'gap' : 'limb' } : null;
  });
  const runs: Stray[][] = [];
  seen.forEach((s, i) => {
    if (!s) return;
    const before = i > 0 ? seen[i - 1] : null;
    if (before && before.side === s.side) runs[runs.length - 1]!.push(s);
    else runs.push([s]);
  });
  // A contour has no beginning.
  const [first, last] = [runs[0], runs[runs.length - 1]];
  if (runs.length > 1 && seen[0] && seen[seen.length - 1] && first![0]!.side === last![0]!.side)
    runs[0] = [...runs.pop()!, ...first!];
  return runs;
}

function measured(run: readonly Stray[], c: Contour, r: number): Depth {
  const tip = run.reduce((a, b) => (b.depth > a.depth ? b : a));
  const corner = pointLoss(
    tangentFrom(c, tip, -TIP * r),
    tangentFrom(c, tip, TIP * r),
    tip.side,
    PARALLEL,
    r,
  );
  const [first, last] = [run[0]!, run[run.length - 1]!];
  const wedge = pointLoss(tangentFrom(c, first, 0), tangentFrom(c, last, 0), tip.side, SLOT, r);
  return { side: tip.side, at: [tip.x, tip.y], depth: tip.depth, over: tip.depth - Math.max(corner, wedge) };
}

/** What a corner loses to a disc of radius r, mm, between two directions of the boundary; 0 when there is no corner. */
function pointLoss(
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  side: Depth['side'],
  parallel: number,
  r: number,
): number {
  const cos = ax * bx + ay * by;
  const convex = ax * by - ay * bx > 0;
  if (convex !== (side === 'limb') || cos < parallel) return 0;
  return r * (1 / Math.sqrt((1 + cos) / 2) - 1);
}

/** The boundary's direction a little before or behind a sample. */
function tangentFrom(c: Contour, s: Sample, by: number): [number, number] {
  let i = s.edge;
  let at = s.along + by;
  for (let n = 0; n < c.length && at < 0; n++) {
    i = (i + c.length - 1) % c.length;
    at += edgeLength(c[i]!);
  }
  for (let n = 0; n < c.length && at > edgeLength(c[i]!); n++) {
    at -= edgeLength(c[i]!);
    i = (i + 1) % c.length;
  }
  return direction(c[i]!, at);
}

function direction(e: Edge, at: number): [number, number] {
  const share = at / edgeLength(e);
  if (share <= 0) return startTangent(e);
  if (share >= 1) return endTangent(e);
  const [x, y] = pointAlong(e, share);
  return tangentAt(e, x, y);
}

/** Distances to a boundary, and which side of it a point is on. */
class Meter {
  readonly #contours: readonly Contour[];
  readonly #edges: readonly Edge[];
  readonly #index: EdgesIndex;

  constructor(contours: readonly Contour[]) {
    this.#contours = contours;
    this.#edges = contours.flat();
    this.#index = new EdgesIndex(this.#edges);
  }

  /** To the boundary, mm; looked for within `near` first. */
  distance(x: number, y: number, near: number): number {
    if (this.#edges.length === 0) return Number.POSITIVE_INFINITY;
    for (let reach = near; ; reach *= 4) {
      let best = Number.POSITIVE_INFINITY;
      const found = this.#index.near({ minX: x, minY: y, maxX: x, maxY: y }, reach);
      for (const i of found) best = Math.min(best, distanceToEdge(this.#edges[i]!, x, y));
      if (best <= reach || found.length === this.#edges.length) return best;
    }
  }

  holds(x: number, y: number): boolean {
    return windingNumber(this.#contours, x, y) > 0;
  }
}

import { nearerThan } from '../geometry/apart.js';
import { type Edge, parameterEnd, pointAt, pointParameter, tangentAt } from '../geometry/edge.js';
import type { Indexed } from '../geometry/near.js';
import { nearestPoints } from '../geometry/nearest.js';
import { TIGHT } from '../geometry/tolerances.js';
import { ballRadius } from '../geometry/touching-ball.js';

/** Part of the middle line of a gap: centres of balls that touch both sides, all smaller than the cutter's. */
export interface Middle {
  readonly points: readonly (readonly [number, number])[];
  /** Owner of the far side at each end of the stretch (both the same unless a third piece comes between). */
  readonly partner: number;
}

/** Edges of other pieces near one edge, and the piece that each belongs to. */
interface Foreign {
  readonly edges: readonly Edge[];
  readonly owners: readonly number[];
}

/** Samples per corner radius, of the boundary and of the middle line: its chords then stray under 0.001 mm where it bends at r. */
const STEPS_PER_RADIUS = 16;

/**
 * The middle line of every gap narrower than 2r between piece `self` and pieces numbered higher, of all those in
 * `neighbours` (in rising order). Balls are set against each point of the piece from outside and grown until they touch
 * another piece; their centres are points of the bisector (the medial axis of the gap). The piece must have reach r from
 * outside by itself.
 */
export function middles(
  self: number,
  bodies: readonly Indexed[],
  neighbours: readonly number[],
  r: number,
): Middle[] {
  const higher = neighbours.filter((j) => j > self);
  if (higher.length === 0) return [];
  const lower = neighbours.filter((j) => j < self);
  const out: Middle[] = [];
  let id = 0;
  for (const c of bodies[self]!.region.contours) {
    const run = new Run(self, r, out);
    for (const e of c) {
      const above = foreign(e, id, bodies[self]!, higher, bodies, 2 * r);
      // With none of those there is no gap to be told of; lower ones only hide it.
      if (above.edges.length === 0) run.finish();
      else run.along(e, both(foreign(e, id, bodies[self]!, lower, bodies, 2 * r), above));
      id++;
    }
    run.finish();
  }
  return out;
}

const NONE: Foreign = { edges: [], owners: [] };

/** Edges of some pieces nearer than d to edge `id` of a body: a ball under d / 2 that touches both spans less than d. */
function foreign(
  e: Edge,
  id: number,
  own: Indexed,
  pieces: readonly number[],
  bodies: readonly Indexed[],
  d: number,
): Foreign {
  let found: { edges: Edge[]; owners: number[] } | undefined;
  for (const j of pieces) {
    const body = bodies[j]!;
    if (!own.index.isNear(id, body.box, d)) continue;
    for (const k of body.index.nearEdge(id, d, own.index)) {
      const f = body.edges[k]!;
      if (!nearerThan(e, f, d)) continue;
      found ??= { edges: [], owners: [] };
      found.edges.push(f);
      found.owners.push(j);
    }
  }
  return found ?? NONE;
}

function both(a: Foreign, b: Foreign): Foreign {
  if (a.edges.length === 0) return b;
  return { edges: [...a.edges, ...b.edges], owners: [...a.owners, ...b.owners] };
}

/** A step between samples is halved at most so many times. */
const MOST_HALVINGS = 6;

interface Ball {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly partner: number;
}

class Run {
  readonly #self: number;
  readonly #r: number;
  readonly #out: Middle[];
  #points: (readonly [number, number])[] = [];
  #partner = -1;

  constructor(self: number, r: number, out: Middle[]) {
    this.#self = self;
    this.#r = r;
    this.#out = out;
  }

  along(e: Edge, foreign: Foreign): void {
    const at = (t: number): Ball => grow(e, t, foreign);
    let t0 = 0;
    let b0 = at(0);
    this.#add(b0);
    for (const t of sampleParameters(e, foreign, this.#r)) {
      const b = at(t);
      this.#between(at, t0, b0, t, b, MOST_HALVINGS);
      this.#add(b);
      t0 = t;
      b0 = b;
    }
  }

  /** What lies between two samples: where balls grow fast their centres lie further apart than the samples. */
  #between(at: (t: number) => Ball, t0: number, b0: Ball, t1: number, b1: Ball, halvings: number): void {
    const counts = this.#counts(b0);
    if (counts !== this.#counts(b1) || b0.partner !== b1.partner) {
      this.#step(at, t0, b0, t1);
      return;
    }
    if (!counts || halvings === 0 || near(b0, b1, this.#r / STEPS_PER_RADIUS)) return;
    const t = (t0 + t1) / 2;
    const b = at(t);
    this.#between(at, t0, b0, t, b, halvings - 1);
    this.#add(b);
    this.#between(at, t, b, t1, b1, halvings - 1);
  }

  /** Where the count or the partner changes between two samples, closes in on the change from both sides. */
  #step(at: (t: number) => Ball, t0: number, b0: Ball, t1: number): void {
    let lo = t0;
    let hi = t1;
    for (let k = 0; k < 40; k++) {
      const mid = (lo + hi) / 2;
      const b = at(mid);
      if (this.#counts(b) === this.#counts(b0) && b.partner === b0.partner) lo = mid;
      else hi = mid;
    }
    this.#add(at(lo));
    this.#add(at(hi));
  }

  #counts(b: Ball): boolean {
    return b.radius < this.#r - TIGHT && b.partner > this.#self;
  }

  #add(b: Ball): void {
    if (!this.#counts(b)) {
      this.finish();
      return;
    }
    if (this.#points.length > 0 && b.partner !== this.#partner) {
      const last = this.#points[this.#points.length - 1]!;
      this.finish();
      // The middle line goes on towards another piece from the same point.
      this.#points.push(last);
    }
    this.#partner = b.partner;
    this.#points.push([b.x, b.y]);
  }

  finish(): void {
    if (this.#points.length > 0) this.#out.push({ points: this.#points, partner: this.#partner });
    this.#points = [];
  }
}

function near(a: Ball, b: Ball, most: number): boolean {
  return (a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y) <= most * most;
}

function sampleParameters(e: Edge, foreign: Foreign, r: number): number[] {
  const end = parameterEnd(e);
  const length = e.r === 0 ? end : Math.abs(e.r) * 2 * end;
  const n = Math.max(1, Math.ceil((length * STEPS_PER_RADIUS) / r));
  const out: number[] = [];
  for (let k = 1; k <= n; k++) out.push((end * k) / n);
  // Gaps shorter than a step show at the nearest point.
  for (const f of foreign.edges) {
    const n = nearestPoints([e], [f])!;
    if (n.distance >= 2 * r) continue;
    const t = pointParameter(e, n.p[0], n.p[1]);
    if (t > 0 && t < end) out.push(t);
  }
  return out.sort((s, t) => s - t);
}

/** The ball outside (right of) the edge at a parameter, grown until it touches a foreign edge. */
function grow(e: Edge, t: number, { edges, owners }: Foreign): Ball {
  const [x, y] = pointAt(e, t);
  const [tx, ty] = tangentAt(e, x, y);
  const nx = ty;
  const ny = -tx;
  let radius = Number.POSITIVE_INFINITY;
  let partner = -1;
  for (let k = 0; k < edges.length; k++) {
    const rho = ballRadius(x, y, nx, ny, edges[k]!);
    if (rho < radius) {
      radius = rho;
      partner = owners[k]!;
    }
  }
  const k = Number.isFinite(radius) ? radius : 0;
  return { x: x + nx * k, y: y + ny * k, radius, partner };
}

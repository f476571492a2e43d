import { surelyApart } from '../geometry/apart.js';
import { type Edge, parameterEnd, pointAt, pointParameter, tangentAt } from '../geometry/edge.js';
import type { EdgesIndex } from '../geometry/edges-index.js';
import { nearestPoints } from '../geometry/nearest.js';
import { type Contour, edgeBox } from '../geometry/region.js';
import { TIGHT } from '../geometry/tolerances.js';
import { ballRadius } from '../geometry/touching-ball.js';

/** Part of the middle line of a gap: centres of balls that touch both sides, all smaller than the cutter's. */
export interface Middle {
  readonly points: readonly (readonly [number, number])[];
  /** Owner of the far side at each end of the stretch (both the same unless a third piece comes between). */
  readonly partner: number;
}

/** Foreign edges with the piece each belongs to, and an index over them. */
export interface Surroundings {
  readonly edges: readonly Edge[];
  readonly owner: Int32Array;
  readonly index: EdgesIndex;
}

/** Samples per corner radius, of the boundary and of the middle line: its chords then stray under 0.001 mm where it bends at r. */
const STEPS_PER_RADIUS = 16;

/**
 * The middle line of every gap narrower than 2r between piece `self` and pieces numbered higher. Balls are set against
 * each point of the piece from outside and grown until they touch another piece; their centres are points of the
 * bisector (the medial axis of the gap). The piece must have reach r from outside by itself.
 */
export function middles(
  contours: readonly Contour[],
  self: number,
  around: Surroundings,
  r: number,
): Middle[] {
  const out: Middle[] = [];
  for (const c of contours) {
    const run = new Run(self, r, out);
    for (const e of c) {
      // A ball under r that touches both spans less than 2r.
      const foreign = around.index.near(edgeBox(e), 2 * r).filter((j) => {
        if (around.owner[j] === self || surelyApart(e, around.edges[j]!, 2 * r)) return false;
        return nearestPoints([e], [around.edges[j]!])!.distance < 2 * r;
      });
      run.along(e, foreign, around);
    }
    run.finish();
  }
  return out;
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

  along(e: Edge, foreign: readonly number[], around: Surroundings): void {
    if (foreign.length === 0) {
      this.finish();
      return;
    }
    const at = (t: number): Ball => grow(e, t, foreign, around);
    let t0 = 0;
    let b0 = at(0);
    this.#add(b0);
    for (const t of sampleParameters(e, foreign, around, this.#r)) {
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

function sampleParameters(e: Edge, foreign: readonly number[], around: Surroundings, r: number): number[] {
  const end = parameterEnd(e);
  const length = e.r === 0 ? end : Math.abs(e.r) * 2 * end;
  const n = Math.max(1, Math.ceil((length * STEPS_PER_RADIUS) / r));
  const out: number[] = [];
  for (let k = 1; k <= n; k++) out.push((end * k) / n);
  // Gaps shorter than a step show at the nearest point.
  for (const j of foreign) {
    const n = nearestPoints([e], [around.edges[j]!]);
    if (!n || n.distance >= 2 * r) continue;
    const t = pointParameter(e, n.p[0], n.p[1]);
    if (t > 0 && t < end) out.push(t);
  }
  return out.sort((s, t) => s - t);
}

/** The ball outside (right of) the edge at a parameter, grown until it touches a foreign edge. */
function grow(e: Edge, t: number, foreign: readonly number[], around: Surroundings): Ball {
  const [x, y] = pointAt(e, t);
  const [tx, ty] = tangentAt(e, x, y);
  const nx = ty;
  const ny = -tx;
  let radius = Number.POSITIVE_INFINITY;
  let partner = -1;
  for (const j of foreign) {
    const rho = ballRadius(x, y, nx, ny, around.edges[j]!);
    if (rho < radius) {
      radius = rho;
      partner = around.owner[j]!;
    }
  }
  const k = Number.isFinite(radius) ? radius : 0;
  return { x: x + nx * k, y: y + ny * k, radius, partner };
}

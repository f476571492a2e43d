import { type Edge, edgeLength, parameterEnd, part, pointAt, tangentAt } from '../../../geometry/edge.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { tan } from '../../../geometry/trig.js';
import { firstHit } from './ray.js';
import type { Stretch, Sweep } from './sweep.js';

/**
 * The width is looked at every so many mm along the wall; a narrower dip between two places is not seen. In slots, where
 * the cutter's whole width is met, more rarely: the cutter that would come up to the wall between clears more than that.
 */
const STEP = 0.4;
const IN_SLOTS = 1.2;

/** Ends of stretches are found to this, mm along the wall. */
const SURE = 0.001;

/** A stretch of wall beside which more than some width stands. Lengths mm. */
export interface Engaged {
  /** With the waste on its left. */
  readonly edges: readonly Edge[];
  readonly length: number;
  /** The widest place, and how wide what stands there is. */
  readonly at: readonly [number, number];
  readonly width: number;
}

/** A place on a chain of edges: which of them, how far along it (mm), and what stands there. */
interface Place {
  readonly k: number;
  readonly s: number;
  readonly width: number;
  readonly at: readonly [number, number];
}

/**
 * Stretches of wall beside which more than `over` stands when the roughing cutter has been. What stands is measured
 * straight off the wall until what has been cleared begins, at most `most` (mm): the width of the finishing cutter.
 */
export function engagedAlong({ edge, missed }: Sweep, over: number, most: number): Engaged[] {
  const cleared = edge.flat();
  const index = new EdgesIndex(cleared);
  const width = (e: Edge, x: number, y: number): number => {
    const [tx, ty] = tangentAt(e, x, y);
    const [u, v] = [x - ty * most, y + tx * most];
    const box = { minX: Math.min(x, u), minY: Math.min(y, v), maxX: Math.max(x, u), maxY: Math.max(y, v) };
    let least = most;
    for (const j of index.near(box, 0)) least = Math.min(least, firstHit(x, y, -ty, tx, cleared[j]!));
    return least;
  };
  return missed.flatMap((stretch) => new Along(stretch, most, width).over(over));
}

class Along {
  readonly #edges: readonly Edge[];
  readonly #closed: boolean;
  readonly #most: number;
  readonly #width: (e: Edge, x: number, y: number) => number;

  constructor({ edges, closed }: Stretch, most: number, width: (e: Edge, x: number, y: number) => number) {
    this.#edges = edges;
    this.#closed = closed;
    this.#most = most;
    this.#width = width;
  }

  over(least: number): Engaged[] {
    const places = this.#places();
    const runs: Place[][] = [];
    let run: Place[] | null = null;
    places.forEach((p, i) => {
      const before = places[i - 1];
      if (p.width > least) {
        if (!run) {
          run = before ? [this.#edgeOf(before, p, least)] : [];
          runs.push(run);
        }
        run.push(p);
      } else if (run) {
        run.push(this.#edgeOf(p, before!, least));
        run = null;
      }
    });
    const first = runs[0];
    const last = runs.at(-1);
    // A run over the seam of a closed contour is one.
    if (this.#closed && runs.length > 1 && first![0] === places[0] && last!.at(-1) === places.at(-1))
      runs.splice(0, runs.length, [...last!, ...first!], ...runs.slice(1, -1));
    return runs.map((r) => this.#engaged(r)).filter((e) => e.length > SURE);
  }

  /** Every edge from its start, at steps, to its end. */
  #places(): Place[] {
    return this.#edges.flatMap((e, k) => {
      const length = edgeLength(e);
      const n = Math.max(1, Math.ceil(length / IN_SLOTS));
      const out = [this.#place(k, 0)];
      for (let i = 1; i <= n; i++) {
        const next = this.#place(k, (length * i) / n);
        this.#between(out.at(-1)!, next, out);
        out.push(next);
      }
      return out;
    });
  }

  #between(p: Place, q: Place, out: Place[]): void {
    if (p.width >= this.#most && q.width >= this.#most) return;
    const n = Math.ceil((q.s - p.s) / STEP - 1e-9);
    for (let i = 1; i < n; i++) out.push(this.#place(p.k, p.s + ((q.s - p.s) * i) / n));
  }

  #place(k: number, s: number): Place {
    const e = this.#edges[k]!;
    const at = pointAt(e, parameter(e, s));
    return { k, s, at, width: this.#width(e, at[0], at[1]) };
  }

  /** The place where the width passes the limit, between one under it and one over it. */
  #edgeOf(under: Place, over: Place, least: number): Place {
    if (under.k !== over.k) return over;
    let [a, b] = [under, over];
    while (Math.abs(a.s - b.s) > SURE) {
      const middle = this.#place(a.k, (a.s + b.s) / 2);
      if (middle.width > least) b = middle;
      else a = middle;
    }
    return b;
  }

  #engaged(run: readonly Place[]): Engaged {
    const edges: Edge[] = [];
    for (let i = 1, from = run[0]!; i < run.length; i++) {
      const [before, p] = [run[i - 1]!, run[i]!];
      if (before.k !== p.k || p.s < before.s) from = p;
      const goesOn = run[i + 1]?.k === p.k && run[i + 1]!.s > p.s;
      if (!goesOn && p.s > from.s) {
        const e = this.#edges[p.k]!;
        edges.push(part(e, parameter(e, from.s), parameter(e, p.s)));
      }
    }
    const most = run.reduce((w, p) => Math.max(w, p.width), 0);
    // In a slot it is as wide for long: the middle of that.
    const widestOf = run.filter((p) => p.width > most - 1e-6);
    const widest = widestOf[widestOf.length >> 1]!;
    return {
      edges,
      length: edges.reduce((sum, e) => sum + edgeLength(e), 0),
      at: widest.at,
      width: widest.width,
    };
  }
}

/** The parameter of the point s mm along an edge. */
function parameter(e: Edge, s: number): number {
  if (e.r === 0) return Math.min(s, parameterEnd(e));
  return Math.min(tan(s / Math.abs(2 * e.r)), parameterEnd(e));
}

import { type Edge, edgeLength, parameterEnd, pointAt, reversed } from '../../../geometry/edge.js';
import { atan2 } from '../../../geometry/trig.js';
import { moved, type Stretch } from './chain.js';
import { Points } from './points.js';

/** How far from a corner the lines that leave it are told apart, mm, at the most. */
const PROBE = 0.05;

/** A stretch as it leaves a corner: number 2k along the k-th stretch, 2k + 1 against it. */
export type Way = number;

/** Stretches as a graph: corners, and the ways that leave each. */
export class Graph {
  readonly stretches: readonly Stretch[];
  /** Where each way starts. */
  readonly from: number[];
  /** The ways that leave each corner. */
  readonly leaving: Way[][];

  constructor(stretches: readonly Stretch[]) {
    const points = new Points();
    this.from = stretches.flatMap(({ edge: e }) => [points.at(e.x0, e.y0), points.at(e.x1, e.y1)]);
    this.leaving = points.xs.map(() => []);
    this.from.forEach((n, w) => {
      this.leaving[n]!.push(w);
    });
    const { xs, ys } = points;
    this.stretches = stretches.map((s, k) => {
      const [a, b] = [this.from[2 * k]!, this.from[2 * k + 1]!];
      return { ...s, edge: moved(s.edge, xs[a]!, ys[a]!, xs[b]!, ys[b]!) };
    });
  }

  to(way: Way): number {
    return this.from[way ^ 1]!;
  }

  edge(way: Way): Edge {
    const { edge } = this.stretches[way >> 1]!;
    return way % 2 === 0 ? edge : reversed(edge);
  }

  stretch(way: Way): Stretch {
    return { ...this.stretches[way >> 1]!, edge: this.edge(way) };
  }

  /** Ways by the corners they hang together by: each list holds the numbers of stretches. */
  components(): number[][] {
    const done = new Array<boolean>(this.stretches.length).fill(false);
    const out: number[][] = [];
    for (let first = 0; first < done.length; first++) {
      if (done[first]) continue;
      done[first] = true;
      const list = [first];
      for (let at = 0; at < list.length; at++)
        for (const way of [2 * list[at]!, 2 * list[at]! + 1])
          for (const next of this.leaving[this.from[way]!]!)
            if (!done[next >> 1]) {
              done[next >> 1] = true;
              list.push(next >> 1);
            }
      out.push(list.sort((a, b) => a - b));
    }
    return out;
  }

  /** The ways that leave a corner, counter-clockwise. Lines that leave it tangentially are told apart a little way on. */
  around(corner: number): Way[] {
    const ways = this.leaving[corner]!;
    const edges = ways.map((w) => this.edge(w));
    const reach = edges.reduce((least, e) => Math.min(least, edgeLength(e) / 4), PROBE);
    const angles = edges.map((e) => {
      const [x, y] = pointAt(e, parameterEnd(e) * (reach / edgeLength(e)));
      return atan2(y - e.y0, x - e.x0);
    });
    const order = ways.map((_, i) => i).sort((a, b) => angles[a]! - angles[b]! || a - b);
    return order.map((i) => ways[i]!);
  }
}

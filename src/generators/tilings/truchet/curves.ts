import { chained, closedChain } from '../../../geometry/chain.js';
import { type Edge, reversed } from '../../../geometry/edge.js';

/** A curve of edges end to end. */
export interface Curve {
  readonly edges: readonly Edge[];
  readonly closed: boolean;
}

/** Joins edges that share ends into curves; no more than two share an end. Ends nearer than `apart` mm are one. */
export function joinCurves(edges: readonly Edge[], apart: number): Curve[] {
  const key = (x: number, y: number): string => `${Math.round(x / apart)},${Math.round(y / apart)}`;
  const at = new Map<string, number[]>();
  const ends = edges.map((e): [string, string] => [key(e.x0, e.y0), key(e.x1, e.y1)]);
  ends.forEach((pair, i) => {
    for (const k of pair) at.set(k, [...(at.get(k) ?? []), i]);
  });
  const used = new Set<number>();
  /** Follows the curve from an end of an edge that is used already. */
  const follow = (from: string): Edge[] => {
    const out: Edge[] = [];
    let here = from;
    for (;;) {
      const next = at.get(here)!.find((i) => !used.has(i));
      if (next === undefined) return out;
      used.add(next);
      const forward = ends[next]![0] === here;
      out.push(forward ? edges[next]! : reversed(edges[next]!));
      here = ends[next]![forward ? 1 : 0];
    }
  };
  const curves: Curve[] = [];
  edges.forEach((e, i) => {
    if (used.has(i)) return;
    used.add(i);
    const ahead = [e, ...follow(ends[i]![1])];
    const behind = follow(ends[i]![0]);
    const all = [...behind.map(reversed).reverse(), ...ahead];
    const first = all[0]!;
    const last = all[all.length - 1]!;
    const closed = key(first.x0, first.y0) === key(last.x1, last.y1);
    curves.push({ edges: closed ? closedChain(all) : chained(all), closed });
  });
  return curves;
}

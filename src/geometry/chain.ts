import { type Edge, line, withEnds } from './edge.js';
import { SAME_POINT } from './tolerances.js';

/** The edges of a chain made to meet to the last bit, each ending where the next starts; the last is left as it is. */
export function chained(edges: readonly Edge[]): Edge[] {
  return edges.map((e, i) => {
    const next = edges[i + 1];
    return next ? withEnds(e, e.x0, e.y0, next.x0, next.y0) : e;
  });
}

/** The same for a chain that closes: the last ends where the first starts. */
export function closedChain(edges: readonly Edge[]): Edge[] {
  return edges.map((e, i) => {
    const next = edges[i + 1] ?? edges[0]!;
    return withEnds(e, e.x0, e.y0, next.x0, next.y0);
  });
}

/** The edges, of which all but the last meet already, with that end moved to a point. */
export function endingAt(edges: readonly Edge[], x: number, y: number): Edge[] {
  return edges.map((e, i) => (i === edges.length - 1 ? withEnds(e, e.x0, e.y0, x, y) : e));
}

/** A chain with both its ends moved to where its neighbours' are, which differ by rounding; a line where it has no edge. */
export function chainBetween(
  edges: readonly Edge[],
  at: readonly [number, number],
  to: readonly [number, number],
): Edge[] {
  if (edges.length === 0)
    return Math.abs(to[0] - at[0]) + Math.abs(to[1] - at[1]) < SAME_POINT
      ? []
      : [line(at[0], at[1], to[0], to[1])];
  return endingAt(edges, to[0], to[1]).map((e, i) => (i === 0 ? withEnds(e, at[0], at[1], e.x1, e.y1) : e));
}

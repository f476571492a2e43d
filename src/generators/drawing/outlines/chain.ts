import { bulge, bulged, type Edge, line } from '../../../geometry/edge.js';

/** Where in the file something was drawn. */
export interface Origin {
  /** As messages name it: `LINE`, `<path id="wing">`. */
  readonly name: string;
  /** The name of a piece that comes of it. */
  readonly piece: string;
  readonly line: number;
}

/** An edge, mm, with where it comes from. */
export interface Stretch {
  readonly edge: Edge;
  readonly origin: Origin;
  /** Is it part of a chain of arcs along a curve? Such edges are as good as they get: they are not refitted. */
  readonly curve: boolean;
}

/** Edges that follow each other, as one entity draws them. */
export interface Chain {
  readonly stretches: readonly Stretch[];
  /** Does its last edge end, to the last bit, where the first starts? */
  readonly closed: boolean;
}

/** The edge with its ends elsewhere, a little way off: an arc keeps its sweep. */
export function moved(e: Edge, x0: number, y0: number, x1: number, y1: number): Edge {
  if (e.x0 === x0 && e.y0 === y0 && e.x1 === x1 && e.y1 === y1) return e;
  return e.r === 0 ? line(x0, y0, x1, y1) : bulged(x0, y0, x1, y1, bulge(e));
}

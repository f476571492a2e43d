import { EdgesIndex } from '../../geometry/edges-index.js';
import type { Contour } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';

/** Pairs of edges that may cross: this many in all, and some more for each edge, which always meets its neighbours. */
const MOST_PAIRS = 100_000;
const PAIRS_AN_EDGE = 4;

/** Refuses lines that cross each other so often that to follow them all would take minutes: a scribble, not a figure. */
export function refuseTangle(contours: readonly Contour[]): void {
  const edges = contours.flat();
  const index = new EdgesIndex(edges);
  let left = MOST_PAIRS + PAIRS_AN_EDGE * edges.length;
  edges.forEach((_, i) => {
    for (const j of index.nearEdge(i, 0)) if (j > i) left--;
    if (left < 0)
      throw new Refusal(
        'too-large',
        "the drawing's lines cross each other too often to be followed; take some out, or join its shapes into one",
      );
  });
}

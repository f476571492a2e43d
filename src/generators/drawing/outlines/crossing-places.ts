import { crossings } from '../../../geometry/crossings.js';
import type { Edge } from '../../../geometry/edge.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { Refusal } from '../../../schema/fault.js';
import { ONE_POINT } from './points.js';
import type { Repairs } from './repair.js';

/** To resolve crossings, each is looked at from afar, across up to all edges: so many such looks take seconds. */
const MOST_LOOKS = 5e7;

/** Tells where edges cross each other, away from the ends of both. Throws Refusal for too many places to resolve. */
export function tellCrossings(edges: readonly Edge[], repairs: Repairs): void {
  const index = new EdgesIndex(edges);
  let left = MOST_LOOKS / Math.max(1, edges.length);
  edges.forEach((e, i) => {
    for (const j of index.nearEdge(i, 0)) {
      if (j <= i) continue;
      const f = edges[j]!;
      crossings(e, f, (x, y) => {
        if (atEnd(e, x, y) || atEnd(f, x, y)) return;
        repairs.add('crossing', [x, y], 0);
        if (--left < 0)
          throw new Refusal(
            'too-large',
            "the drawing's outlines cross each other at too many places to be followed; draw them apart",
          );
      });
    }
  });
}

function atEnd(e: Edge, x: number, y: number): boolean {
  const near = (px: number, py: number): boolean => Math.abs(px - x) + Math.abs(py - y) < 10 * ONE_POINT;
  return near(e.x0, e.y0) || near(e.x1, e.y1);
}

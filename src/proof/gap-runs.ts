import { pointAlong } from './distance.js';
import type { Drawing } from './drawing.js';
import { STRIDE } from './edge-index.js';
import { halfChord, sweepOf } from './nesting.js';
import { Wall } from './wall.js';

/** First look round a block of edges, mm; a look that finds nothing doubles. */
const FIRST_LOOK = 0.25;

/** A short piece of the plug's boundary and the gap at its middle, mm, negative where it overlaps the pocket's boundary. */
export interface GapRun {
  readonly from: readonly [number, number];
  readonly middle: readonly [number, number];
  readonly to: readonly [number, number];
  readonly gap: number;
}

/** The gap along the whole of the plug's boundary, for a picture: pieces of about `step` mm, never more than `most` of them. */
export function gapRuns(pocket: Drawing, plug: Drawing, step: number, most = 20_000): GapRun[] {
  if (pocket.index.tree === null || plug.index.tree === null) return [];
  const { edges, index } = plug;
  const wall = new Wall(pocket, 1, plug);
  let length = 0;
  for (let i = 0; i < edges.count; i++) length += lengthOf(plug, i);
  const each = Math.max(step, length / Math.max(1, most - edges.count));
  const out: GapRun[] = [];
  const { blocks, blockBoxes, boxes } = index;
  for (let k = 0; k + 1 < blocks.length; k++) {
    for (let i = blocks[k]!; i < blocks[k + 1]!; i++) {
      const pieces = Math.max(1, Math.round(lengthOf(plug, i) / each));
      for (let m = 0; m < pieces; m++) {
        const at = (s: number): [number, number] => pointAlong(index.pieces, i * STRIDE, s / pieces);
        const middle = at(m + 0.5);
        wall.approach(blockBoxes, 4 * k, FIRST_LOOK);
        wall.look(boxes, 4 * i);
        out.push({ from: at(m), middle, to: at(m + 1), gap: wall.signed(middle[0], middle[1]) });
      }
    }
  }
  return out;
}

function lengthOf({ edges }: Drawing, i: number): number {
  const r = Math.abs(edges.r[i]!);
  return r === 0 ? 2 * halfChord(edges, i) : r * sweepOf(edges, i);
}

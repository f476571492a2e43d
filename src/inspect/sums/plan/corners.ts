import type { Pair } from '../../../fit/pair.js';
import { type Edge, sweep } from '../../../geometry/edge.js';
import { laid, type Part } from '../reach/reach.js';

/** One arc that the cutter goes round with the wall outside its turn. Lies as the pocket does. */
export interface InsideArc {
  readonly edge: Edge;
  /** Radius that the cutter's middle turns on: the wall's less the cutter's, mm. */
  readonly turn: number;
  /** Length of the middle's path along it, mm. */
  readonly path: number;
}

/** A straight line of a contour, or an arc that the cutter goes round on its outside, ends a run. */
export type Run = readonly InsideArc[];

/**
 * The inside corners of a part, contour by contour, neighbours together: arcs that turn left in the pocket, where the
 * cutter is within, and right on the plug, where it is without. `radius` of the cutter, mm; only arcs on which its
 * middle turns for which `holds` are taken.
 */
export function insideRuns(
  pair: Pair,
  part: Part,
  radius: number,
  holds: (turn: number) => boolean = () => true,
): Run[] {
  const sense = part === 'pocket' ? 1 : -1;
  const out: InsideArc[][] = [];
  for (const contour of laid(pair, part).contours) {
    const arcs = contour.map((edge): InsideArc | null => {
      if (edge.r * sense <= 0) return null;
      const turn = Math.max(0, edge.r * sense - radius);
      return holds(turn) ? { edge, turn, path: turn * sweep(edge) } : null;
    });
    // From a place where a run ends, so that none is cut in two by where its contour happens to begin.
    const start = arcs.indexOf(null) + 1;
    let run: InsideArc[] = [];
    for (let k = 0; k < arcs.length; k++) {
      const arc = arcs[(start + k) % arcs.length]!;
      if (arc) run.push(arc);
      else if (run.length > 0) {
        out.push(run);
        run = [];
      }
    }
    if (run.length > 0) out.push(run);
  }
  return out;
}

/** The tightest arc of a part; null where it has no inside corner at all. */
export function tightest(runs: readonly Run[]): InsideArc | null {
  return runs.flat().reduce<InsideArc | null>((a, b) => (a && a.turn <= b.turn ? a : b), null);
}

import type { Box } from '../../geometry/region.js';

/**
 * What is hard about a pattern: the tightest corner that the cutter turns in the pocket (a convex corner of the pattern)
 * and round the plug (a concave one), the thinnest wall of field and the thinnest limb of plug, the longest straight run.
 */
export type SpotKind = 'pocket-corner' | 'plug-corner' | 'wall' | 'limb' | 'run';

/** One place where a spot is found, mm on the piece. */
export interface Place {
  readonly at: readonly [number, number];
  /** What must stay as it is for the place to be as hard as it is. */
  readonly box: Box;
}

/** The hardest spot of its kind; as a rule there are several places as hard. */
export interface Spot {
  readonly kind: SpotKind;
  /** Corners: radius; wall and limb: thickness; run: length. mm. */
  readonly size: number;
  /** Corners: by how much the boundary turns there, radians: a tip turns by nearly half a turn. Else 0. */
  readonly turn: number;
  readonly places: readonly Place[];
}

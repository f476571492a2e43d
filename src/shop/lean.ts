import { deflection, type Rod } from './cantilever.js';
import { atLeastZero, inRange, overZero } from './range.js';

/**
 * Walls that lean because a slim cutter is pushed aside.
 *
 * The wood pushes the cutter away from the wall it cuts, most at the tip. In the pocket the cutter stands inside: its
 * walls come inwards with depth, so the pocket narrows towards its floor. Round the plug it stands outside: the plug
 * thickens with depth, towards the foot of the cut. Both by about the cutter's deflection there, each wall for itself.
 * This is what one finishing pass at full depth leaves; a second pass over the same line takes some of it off.
 *
 * Worked example. Carbide, 3.175 mm, fluted all along its 20 mm of stickout, 10 N, 8 mm deep: bends as a rod of
 * 2.54 mm, I = 2.043 mm4; at the tip 0.0225 mm, 8 mm higher 0.0097 mm. So a wall leans 0.0128 mm in 8 mm, 0.0016
 * radians. Of a clearance of 0.08 mm there stays, plug 8 mm high and down on the floor:
 *
 *   face up (as cut; the plug's thick foot meets the pocket's narrow floor: the leans wedge)
 *     at the mouth 0.08 - 2 x 0.0097 = 0.0606,  at the foot 0.08 - 2 x 0.0225 = 0.0350
 *   face down (turned over, or on a carrier; thick foot at the mouth, slim face on the floor: the leans nest)
 *     at both      0.08 - 0.0097 - 0.0225 = 0.0478
 */

/** One wall as cut. */
export interface Wall {
  /** Off its line at the top of the cut and at its foot, mm, always into the waste. */
  readonly top: number;
  readonly foot: number;
  /** Foot less top, mm, and that over the depth: radians (small angle). */
  readonly lean: number;
  readonly angle: number;
}

/** One cut: which cutter, the side force of its finishing pass (N), how deep (mm). */
export interface SideCut {
  readonly rod: Rod;
  readonly force: number;
  readonly depth: number;
}

/** How far a wall leans. Estimate, see above. BadInput for a cut deeper than the stickout. */
export function wallLean(cut: SideCut): Wall {
  check('depth', cut);
  const top = offLine(cut, 0);
  const foot = offLine(cut, cut.depth);
  return { top, foot, lean: foot - top, angle: (foot - top) / cut.depth };
}

export interface LeanFit {
  readonly pocket: SideCut;
  /** Its depth is the height of the plug's cut wall: on a carrier with the saw room, on a loose plug its thickness. */
  readonly plug: SideCut;
  /** Face up as it was cut, or face down: turned over, or on a carrier. */
  readonly face: 'up' | 'down';
  /** How much of the plug stands in the pocket: pocket depth - glue gap, mm. */
  readonly engaged: number;
  /** Per side, as drawn, mm. */
  readonly clearance: number;
}

export interface LeanGap {
  /** Clearance per side left at the pocket's mouth and at the low end of the plug, mm; negative where wood overlaps. */
  readonly mouth: number;
  readonly foot: number;
  /** The lesser: nowhere between is there less. */
  readonly least: number;
  readonly leans: 'wedge' | 'nest';
}

/**
 * What the leans leave of the clearance. Estimate. At depth z of the pocket the gap is clearance - pocket's wall at z -
 * plug's wall at s, with s measured from the top of the plug's cut: face up s = z + (height - engaged), as its foot is
 * down; face down s = engaged - z, as its top is down. Both walls' curves are convex, so the gap is least at an end.
 * BadInput for a cut deeper than its stickout, or a plug or pocket shorter than what is engaged.
 */
export function leanGap(fit: LeanFit): LeanGap {
  const { pocket, plug, face, engaged, clearance } = fit;
  check('pocket.depth', pocket);
  check('plug.depth', plug);
  overZero('engaged', engaged, 'mm');
  inRange('engaged', engaged, { min: 0, max: Math.min(pocket.depth, plug.depth), unit: 'mm' });
  const gap = (z: number): number => {
    const s = face === 'up' ? plug.depth - engaged + z : engaged - z;
    return clearance - offLine(pocket, z) - offLine(plug, s);
  };
  const mouth = gap(0);
  const foot = gap(engaged);
  return { mouth, foot, least: Math.min(mouth, foot), leans: face === 'up' ? 'wedge' : 'nest' };
}

/** How far off its line a wall is, `down` mm below the top of the cut. */
function offLine({ rod, force, depth }: SideCut, down: number): number {
  // A depth put together from others may miss its end by a last digit.
  return deflection(rod, force, Math.max(0, depth - down));
}

function check(where: string, { rod, force, depth }: SideCut): void {
  overZero(where, depth, 'mm');
  inRange(where, depth, { min: 0, max: rod.stickout, unit: 'mm' });
  inRange('force', force, atLeastZero('N'));
}

import { Undecided } from './fault.js';
import { inset } from './inset.js';
import { EMPTY, type Region, reversedContour } from './region.js';
import { chains } from './roll.js';
import { GRAZE, GRAZE_STEP, HAIR } from './tolerances.js';

/**
 * The region grown by d mm (shrunk when d is negative) with a disc: dilation or erosion, corners that open get arcs.
 * Exact on lines and arcs. Needs a sound region.
 */
export function offset(region: Region, d: number): Region {
  if (d === 0 || region.contours.length === 0) return region;
  const grown = d > 0;
  const contours = grown ? region.contours.map(reversedContour) : region.contours;
  let graze = GRAZE;
  for (let attempt = 0; attempt < 5; attempt++) {
    const moved = inset(contours, Math.abs(d) + attempt * HAIR, false, graze);
    graze *= GRAZE_STEP;
    if (!moved) continue;
    const loops = chains(
      moved.stretches.map((s) => s.edge),
      moved.next,
    );
    return loops.length === 0 ? EMPTY : { contours: grown ? loops.map(reversedContour) : loops };
  }
  throw new Undecided('offset found no consistent boundary');
}

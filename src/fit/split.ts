import type { Safe } from '../cutter/safe.js';
import { type Edge, withEnds } from '../geometry/edge.js';
import { movedLeft } from '../geometry/inset.js';
import type { Contour, Region } from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import type { FitSetup } from '../recipe/recipe.js';
import type { Pair } from './pair.js';

/**
 * Pocket and plug of a safe region: one even gap of the clearance all round, taken from the plug, from the pocket, or
 * half from each. A plug that goes in face down, as one on a carrier does, is mirrored (x -> -x).
 */
export function makePair(safe: Safe, fit: Pick<FitSetup, 'clearance' | 'from' | 'face'>): Pair {
  const fromPlug = fit.from === 'plug' ? fit.clearance : fit.from === 'both' ? fit.clearance / 2 : 0;
  const pocket = parallel(safe.region, fromPlug - fit.clearance);
  const plug = parallel(safe.region, fromPlug);
  const mirrored = fit.face === 'down';
  return { pocket, plug: mirrored ? mirrorX(plug) : plug, mirrored };
}

/**
 * The region with every boundary moved inwards by d mm (outwards when negative). Needs reach over |d| on both sides, as
 * a safe region has: then no two moved edges meet, joints stay tangent, and nothing needs trimming.
 */
function parallel(region: Region, d: number): Region {
  if (d === 0) return region;
  return { contours: region.contours.map((c) => parallelContour(c, d)) };
}

function parallelContour(contour: Contour, d: number): Contour {
  const moved = contour.map((e): Edge => {
    const m = movedLeft(e, d);
    if (!m) throw new Error(`an arc of radius ${Math.abs(e.r)} mm cannot give up ${d} mm`);
    return m;
  });
  return moved.map((e, i) => {
    const before = moved[(i + moved.length - 1) % moved.length]!;
    return withEnds(e, before.x1, before.y1, e.x1, e.y1);
  });
}

import { plugHeight, type Recipe } from '../../recipe/recipe.js';
import { YOUNGS } from '../../shop/cantilever.js';
import { type LeanGap, leanGap, type SideCut, type Wall, wallLean } from '../../shop/lean.js';

export interface LeanSum extends LeanGap {
  readonly pocket: Wall;
  readonly plug: Wall;
  /** Side force assumed, N. */
  readonly force: number;
}

/**
 * How the walls of both parts lean, and what that leaves of the clearance, mm. Estimate. Assumed, since the recipe does
 * not say: a carbide cutter, fluted all along what stands out of the collet, which is the flute length; one finishing
 * pass at full depth with `machine.sideForce` at the tip.
 */
export function leanSum(recipe: Recipe): LeanSum {
  const { cutter, depth, fit, machine } = recipe;
  const height = plugHeight(recipe);
  const stickout = Math.max(cutter.flute, depth, height);
  const rod = {
    diameter: cutter.diameter,
    flute: stickout,
    shank: cutter.diameter,
    stickout,
    youngs: YOUNGS.carbide,
  };
  const cut = (deep: number): SideCut => ({ rod, force: machine.sideForce, depth: deep });
  const gap = leanGap({
    pocket: cut(depth),
    plug: cut(height),
    face: fit.face,
    engaged: Math.min(depth - fit.glueGap, height),
    clearance: fit.clearance,
  });
  return { ...gap, pocket: wallLean(cut(depth)), plug: wallLean(cut(height)), force: machine.sideForce };
}

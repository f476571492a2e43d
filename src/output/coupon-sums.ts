import type { Pair } from '../fit/pair.js';
import { area, perimeter } from '../geometry/region.js';
import type { Recipe } from '../recipe/recipe.js';
import { crushLoad, warningLoad } from '../shop/press.js';
import type { Coupon } from './coupon.js';

/** What pressing a step, or the whole piece, comes to. Estimates of shop/press.ts. */
export interface Pressing {
  /** Face of all plug parts, mm2. */
  readonly plug: number;
  /** Side walls that rub while the plug goes in: length of the plug's boundary x what of it stands in the pocket, mm2. */
  readonly wall: number;
  /** Load at which the plug's wood crushes, and half of it, N; null for an unknown wood. */
  readonly crush: number | null;
  readonly limit: number | null;
}

export function stepSums({ job, steps }: Coupon, k: number): Pressing {
  return pressing(job.recipe, steps[k]!.pair);
}

export function wholeSums({ job, whole }: Coupon): Pressing {
  return pressing(job.recipe, whole.pair);
}

function pressing({ depth, fit, woods }: Recipe, { plug }: Pair): Pressing {
  const face = area(plug);
  return {
    plug: face,
    wall: perimeter(plug) * (depth - fit.glueGap),
    crush: crushLoad(woods.plug, face, woods.own),
    limit: warningLoad(woods.plug, face, woods.own),
  };
}

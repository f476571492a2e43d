import type { Pair } from '../../fit/pair.js';
import { area, bounds, parts, perimeter } from '../../geometry/region.js';
import type { Recipe } from '../../recipe/recipe.js';
import {
  areaToCoat,
  COAT,
  gapVolume,
  type Joint,
  leastGlueGap,
  type Trapped,
  trapped,
} from '../../shop/glue.js';

export interface GlueSum extends Trapped {
  /** Walls and floor to coat, mm2, and volume between the parts, mm3. */
  readonly coated: number;
  readonly volume: number;
  /** Wet coat assumed, mm. */
  readonly coat: number;
  /**
   * The pocket part that needs the largest glue gap: that gap, mm (null: none under the depth will do), and a place
   * in it; null with no parts.
   */
  readonly worst: { readonly gap: number | null; readonly at: readonly [number, number] } | null;
  /** The pocket goes right through: nothing is trapped. */
  readonly open: boolean;
}

/** Estimates of shop/glue.ts for the whole pocket, and for each part of it, since each is a vessel of its own. */
export function glueSum(recipe: Recipe, pair: Pair): GlueSum {
  const { depth, fit, stock } = recipe;
  const joints = parts(pair.pocket).map((part) => {
    const region = { contours: part };
    // The line midway in the gap: each turn of a parallel line takes 2 pi x distance from its length, holes give back.
    const midway = perimeter(region) - Math.PI * fit.clearance * (2 - part.length);
    const joint: Joint = {
      perimeter: midway,
      area: area(region),
      depth,
      clearance: fit.clearance,
      glueGap: fit.glueGap,
    };
    return { joint, part };
  });
  let worst: GlueSum['worst'] = null;
  const sum = { coated: 0, volume: 0, applied: 0, airAtEntry: 0, surplus: 0, airLeft: 0, squeezedOut: 0 };
  for (const { joint, part } of joints) {
    sum.coated += areaToCoat(joint).total;
    sum.volume += gapVolume(joint).total;
    const t = trapped(joint, COAT);
    for (const key of ['applied', 'airAtEntry', 'surplus', 'airLeft', 'squeezedOut'] as const)
      sum[key] += t[key];
    const gap = leastGlueGap(joint, COAT);
    if (!worst || (gap ?? Number.POSITIVE_INFINITY) > (worst.gap ?? Number.POSITIVE_INFINITY)) {
      const b = bounds(part);
      worst = { gap, at: [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2] };
    }
  }
  return { ...sum, coat: COAT, worst, open: stock.field - depth < 1e-6 };
}

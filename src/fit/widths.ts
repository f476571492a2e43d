import type { Widths } from '../cutter/rule.js';
import type { FitSetup, PassSetup, RoughingSetup, WallSetup } from '../recipe/recipe.js';

/** What of a recipe asks for wider gaps and limbs than the corner radius gives. */
interface Asking {
  readonly walls: WallSetup;
  readonly roughing: Pick<RoughingSetup, 'diameter' | 'open'> | null;
  readonly passes: Pick<PassSetup, 'allowance'>;
  readonly fit: Pick<FitSetup, 'clearance' | 'from'>;
}

/**
 * Least gaps and limbs that the pattern must have, mm, so that pocket and plug come out as `walls` and `roughing.open`
 * ask: the pocket is larger than the pattern by its share of the clearance and the plug smaller by its own. A wall of
 * field is measured in the pocket and a limb in the plug. The roughing cutter clears the plug's gaps and the pocket's
 * limbs and leaves the allowance on both sides. Left out where nothing is asked.
 */
export function widthsAsked({ walls, roughing, passes, fit }: Asking): Widths {
  const fromPlug = fit.from === 'plug' ? fit.clearance : fit.from === 'both' ? fit.clearance / 2 : 0;
  const fromPocket = fit.clearance - fromPlug;
  const lane = roughing?.open ? roughing.diameter + 2 * passes.allowance : null;
  const gap = widest(
    walls.least === null ? null : walls.least + 2 * fromPocket,
    lane === null ? null : lane - 2 * fromPlug,
  );
  const limb = widest(
    walls.limbs === null ? null : walls.limbs + 2 * fromPlug,
    lane === null ? null : lane - 2 * fromPocket,
  );
  return { ...(gap === null ? {} : { gap }), ...(limb === null ? {} : { limb }) };
}

function widest(a: number | null, b: number | null): number | null {
  return a === null ? b : b === null ? a : Math.max(a, b);
}

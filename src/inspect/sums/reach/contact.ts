import type { Pair } from '../../../fit/pair.js';
import type { Edge } from '../../../geometry/edge.js';
import { cutterRadius, plugHeight, type Recipe } from '../../../recipe/recipe.js';
import { deflection, type Rod, YOUNGS } from '../../../shop/cantilever.js';
import { engagedAlong } from './engagement.js';
import { type Part, sweepOf } from './reach.js';

/** A stretch of wall where the finishing cutter meets more than the allowance. Lies as the pocket does. */
export interface Contact {
  readonly part: Part;
  /** The widest place. */
  readonly at: readonly [number, number];
  /** Along the wall, mm. */
  readonly length: number;
  /** Of the pass that meets it, mm. */
  readonly depth: number;
  /** What stands straight off the wall at the widest place, mm; at most the finishing cutter's width. */
  readonly width: number;
  /** Side force there, N, and how far it bends the cutter aside at its tip, mm. Estimates. */
  readonly force: number;
  readonly deflection: number;
  /** The stretch itself, the waste on its left. */
  readonly edges: readonly Edge[];
  /** The cutter is in the wood with its whole width. */
  readonly slot: boolean;
}

/** More than the allowance counts from this much more, mm. Our own choice: a light pass does not feel it. */
export const MORE = 0.05;

/** A lighter pass than this is not assumed, mm: `machine.sideForce` is that of a light pass, not of none. */
const LIGHT = 0.1;

const known = new WeakMap<Pair, { recipe: Recipe; contacts: readonly Contact[] }>();

/** How deep the finishing cutter's deepest pass along a part's walls is, mm. */
export function passDepth(recipe: Recipe, part: Part): number {
  const deep = part === 'pocket' ? recipe.depth : plugHeight(recipe);
  return Math.min(recipe.passes.finishingStep ?? deep, deep);
}

/** The finishing cutter as it stands in its collet. */
function rodOf({ cutter: { diameter, flute, shank, stickout, material } }: Recipe): Rod {
  return { diameter, flute, shank, stickout, youngs: YOUNGS[material] };
}

/**
 * Side force (N) where a width (mm) stands beside the wall. Estimate: cutting force goes with the chip's section, depth
 * times width times a constant of the wood (form of the model: Porankiewicz et al., Main and Normal Cutting Forces by
 * Machining Wood of Pinus sylvestris, BioResources); in proportion to the force assumed for the allowance alone, which
 * is our own simplification: thin chips take more force for their section, so wide ones take less than this.
 */
export function forceAt(recipe: Recipe, width: number): number {
  return (recipe.machine.sideForce * width) / Math.max(recipe.passes.allowance, LIGHT);
}

/** How far the finishing cutter's tip goes aside where a width stands, mm. Estimate: shop/cantilever, force at the tip. */
export function deflectionAt(recipe: Recipe, width: number): number {
  return deflection(rodOf(recipe), forceAt(recipe, width), 0);
}

/**
 * Where the finishing cutter meets more than its allowance because the roughing cutter could not get there, the widest
 * first. What stands is measured as if each wall were cut first: of two walls of a slot, the second finds less.
 *
 * None without a roughing cutter, since then the same cutter clears everything in steps first; none with
 * `passes.clearing`, which does the same for what the roughing cutter leaves.
 */
export function contacts(recipe: Recipe, pair: Pair): readonly Contact[] {
  const before = known.get(pair);
  if (before?.recipe === recipe) return before.contacts;
  const found = contactsOf(recipe, pair);
  known.set(pair, { recipe, contacts: found });
  return found;
}

function contactsOf(recipe: Recipe, pair: Pair): Contact[] {
  const { cutter, passes, roughing } = recipe;
  if (!roughing || passes.clearing) return [];
  const whole = 2 * cutterRadius(cutter);
  return (['pocket', 'plug'] as const)
    .flatMap((part) => {
      const sweep = sweepOf(pair, part, roughing.diameter / 2, passes.allowance);
      return engagedAlong(sweep, passes.allowance + MORE, whole).map(
        ({ at, length, width, edges }): Contact => ({
          part,
          at,
          length,
          depth: passDepth(recipe, part),
          width,
          force: forceAt(recipe, width),
          deflection: deflectionAt(recipe, width),
          edges,
          slot: width >= whole - 1e-6,
        }),
      );
    })
    .sort((a, b) => b.width * b.depth - a.width * a.depth || b.length - a.length);
}

import type { Pair } from '../../../fit/pair.js';
import type { Outline } from '../../../outline/outline.js';
import { cutterRadius, plugHeight, type Recipe } from '../../../recipe/recipe.js';
import { stockCutters } from '../../../shop/cutters.js';
import { type Part, reachOf } from './reach.js';

/** What a cutter gets to in one part. */
export interface ReachIn {
  /** Of the waste beyond the allowance, 0 to 1. */
  readonly share: number;
  /** What stands then besides the allowance, mm2. */
  readonly left: number;
  /** What the finishing cutter then has to take, the allowance with it, mm3. */
  readonly finishing: number;
}

/** One cutter and where it gets to. */
export interface ReachRow {
  /** mm. */
  readonly diameter: number;
  /** The recipe's own, or one of the stock list. */
  readonly use: 'finishing' | 'roughing' | 'stock';
  readonly pocket: ReachIn;
  readonly plug: ReachIn;
}

/** Two diameters nearer than this are one cutter, mm. */
const SAME = 1e-6;

/** What of each part's waste one cutter gets to with an allowance left, mm. */
export function reachIn(
  recipe: Recipe,
  outline: Outline,
  pair: Pair,
  radius: number,
  allowance: number,
): Pick<ReachRow, 'pocket' | 'plug'> {
  const one = (part: Part, depth: number): ReachIn => {
    const { share, areas } = reachOf(recipe, outline, pair, part, radius, allowance);
    return { share, left: areas.left, finishing: areas.finishing * depth };
  };
  return { pocket: one('pocket', recipe.depth), plug: one('plug', plugHeight(recipe)) };
}

/** Diameters of the cutters at hand: the maker's own list, or what shops stock; least first, mm. */
export function cuttersAtHand({ cutters }: Pick<Recipe, 'cutters'>): readonly number[] {
  return cutters ?? stockCutters.map((c) => c.diameter);
}

/**
 * Where each cutter gets to, least first: those at hand and the recipe's own two. All leave the allowance, since they
 * would rough; the finishing cutter leaves none. `which`: the recipe's own two alone. Takes its time: a sweep a part and cutter.
 */
export function reachTable(
  recipe: Recipe,
  outline: Outline,
  pair: Pair,
  which: 'all' | 'own' = 'all',
): ReachRow[] {
  const { cutter, passes, roughing } = recipe;
  const own: { diameter: number; use: ReachRow['use']; radius: number; allowance: number }[] = [
    { diameter: cutter.diameter, use: 'finishing', radius: cutterRadius(cutter), allowance: 0 },
  ];
  const roughs = (diameter: number, use: ReachRow['use']) => ({
    diameter,
    use,
    radius: diameter / 2,
    allowance: passes.allowance,
  });
  if (roughing) own.push(roughs(roughing.diameter, 'roughing'));
  const atHand = which === 'own' ? [] : cuttersAtHand(recipe);
  const rest = atHand.filter((d) => !own.some((o) => Math.abs(o.diameter - d) < SAME));
  return [...own, ...rest.map((d) => roughs(d, 'stock'))]
    .sort((a, b) => a.diameter - b.diameter)
    .map(({ diameter, use, radius, allowance }) => ({
      diameter,
      use,
      ...reachIn(recipe, outline, pair, radius, allowance),
    }));
}

/** Whether other cutters may be tried in passing; larger patterns leave that to the table, which may take its time. */
export function quicklyTried({ pocket, plug }: Pair): boolean {
  return [...pocket.contours, ...plug.contours].reduce((n, c) => n + c.length, 0) <= 3000;
}

/**
 * The thickest cutter at hand that, with the allowance, gets everywhere in both parts; null where none thicker than the
 * finishing cutter does. Only those are tried that no inside corner keeps out, and of them the three thickest; none for
 * patterns that are not `quicklyTried`.
 */
export function reachingAll(recipe: Recipe, outline: Outline, pair: Pair): number | null {
  if (!quicklyTried(pair)) return null;
  const { cutter, passes } = recipe;
  let tightest = Number.POSITIVE_INFINITY;
  for (const e of pair.pocket.contours.flat()) if (e.r > 0) tightest = Math.min(tightest, e.r);
  for (const e of pair.plug.contours.flat()) if (e.r < 0) tightest = Math.min(tightest, -e.r);
  const fits = cuttersAtHand(recipe).filter(
    (d) => d > cutter.diameter + SAME && d / 2 + passes.allowance <= tightest + SAME,
  );
  const everywhere = (d: number): boolean => {
    const { pocket, plug } = reachIn(recipe, outline, pair, d / 2, passes.allowance);
    return pocket.left + plug.left < SAME;
  };
  return fits.reverse().slice(0, 3).find(everywhere) ?? null;
}

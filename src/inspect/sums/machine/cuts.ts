import type { Pair } from '../../../fit/pair.js';
import { contourArea } from '../../../geometry/region.js';
import { plugHeight, type Recipe, type Tool } from '../../../recipe/recipe.js';

/** How deep a drawing is cut. */
export interface Cut {
  readonly side: 'pocket' | 'plug';
  /** From the upper face of the wood to the cutter's tip at full depth, mm. */
  readonly deep: number;
  /** Thickness of the wood, mm. */
  readonly stock: number;
  /** Whether the tip goes through the wood, and how far into the board below, mm. */
  readonly through: boolean;
  readonly into: number;
}

/** Is the pocket meant to go right through the field's wood? */
export function isThrough({ depth, stock }: Pick<Recipe, 'depth' | 'stock'>): boolean {
  return stock.field - depth < 1e-6;
}

/** Is field enclosed by pocket? A hole of the pocket then comes loose when the pocket goes through. */
function enclosesField({ pocket }: Pair): boolean {
  return pocket.contours.some((c) => contourArea(c) < 0);
}

/**
 * The pocket's and the plug's cut at full depth. A cut through the wood runs `table.over` into the board, or stops
 * `table.onionSkin` short where that is to hold parts.
 */
export function cutsOf(recipe: Recipe, pair: Pair): readonly [Cut, Cut] {
  const { depth, fit, stock, table } = recipe;
  const cut = (
    side: Cut['side'],
    height: number,
    thick: number,
    parted: boolean,
    held: () => boolean,
  ): Cut => {
    const skin = parted && table.onionSkin > 0 && held() ? table.onionSkin : 0;
    const through = parted && skin === 0;
    const into = through ? table.over : 0;
    return { side, deep: height - skin + into, stock: thick, through, into };
  };
  return [
    cut('pocket', depth, stock.field, isThrough(recipe), () => enclosesField(pair)),
    cut('plug', plugHeight(recipe), stock.plug, fit.plug === 'loose', () => true),
  ];
}

/** The cutters of a job. */
export type ToolName = 'cutter' | 'roughing';

export interface NamedTool {
  readonly name: ToolName;
  readonly tool: Tool;
}

/** The cutters in the order they stand in the recipe. */
export function toolsOf({ cutter, roughing }: Recipe): readonly NamedTool[] {
  const own: NamedTool = { name: 'cutter', tool: cutter };
  return roughing ? [own, { name: 'roughing', tool: roughing }] : [own];
}

/** How a sentence names cutters, in lower case: "the cutter", "the roughing cutter" or "both cutters". */
export function toolWords(names: readonly ToolName[]): string {
  const set = new Set(names);
  if (set.size > 1) return 'both cutters';
  return set.has('roughing') ? 'the roughing cutter' : 'the cutter';
}

/** The deepest of some cuts. */
export function deepestOf(cuts: readonly Cut[]): Cut {
  return cuts.reduce((a, b) => (b.deep > a.deep ? b : a));
}

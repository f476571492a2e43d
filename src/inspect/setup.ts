import type { Safe } from '../cutter/safe.js';
import type { Pair } from '../fit/pair.js';
import type { Artwork } from '../geometry/artwork.js';
import type { Outline } from '../outline/outline.js';
import type { Recipe } from '../recipe/recipe.js';

/** What findings are found from. */
export interface Setup {
  readonly recipe: Recipe;
  readonly outline: Outline;
  /** What was drawn, before the cutter. */
  readonly artwork: Artwork;
  readonly safe: Safe;
  readonly pair: Pair;
  /**
   * With several plug woods: whether what the pass took away at a place, or filled there, does not show, since another
   * wood lies there.
   */
  readonly unseen?: (at: readonly [number, number], filled: boolean) => boolean;
}

import type { Safe } from '../cutter/safe.js';
import type { Inlay } from '../fit/inlay.js';
import type { Island } from '../fit/islands.js';
import type { Layouts } from '../fit/layouts.js';
import type { Pair } from '../fit/pair.js';
import type { Finding } from '../inspect/finding.js';
import type { Outline } from '../outline/outline.js';
import type { Recipe } from '../recipe/recipe.js';

/** Everything known about a piece before anything is written. */
export interface Job {
  readonly recipe: Recipe;
  readonly outline: Outline;
  readonly safe: Safe;
  readonly pair: Pair;
  /** The parts of the pair, numbered. */
  readonly islands: readonly Island[];
  /** Parts laid out on the recipe's boards. */
  readonly layouts: Layouts;
  /** One a plug wood, in the order they go in; `safe` and `pair` are the first one's. */
  readonly inlays: readonly Inlay[];
  /** Size of the drawings, mm: the outline's box and a border for the marks. */
  readonly sheet: { readonly width: number; readonly height: number; readonly border: number };
  readonly findings: readonly Finding[];
  /** Named figures, mm and mm2: corner radius, areas, lengths, counts. */
  readonly numbers: Readonly<Record<string, number>>;
}

/** The files of a job by name; text, or bytes for the picture. */
export type Files = ReadonlyMap<string, string | Uint8Array>;

import { lastHolding } from './cutter/critical.js';
import { enforce } from './cutter/enforce.js';
import { type Loss, losses } from './cutter/loss.js';
import { byWood } from './fit/by-wood.js';
import { runUnder } from './fit/run-under.js';
import { compose, type Face } from './generators/compose.js';
import type { Assets } from './generators/generator.js';
import type { Layer } from './generators/layer.js';
import type { Artwork } from './geometry/artwork.js';
import { Undecided } from './geometry/fault.js';
import { placedRegion } from './geometry/transform.js';
import { shows } from './inspect/lost.js';
import { stockRadius } from './inspect/remedy.js';
import { unseenAt } from './inspect/several.js';
import { outlineShapes } from './outline/index.js';
import { cornerRadius, type Recipe } from './recipe/recipe.js';
import { Refusal } from './schema/fault.js';
import { type StockCutter, stockCutters } from './shop/cutters.js';

/** What one stock cutter loses of the drawing at the size it has, and the size at which it loses nothing. */
export interface CutterLimit {
  readonly cutter: StockCutter;
  /** mm; the ease has the recipe's proportion to the diameter. */
  readonly cornerRadius: number;
  /** What is lost at the size as drawn, largest first; null when the drawing is refused with this cutter. */
  readonly lost: readonly Loss[] | null;
  /** Why it is refused, or null. */
  readonly refused: string | null;
  /** How many times as large it loses nothing: under 1 when it may be smaller. Null when no size was found. */
  readonly scale: number | null;
}

export interface Limits {
  readonly rows: readonly CutterLimit[];
  /** The largest stock cutter that loses nothing at the size as drawn; null when there is none. */
  readonly largest: StockCutter | null;
  /** What the recipe's own cutter still loses at MOST_TIMES the size, when every size loses something. */
  readonly always: readonly Loss[] | null;
}

/** The drawing is tried at up to this many times its size, and down to as small a part of it. */
export const MOST_TIMES = 64;

/**
 * Sizes above the one found that are tried again, in multiples of it: losing is not strictly a matter of size. What is
 * opened and closed in turn can lose at a size what it keeps at a smaller one.
 */
const AGAIN = [1.02, 1.1, 1.25, 1.5, 2] as const;

/**
 * What each stock cutter loses of a recipe's drawing, and how small it may be drawn.
 *
 * "Lost" is what `losses` calls so: parts and holes that vanish, split, merge or close, and ends and gaps that lose
 * too much beyond their corner's own share. A size at which the recipe is refused loses all.
 *
 * One search serves all cutters: a drawing s times as large loses to a corner radius r what the drawing itself loses to
 * r / s. So the drawing is scaled with the recipe's own cutter until nothing is lost, and other cutters follow in
 * proportion to their corner radius. Everything in the recipe that has a length grows together: the outline, margins,
 * the letters' height and tracking. A generator that asks for the cutter (lettering opens its spacing for it) draws anew
 * at each size, for the cutter as large as it is against the drawing then; others draw once. Whether a text still fits
 * its outline is not asked while sizes are sought: one that does not is drawn on a larger face.
 *
 * At the size given nothing is lost, at one a hundredth smaller something is; sizes up to twice as large are tried
 * again at a few places, and the largest that still loses something decides. Throws Refusal and BadInput as the
 * generators do when the recipe cannot be drawn at any size.
 */
export function limits(recipe: Recipe, assets: Assets): Limits {
  const drawing = new Drawing(recipe, assets);
  const r = cornerRadius(recipe.cutter);
  const scale = smallestScale((s) => drawing.holds(s, r));
  const rows = stockCutters.map((cutter) => {
    const own = stockRadius(cutter, recipe);
    const { lost, refused } = drawing.lost(1, own);
    return { cutter, cornerRadius: own, lost, refused, scale: scale === null ? null : (scale * own) / r };
  });
  const largest = rows.filter((row) => row.lost?.length === 0).pop()?.cutter ?? null;
  return { rows, largest, always: scale === null ? drawing.atAnySize(r) : null };
}

/** The smallest scale at which something holds from there on, as far as it is tried; null when at none. */
function smallestScale(holds: (scale: number) => boolean): number | null {
  // Searched by the inverse, which falls as the drawing grows.
  const inverse = (x: number): boolean => holds(1 / x);
  let failing = 1;
  while (failing < MOST_TIMES && inverse(failing)) failing *= 2;
  let least = lastHolding(inverse, failing, 1 / MOST_TIMES);
  if (least === null) return null;
  for (let round = 0; round < AGAIN.length; round++) {
    const fails = [...AGAIN].reverse().find((k) => !inverse(least! / k));
    if (fails === undefined) return 1 / least;
    least = lastHolding(inverse, least / fails, 1 / MOST_TIMES);
    if (least === null) return null;
  }
  return 1 / least;
}

/** A recipe's artwork at any size and for any cutter. */
class Drawing {
  readonly #recipe: Recipe;
  readonly #assets: Assets;
  /** Drawn once when no generator asks for the cutter. */
  #fixed: Artwork | null = null;

  constructor(recipe: Recipe, assets: Assets) {
    this.#recipe = recipe;
    this.#assets = assets;
  }

  holds(scale: number, r: number): boolean {
    return this.lost(scale, r, true).lost?.length === 0;
  }

  /** With `roomy`, a text that is too wide for its outline is drawn on a larger one. */
  lost(scale: number, r: number, roomy = false): { lost: Loss[] | null; refused: string | null } {
    try {
      const artwork = scaled(this.#draw(r / scale, roomy), scale);
      return { lost: this.#losses(artwork, r), refused: null };
    } catch (e) {
      if (e instanceof Refusal || e instanceof Undecided) return { lost: null, refused: e.message };
      throw e;
    }
  }

  /** What is lost however large; throws the refusal when that is what stands in the way. */
  atAnySize(r: number): Loss[] {
    const artwork = scaled(this.#draw(r / MOST_TIMES, true), MOST_TIMES);
    return this.#losses(artwork, r);
  }

  /** What is lost of each wood, largest first. */
  #losses(artwork: Artwork, r: number): Loss[] {
    const { cutter, woods } = this.#recipe;
    const rule = { r, thin: cutter.thin, touch: cutter.touch };
    const groups = byWood(artwork, woods);
    if (groups.length === 1) return losses(artwork, enforce(artwork, rule), r, true);
    const drawn = runUnder(groups, r);
    const lost = drawn.flatMap((wood, k) => {
      const unseen = unseenAt(drawn, k, r);
      return losses(wood.artwork, enforce(wood.artwork, rule), r, true).filter((l) => shows(l, unseen));
    });
    return lost.sort((a, b) => b.size - a.size);
  }

  #draw(r: number, roomy: boolean): Artwork {
    if (this.#fixed) return this.#fixed;
    let asked = false;
    const widen = this.#recipe.cutter.thin === 'widen';
    const cut = {
      get r() {
        asked = true;
        return r;
      },
      get widen() {
        asked = true;
        return widen;
      },
    };
    const { pattern, outline } = this.#recipe;
    let artwork: Artwork;
    try {
      artwork = compose(pattern, outline, this.#assets, cut);
    } catch (e) {
      if (!roomy || !(e instanceof Refusal) || e.code !== 'too-wide') throw e;
      const layers = [pattern].flat().map(onLargerFace);
      artwork = compose(Array.isArray(pattern) ? layers : layers[0]!, larger(outline), this.#assets, cut);
    }
    if (!asked) this.#fixed = artwork;
    return artwork;
  }
}

/** How much larger the outline is made for a text that is too wide for its own. */
const ROOMIER = 4;

function larger(face: Face): Face {
  const shape = outlineShapes.find((s) => s.name === face.shape);
  const values = { ...face.values };
  for (const { kind, name } of shape?.parameters ?? [])
    if (kind === 'length' && name !== 'margin') values[name] = Number(values[name]) * ROOMIER;
  return { shape: face.shape, values };
}

function onLargerFace(layer: Layer): Layer {
  const { shape } = layer.within;
  return shape ? { ...layer, within: { ...layer.within, shape: larger(shape) } } : layer;
}

function scaled(artwork: Artwork, scale: number): Artwork {
  if (scale === 1) return artwork;
  return {
    pieces: artwork.pieces.map((p) => ({ name: p.name, region: placedRegion(p.region, 0, 0, 0, scale) })),
  };
}

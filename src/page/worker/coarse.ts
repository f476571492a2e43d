import { composed } from '../../composed.js';
import { enforce } from '../../cutter/enforce.js';
import { byWood, type WoodPieces } from '../../fit/by-wood.js';
import { makePair } from '../../fit/split.js';
import { widthsAsked } from '../../fit/widths.js';
import type { Assets } from '../../generators/generator.js';
import { Undecided } from '../../geometry/fault.js';
import { makeOutline } from '../../outline/index.js';
import { cornerRadius, type Recipe } from '../../recipe/recipe.js';
import { Refusal } from '../../schema/fault.js';
import { figureOf, figureOfArtwork } from './figure.js';
import type { Drawn, Figure } from './protocol.js';

/** What a worker may take for a coarse drawing, ms: the rest of a tenth of a second is the page's and the screen's. */
export const BUDGET = 55;

/**
 * What is left of a rounding's remembered time with every drawing that goes without: it was slow once, perhaps because
 * nothing was warm yet, and is tried again in a while, but not so often that the tries are felt.
 */
const FORGETS = 0.95;

/** How long drawing and rounding took lately, by what was drawn. */
export class Pace {
  readonly #took = new Map<string, { drawing: number; rounding: number }>();

  /** Whether rounding fits beside drawing. What was never tried is tried. */
  fits(recipe: Recipe): boolean {
    const took = this.#took.get(kindOf(recipe));
    return !took || took.drawing + took.rounding <= BUDGET;
  }

  note(recipe: Recipe, drawing: number, rounding: number | null): void {
    const before = this.#took.get(kindOf(recipe));
    this.#took.set(kindOf(recipe), { drawing, rounding: rounding ?? FORGETS * (before?.rounding ?? 0) });
  }
}

function kindOf({ pattern, cutter }: Recipe): string {
  return JSON.stringify([[pattern].flat().map((l) => l.generator), cutter.diameter, cutter.thin]);
}

/** What is quick to know: the figure, its corners rounded where there is time for it. `now` gives milliseconds. */
export function drawCoarse(recipe: Recipe, assets: Assets, pace: Pace, now: () => number): Drawn {
  const t0 = now();
  const outline = makeOutline(recipe.outline.shape, recipe.outline.values);
  const r = cornerRadius(recipe.cutter);
  const artwork = composed(recipe, assets, {
    r,
    widen: recipe.cutter.thin === 'widen',
  });
  const woods = byWood(artwork, recipe.woods);
  const t1 = now();
  const tried = pace.fits(recipe);
  const rounded = tried ? roundedFigure(recipe, outline, woods) : null;
  const t2 = now();
  pace.note(recipe, t1 - t0, tried ? t2 - t1 : null);
  return {
    kind: 'drawn',
    stage: rounded ? 'rounded' : 'artwork',
    recipe,
    figure: rounded ?? figureOfArtwork(recipe, outline, woods),
    findings: [],
    numbers: {},
    parts: { pocket: 0, plug: 0 },
    took: now() - t0,
  };
}

/** Null where the cutter cannot cut it: the exact drawing says why. */
function roundedFigure(
  recipe: Recipe,
  outline: ReturnType<typeof makeOutline>,
  woods: readonly WoodPieces[],
): Figure | null {
  const { cutter, fit } = recipe;
  const rule = { r: cornerRadius(cutter), thin: cutter.thin, touch: cutter.touch, ...widthsAsked(recipe) };
  try {
    return figureOf(
      recipe,
      outline,
      woods.map(({ wood, pieces }) => ({ wood, pair: makePair(enforce({ pieces }, rule), fit) })),
    );
  } catch (e) {
    if (e instanceof Refusal || e instanceof Undecided) return null;
    throw e;
  }
}

import type { Loss } from '../cutter/loss.js';
import { cornerRadius, type Recipe } from '../recipe/recipe.js';
import { inwards, lengthText, MM_PER_INCH, numberText, type Units } from '../schema/units.js';
import { cutterText, type StockCutter, stockCutters } from '../shop/cutters.js';
import type { Setup } from './setup.js';

/**
 * What would keep a piece, by similarity: with a corner radius r / s it keeps what it keeps with r drawn s times as large.
 *
 * @param radius the largest corner radius at which the piece alone loses nothing, mm; null: none was found; undefined:
 *   none was sought
 */
export function remedy(
  l: Loss,
  { recipe }: Setup,
  radius: number | null | undefined,
): { text: string; numbers: Record<string, number> } {
  const numbers = {};
  if (radius === undefined)
    return {
      text: 'Drawn larger or with a smaller cutter it is kept; `inlaywright limits` says how much of either.',
      numbers,
    };
  if (radius === null)
    return { text: 'It is lost at any size: as drawn it has no width there. Change the drawing.', numbers };
  const r = cornerRadius(recipe.cutter);
  if (radius >= r)
    return {
      text: `By itself it is kept; its neighbours are too near. Leave ${lengthText(2 * r, recipe.units)} between them, or use a smaller cutter.`,
      numbers,
    };
  const scale = r / radius;
  const height = letterHeight(l.piece, recipe);
  const size =
    height === null
      ? `drawn ${scaleText(scale)} times as large`
      : `at ${lengthText(roundedUp(height * scale, recipe.units), recipe.units)} letters`;
  const cutter = largestCutter(radius, recipe);
  const or = cutter ? `, or with a ${cutterText(cutter)} cutter,` : '';
  const it =
    l.of.length > 1
      ? 'they stay apart'
      : l.kind === 'vanished' || l.kind === 'filled'
        ? 'it stays'
        : 'it stays whole';
  return {
    text: `${size.charAt(0).toUpperCase()}${size.slice(1)}${or} ${it}.`,
    numbers: { cornerRadius: radius, scale, ...(cutter ? { cutter: cutter.diameter } : {}) },
  };
}

/** The ease a stock cutter gets: the recipe's, in proportion to its diameter. */
export function stockRadius(cutter: StockCutter, recipe: Recipe): number {
  return cutter.diameter / 2 + (recipe.cutter.ease / recipe.cutter.diameter) * cutter.diameter;
}

/** The largest cutter in stock with at most this corner radius. */
function largestCutter(radius: number, recipe: Recipe): StockCutter | undefined {
  return stockCutters.filter((c) => stockRadius(c, recipe) <= radius).pop();
}

/** The capitals' height of the layer a letter belongs to, mm; null for other pieces. */
function letterHeight(piece: string, { pattern }: Recipe): number | null {
  const named = /^(?:layer (\d+), )?letters? /.exec(piece);
  if (!named) return null;
  const layer = [pattern].flat()[Number(named[1] ?? 0)];
  const height = layer?.generator === 'lettering' ? layer.values.height : undefined;
  return typeof height === 'number' ? height : null;
}

/** Up to the next size that people would set: half a millimetre, a thirty-second of an inch. */
export function roundedUp(mm: number, units: Units): number {
  const step = units === 'in' ? MM_PER_INCH / 32 : 0.5;
  return inwards(Math.ceil(mm / step - 1e-9) * step, units, Math.ceil);
}

/** A scale rounded up to two places, so that the printed one is enough. */
export function scaleText(scale: number): string {
  return numberText(Math.ceil(scale * 100 - 1e-9) / 100, 2);
}

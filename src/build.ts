import { enforce } from './cutter/enforce.js';
import type { Safe } from './cutter/safe.js';
import type { Pair } from './fit/pair.js';
import { makePair } from './fit/split.js';
import { compose } from './generators/compose.js';
import type { Assets } from './generators/generator.js';
import { Undecided } from './geometry/fault.js';
import { area, parts, perimeter, type Region } from './geometry/region.js';
import { inspect } from './inspect/index.js';
import { makeOutline } from './outline/index.js';
import type { Outline } from './outline/outline.js';
import type { Job } from './output/job.js';
import { MARKS_BORDER } from './output/marks.js';
import { cornerRadius, cutterRadius, type Recipe } from './recipe/recipe.js';
import { Refusal } from './schema/fault.js';
import { lengthText } from './schema/units.js';

/**
 * From a recipe to everything known about the piece before anything is written. Pure: the same recipe and assets
 * always give the same job. Throws BadInput when values are at odds with each other, Refusal when the pattern cannot
 * be cut as asked.
 */
export function build(recipe: Recipe, assets: Assets): Job {
  try {
    return built(recipe, assets);
  } catch (e) {
    if (!(e instanceof Undecided)) throw e;
    throw new Refusal(
      'undecided',
      `at exactly these sizes the geometry of the pattern cannot be decided (${e.message}); change a size of the pattern or the cutter's ease by a hundredth of a millimetre, and please report the recipe`,
    );
  }
}

function built(recipe: Recipe, assets: Assets): Job {
  const outline = makeOutline(recipe.outline.shape, recipe.outline.values);
  const { thin, touch } = recipe.cutter;
  const r = cornerRadius(recipe.cutter);
  const artwork = compose(recipe.pattern, recipe.outline, assets, { r, widen: thin === 'widen' });
  const safe = enforce(artwork, { r, thin, touch });
  if (safe.region.contours.length === 0) throw nothingLeft(recipe);
  const pair = makePair(safe, recipe.fit);
  const findings = inspect({ recipe, outline, artwork, safe, pair });
  const stop = findings.find((f) => f.severity === 'stop');
  if (stop) throw new Refusal(stop.code, stop.do, stop.where);
  return {
    recipe,
    outline,
    safe,
    pair,
    sheet: sheetOf(outline),
    findings,
    numbers: figures(recipe, safe, pair),
  };
}

function nothingLeft({ cutter, units }: Recipe): Refusal {
  const width = lengthText(2 * cornerRadius(cutter), units);
  return new Refusal(
    'nothing-left',
    `nothing of the pattern is ${width} wide, which is the least this cutter can cut with its ease; use a smaller cutter or a larger pattern`,
  );
}

function sheetOf({ box }: Outline): Job['sheet'] {
  const border = MARKS_BORDER;
  return { width: box.maxX - box.minX + 2 * border, height: box.maxY - box.minY + 2 * border, border };
}

/** Areas mm2, lengths mm, volumes mm3. Both depths are the pocket's: the plug is cut to fill it. */
function figures(recipe: Recipe, safe: Safe, { pocket, plug }: Pair): Record<string, number> {
  const pocketArea = area(pocket);
  const plugArea = area(plug);
  return {
    cutterRadius: cutterRadius(recipe.cutter),
    cornerRadius: cornerRadius(recipe.cutter),
    pieces: safe.pieces.length,
    ...counts('pocket', pocket),
    ...counts('plug', plug),
    pocketArea,
    plugArea,
    pocketPerimeter: perimeter(pocket),
    plugPerimeter: perimeter(plug),
    pocketVolume: pocketArea * recipe.depth,
    plugVolume: plugArea * recipe.depth,
  };
}

function counts(name: string, region: Region): Record<string, number> {
  const outers = parts(region).length;
  const edges = region.contours.flat();
  return {
    [`${name}Parts`]: outers,
    [`${name}Contours`]: region.contours.length,
    [`${name}Holes`]: region.contours.length - outers,
    [`${name}Lines`]: edges.filter((e) => e.r === 0).length,
    [`${name}Arcs`]: edges.filter((e) => e.r !== 0).length,
  };
}

import { composed } from './composed.js';
import { enforce } from './cutter/enforce.js';
import type { Rule } from './cutter/rule.js';
import type { Safe } from './cutter/safe.js';
import { byWood } from './fit/by-wood.js';
import type { Inlay } from './fit/inlay.js';
import { cutInto } from './fit/into.js';
import { islandsOf } from './fit/islands.js';
import { layoutsOf } from './fit/layouts.js';
import type { Pair } from './fit/pair.js';
import { runUnder } from './fit/run-under.js';
import { makePair } from './fit/split.js';
import { widthsAsked } from './fit/widths.js';
import type { Assets } from './generators/generator.js';
import type { Artwork } from './geometry/artwork.js';
import { Undecided } from './geometry/fault.js';
import { area, parts, perimeter, type Region } from './geometry/region.js';
import { betweenWoods, inspectInlays } from './inspect/several.js';
import { fitNumbers } from './inspect/sums/numbers.js';
import { makeOutline } from './outline/index.js';
import type { Outline } from './outline/outline.js';
import type { Job } from './output/job.js';
import { MARKS_BORDER } from './output/marks.js';
import { cornerRadius, cutterRadius, type Recipe } from './recipe/recipe.js';
import { Refusal } from './schema/fault.js';
import { lengthText } from './schema/units.js';

/** What is wanted of one run and is not in the recipe. */
export interface Wish {
  /** Numbers of spoiled parts: the plug's layout then holds only those. */
  readonly spoiled?: readonly number[];
}

/**
 * From a recipe to everything known about the piece before anything is written. Pure: the same recipe and assets
 * always give the same job. Throws BadInput when values are at odds with each other, Refusal when the pattern cannot
 * be cut as asked. `wish.spoiled`: numbers of plug parts to lay out alone.
 */
export function build(recipe: Recipe, assets: Assets, wish: Wish = {}): Job {
  try {
    return built(recipe, assets, wish);
  } catch (e) {
    if (!(e instanceof Undecided)) throw e;
    throw new Refusal(
      'undecided',
      `at exactly these sizes the geometry of the pattern cannot be decided (${e.message}); change a size of the pattern or the cutter's ease by a hundredth of a millimetre, and please report the recipe`,
    );
  }
}

function built(recipe: Recipe, assets: Assets, { spoiled }: Wish): Job {
  const outline = makeOutline(recipe.outline.shape, recipe.outline.values);
  const { thin, touch } = recipe.cutter;
  const r = cornerRadius(recipe.cutter);
  const artwork = composed(recipe, assets, { r, widen: thin === 'widen' });
  const groups = byWood(artwork, recipe.woods);
  const woods = groups.length > 1 ? runUnder(groups, r, artwork.remarks) : [];
  const inlays = inlaysOf(woods.length > 0 ? woods : [{ wood: groups[0]!.wood, artwork }], recipe, {
    r,
    thin,
    touch,
    ...widthsAsked(recipe),
  });
  const { safe, pair } = inlays[0]!;
  const islands = islandsOf(pair);
  const findings = [...inspectInlays({ recipe, outline }, inlays, woods), ...betweenWoods(woods, recipe)];
  const stop = findings.find((f) => f.severity === 'stop');
  if (stop) throw new Refusal(stop.code, stop.do, stop.where);
  return {
    recipe,
    outline,
    safe,
    pair,
    inlays,
    islands,
    layouts: layoutsOf(recipe, pair, outline.face, islands, spoiled),
    sheet: sheetOf(outline),
    findings,
    numbers: { ...figures(recipe, safe, pair), ...fitNumbers(recipe, outline, pair) },
  };
}

/** Each wood's artwork through the cutter pass and made a pair, by itself. */
function inlaysOf(
  woods: readonly { readonly wood: string; readonly artwork: Artwork }[],
  recipe: Recipe,
  rule: Rule,
): Inlay[] {
  const safes = woods.map(({ wood, artwork }) => {
    const safe = enforce(artwork, rule);
    if (safe.region.contours.length === 0) throw nothingLeft(recipe, woods.length > 1 ? wood : null);
    return safe;
  });
  const into = cutInto(safes, rule.r);
  return woods.map(({ wood, artwork }, k) => {
    const safe = safes[k]!;
    return { wood, name: `inlay ${k + 1}`, artwork, safe, pair: makePair(safe, recipe.fit), into: into[k]! };
  });
}

function nothingLeft({ cutter, units }: Recipe, wood: string | null): Refusal {
  const width = lengthText(2 * cornerRadius(cutter), units);
  return new Refusal(
    'nothing-left',
    `nothing of the pattern${wood === null ? '' : ` in ${wood}`} is ${width} wide, which is the least this cutter can cut with its ease; use a smaller cutter or a larger pattern`,
  );
}

export function sheetOf({ box }: Outline): Job['sheet'] {
  const border = MARKS_BORDER;
  return { width: box.maxX - box.minX + 2 * border, height: box.maxY - box.minY + 2 * border, border };
}

/** Areas mm2, lengths mm, volumes mm3. Both depths are the pocket's: the plug is cut to fill it. */
export function figures(recipe: Recipe, safe: Safe, { pocket, plug }: Pair): Record<string, number> {
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

import type { Loss } from '../cutter/loss.js';
import { loadAssets, loadRecipeText } from '../disk/load.js';
import { message } from '../disk/report.js';
import { roundedUp, scaleText } from '../inspect/remedy.js';
import { type CutterLimit, type Limits, limits, MOST_TIMES } from '../limits.js';
import { readRecipe } from '../recipe/read.js';
import { cornerRadius, type Recipe } from '../recipe/recipe.js';
import { lengthText } from '../schema/units.js';
import { cutterText } from '../shop/cutters.js';

export interface LimitsOptions {
  readonly set: readonly string[];
  readonly json?: boolean;
}

/** What each kind of loss is called, for one and for several. */
const WORDS: Readonly<Record<Loss['kind'], readonly [string, string]>> = {
  vanished: ['part gone', 'parts gone'],
  split: ['part cut up', 'parts cut up'],
  filled: ['hole closed', 'holes closed'],
  opened: ['hole cut open', 'holes cut open'],
  closed: ['opening grown shut', 'openings grown shut'],
  divided: ['hole bridged', 'holes bridged'],
  merged: ['growing together', 'growings together'],
  limb: ['end cut off', 'ends cut off'],
  gap: ['gap filled', 'gaps filled'],
};

/** Pieces named in a row of the table. */
const NAMED = 2;

/** Prints what each stock cutter loses of a recipe's drawing, and the size at which it loses nothing. Returns 0. */
export async function showLimits(path: string, { set, json }: LimitsOptions): Promise<number> {
  const recipe = readRecipe(loadRecipeText(path), path, set);
  const assets = await loadAssets(recipe, path);
  message(`${recipe.name}: trying cutters and sizes`);
  const found = limits(recipe, assets);
  const text = json ? JSON.stringify(limitsObject(path, recipe, found), null, 2) : table(recipe, found);
  process.stdout.write(`${text}\n`);
  return 0;
}

function table(recipe: Recipe, { rows, largest, always }: Limits): string {
  const height = capHeight(recipe);
  const { units } = recipe;
  const size = height === null ? 'scale' : 'letters';
  const cells = rows.map((row) => [
    cutterText(row.cutter),
    lengthText(row.cornerRadius, units),
    row.scale === null ? 'none' : smallest(row.scale, height, recipe),
    lostText(row),
  ]);
  const head = ['cutter', 'corner radius', `smallest ${size}`, 'lost at the size as drawn'];
  const widths = head.map((h, i) => Math.max(h.length, ...cells.map((c) => c[i]!.length)));
  const line = (c: readonly string[]): string =>
    c
      .map((t, i) => t.padEnd(widths[i]!))
      .join('  ')
      .trimEnd();
  const drawn =
    height === null ? 'as drawn is scale 1' : `drawn with letters of ${lengthText(height, units)}`;
  const last = largest
    ? `Largest stock cutter that loses nothing at the size as drawn: ${cutterText(largest)}.`
    : 'No stock cutter keeps everything at the size as drawn.';
  return [
    `${recipe.name}: ${drawn}; the smallest ${size} that ${height === null ? 'loses' : 'lose'} nothing, to 1 %, all else growing in proportion`,
    line(head),
    ...cells.map(line),
    ...(always ? [alwaysText(always)] : []),
    last,
  ].join('\n');
}

function alwaysText(always: readonly Loss[]): string {
  return always.length === 0
    ? 'No size was found from which on nothing is lost.'
    : `Something is lost at every size up to ${MOST_TIMES} times as large: ${kindsText(always)}. There the drawing itself has no width; change it.`;
}

function smallest(scale: number, height: number | null, { units }: Recipe): string {
  return height === null ? scaleText(scale) : lengthText(roundedUp(height * scale, units), units);
}

function lostText({ lost, refused }: CutterLimit): string {
  if (!lost) return `refused: ${refused}`;
  return lost.length === 0 ? 'nothing' : kindsText(lost);
}

function kindsText(lost: readonly Loss[]): string {
  const kinds = Object.entries(counts(lost)).map(
    ([kind, n]) => `${n} ${WORDS[kind as Loss['kind']][n === 1 ? 0 : 1]}`,
  );
  const names = firstNames(lost);
  const more = new Set(lost.map((l) => l.piece)).size - names.length;
  return `${kinds.join(', ')} (${names.join(', ')}${more > 0 ? `, ${more} more` : ''})`;
}

function firstNames(lost: readonly Loss[]): string[] {
  return [...new Set(lost.map((l) => l.piece))].slice(0, NAMED);
}

function counts(lost: readonly Loss[]): Partial<Record<Loss['kind'], number>> {
  const out: Partial<Record<Loss['kind'], number>> = {};
  for (const { kind } of lost) out[kind] = (out[kind] ?? 0) + 1;
  return out;
}

/** The cap height of the only layer of letters, mm; null when there is none, or more than one. */
function capHeight({ pattern }: Recipe): number | null {
  const letters = [pattern].flat().filter((l) => l.generator === 'lettering');
  const height = letters.length === 1 ? letters[0]!.values.height : undefined;
  return typeof height === 'number' ? height : null;
}

/** The same for `--json`. Lengths in mm; scales as found, not rounded up. */
function limitsObject(path: string, recipe: Recipe, { rows, largest, always }: Limits): object {
  const height = capHeight(recipe);
  return {
    recipe: path,
    name: recipe.name,
    units: recipe.units,
    cornerRadius: cornerRadius(recipe.cutter),
    ...(height === null ? {} : { capHeight: height }),
    precision: 0.01,
    cutters: rows.map((row) => ({
      cutter: row.cutter.name,
      diameter: row.cutter.diameter,
      cornerRadius: row.cornerRadius,
      scale: row.scale,
      ...(height === null ? {} : { capHeight: row.scale === null ? null : row.scale * height }),
      ...(row.lost ? { lost: counts(row.lost), first: firstNames(row.lost) } : { refused: row.refused }),
    })),
    largest: largest?.name ?? null,
    ...(always ? { always: counts(always) } : {}),
  };
}

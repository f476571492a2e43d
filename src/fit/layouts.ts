import type { Contour, Region } from '../geometry/region.js';
import type { Board, Recipe } from '../recipe/recipe.js';
import { BadInput, Refusal } from '../schema/fault.js';
import { inwards, lengthText } from '../schema/units.js';
import type { Island } from './islands.js';
import { alongBoard, type LayItem, type Layout, layOut, leastBoard } from './layout.js';
import type { Pair } from './pair.js';

/** The layouts of a job; null: none was asked for. */
export interface Layouts {
  readonly plug: Layout | null;
  readonly pocket: Layout | null;
}

/** Left between two parts besides the cutter's own width, so that a rib holds each till it is cut out, mm. Common practice, no source. */
export const PART_RIB = 2;

/** Left between two pieces besides the cutter's own width, for sawing them apart, mm. Common practice, no source. */
export const PIECE_RIB = 5;

type Setup = Pick<Recipe, 'boards' | 'cutter' | 'fit' | 'units' | 'woods'>;

/**
 * The loose plug's parts on the contrast wood and the pockets on the field's, each where the recipe gives a board; with
 * `spoiled` only those parts (by number), on as small a board as they need when none is given. Throws BadInput for a
 * number that no part has, Refusal for a board that is too small.
 */
export function layoutsOf(
  recipe: Setup,
  pair: Pair,
  face: Region,
  islands: readonly Island[],
  spoiled: readonly number[] | null = null,
): Layouts {
  return {
    plug: plugLayout(recipe, pair, islands, spoiled),
    pocket: recipe.boards.field ? pocketLayout(recipe, pair, face, recipe.boards.field) : null,
  };
}

/** Width that the cutter takes away, mm: the greater of what is on its label and what was measured. */
function cutterWidth({ cutter }: Setup): number {
  return Math.max(cutter.diameter, cutter.cuts ?? 0);
}

function plugLayout(
  recipe: Setup,
  pair: Pair,
  islands: readonly Island[],
  spoiled: readonly number[] | null,
): Layout | null {
  if (spoiled && recipe.fit.plug === 'carrier')
    throw new BadInput([
      { where: '--parts', message: 'is for a loose plug; this one is cut in one with its carrier' },
    ]);
  const { plug: board, pieces } = recipe.boards;
  if (recipe.fit.plug === 'carrier' || (!spoiled && !board)) return null;
  const item = ({ number, index, plug }: Island): LayItem => ({
    name: `part ${number}`,
    number,
    index,
    contours: plug,
    around: plug,
  });
  const items = spoiled
    ? spoiled.map((n) => item(islandOf(n, islands)))
    : Array.from({ length: pieces }, () => islands.map(item)).flat();
  // A mirrored drawing has its grain mirrored with it.
  const grain = pair.mirrored ? Math.PI - recipe.woods.plugGrain : recipe.woods.plugGrain;
  const turn = alongBoard(grain);
  const spacing = cutterWidth(recipe) + PART_RIB;
  const step = recipe.units === 'mm' ? 1 : 25.4 / 16;
  const laid = layOut(items, board ?? leastBoard(items, spacing, turn, step), spacing, turn, board !== null);
  return 'fits' in laid ? refuse(laid, board!, recipe, 'plug', spacing) : laid;
}

function islandOf(number: number, islands: readonly Island[]): Island {
  const found = islands.find((i) => i.number === number);
  if (found) return found;
  const has = islands.length === 1 ? 'one part, number 1' : `parts 1 to ${islands.length}`;
  throw new BadInput([{ where: '--parts', message: `there is no part ${number}: the plug has ${has}` }]);
}

function pocketLayout(recipe: Setup, pair: Pair, face: Region, board: Board): Layout {
  const around: readonly Contour[] = face.contours;
  const items = Array.from(
    { length: recipe.boards.pieces },
    (_, k): LayItem => ({
      name: 'the piece',
      number: k + 1,
      index: 0,
      contours: pair.pocket.contours,
      around,
    }),
  );
  const spacing = cutterWidth(recipe) + PIECE_RIB;
  const laid = layOut(items, board, spacing, alongBoard(recipe.woods.fieldGrain));
  return 'fits' in laid ? refuse(laid, board, recipe, 'field', spacing) : laid;
}

function refuse(
  { fits, of, width, widest, length }: Exclude<ReturnType<typeof layOut>, Layout>,
  board: Board,
  { units }: Setup,
  wood: 'plug' | 'field',
  spacing: number,
): never {
  const up = (mm: number): string => lengthText(inwards(mm, units, Math.ceil), units);
  const what = wood === 'plug' ? `part${of === 1 ? '' : 's'}` : `piece${of === 1 ? '' : 's'}`;
  const holds = fits === 0 ? `none of the ${of} ${what}` : `${fits} of the ${of} ${what}`;
  const narrow =
    width > board.width + 1e-9
      ? `, and ${widest} needs a width of ${up(width)} with its grain along the board`
      : '';
  throw new Refusal(
    'board-too-small',
    `boards.${wood}Width and boards.${wood}Length: a board ${lengthText(board.length, units)} long and ${lengthText(board.width, units)} wide holds ${holds}, laid ${lengthText(spacing, units)} apart${narrow}; ` +
      `use one ${up(length)} long and ${up(width)} wide${of > 1 ? ', or lay out fewer and take a second board for the rest' : ''}`,
  );
}

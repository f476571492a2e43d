import type { Faults } from './faults.js';
import type { Recipe } from './recipe.js';
import type { Value } from './values.js';

/** Boards that are half given, or that nothing could be laid out on. `given` holds the keys the recipe has. */
export function checkBoards(recipe: Recipe, given: Record<string, Value>, faults: Faults): void {
  for (const wood of ['plug', 'field'] as const) {
    const [width, length] = [`${wood}Width`, `${wood}Length`];
    const [has, lacks] = given[width] === undefined ? [length, width] : [width, length];
    if (given[has] !== undefined && given[lacks] === undefined)
      faults.add(['boards', lacks], `is missing: a board needs both; give it too, or leave ${has} out`);
  }
  if (recipe.boards.plug && recipe.fit.plug === 'carrier')
    faults.add(
      ['boards', 'plugWidth'],
      'is for the parts of a loose plug, and this plug is on a carrier: leave plugWidth and plugLength out, or make the plug loose',
    );
  if (recipe.boards.pieces > 1 && !recipe.boards.plug && !recipe.boards.field)
    faults.add(
      ['boards', 'pieces'],
      `is ${recipe.boards.pieces}, and there is no board to lay them out on: give fieldWidth and fieldLength, plugWidth and plugLength, or all four`,
    );
}

import type { Recipe } from '../../recipe/recipe.js';
import { BadInput, Refusal } from '../../schema/fault.js';
import type { Trouble } from './protocol.js';

/** What stands in the way of a drawing, for the card to show. Throws what is no fault of the recipe. */
export function troubleOf(e: unknown, recipe: Recipe | null): Trouble {
  if (e instanceof BadInput)
    return {
      kind: 'trouble',
      recipe,
      faults: e.faults.map(({ where, message }) => ({ where, message, at: null })),
    };
  if (e instanceof Refusal)
    return {
      kind: 'trouble',
      recipe,
      faults: [{ where: '', message: e.message, at: e.at ? [e.at[0], -e.at[1]] : null }],
    };
  throw e;
}

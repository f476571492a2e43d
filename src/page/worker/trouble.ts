import type { Recipe } from '../../recipe/recipe.js';
import { BadInput, type Fault, Refusal } from '../../schema/fault.js';
import type { Trouble } from './protocol.js';

/** Stands for the file where the reader names a line. The card has a line, and no file's name. */
export const CARD = 'card';

/** What stands in the way of a drawing, for the card to show. Throws what is no fault of the recipe. */
export function troubleOf(e: unknown, recipe: Recipe | null): Trouble {
  if (e instanceof BadInput)
    return {
      kind: 'trouble',
      recipe,
      faults: e.faults.map((f) => ({ where: f.where, message: messageOf(f), at: null })),
    };
  if (e instanceof Refusal)
    return {
      kind: 'trouble',
      recipe,
      faults: [{ where: '', message: e.message, at: e.at ? [e.at[0], -e.at[1]] : null }],
    };
  throw e;
}

/** What no key's path says where to look for is said with its line. */
function messageOf({ where, message, source = '' }: Fault): string {
  const line = where === '' && source.startsWith(`${CARD}:`) ? source.split(':')[1] : '';
  const said = message.replaceAll(`at ${CARD}:`, 'on line ');
  return line ? `line ${line}: ${said}` : said;
}

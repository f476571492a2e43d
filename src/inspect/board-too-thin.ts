import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import { listed } from './part-names.js';
import type { Setup } from './setup.js';
import { cutsOf } from './sums/machine/cuts.js';

/** What should be left of the board under the deepest cut, mm. Common practice, no source. */
const LEFT = 3;

/** Cuts that go through the wood and, over a thin board or none, into the table. */
export function boardTooThin({ recipe, pair }: Setup): Finding[] {
  const { table, units } = recipe;
  const through = cutsOf(recipe, pair).filter((c) => c.through);
  const needed = table.over + LEFT;
  if (through.length === 0 || table.board >= needed - 1e-9) return [];
  const text = (mm: number): string => lengthText(mm, units);
  const which = listed(
    through.map((c) => `the ${c.side}`),
    'and',
  );
  const depths = listed(
    through.map((c) => `${text(c.deep)} for the ${c.side}`),
    'and',
  );
  const under = table.board === 0 ? 'there is none under the work' : `that is ${text(table.board)} thick`;
  const deepest = Math.max(...through.map((c) => c.deep));
  return [
    {
      code: 'board-too-thin',
      severity: 'warn',
      where: null,
      numbers: { board: table.board, over: table.over, needed, depth: deepest },
      do: `The cut of ${which} goes through the wood${table.over > 0 ? ` and ${text(table.over)} into the sacrificial board` : ''}; ${under}. Use a board of ${text(inwards(needed, units, Math.ceil))} or more, and set the depth of cut to ${depths}.`,
    },
  ];
}

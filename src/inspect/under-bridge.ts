import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { obstacleHeight } from './sums/machine/collet.js';
import { cutsOf, deepestOf } from './sums/machine/cuts.js';

/** What the tip should lift over what it passes, mm. Common practice, no source. */
const OVER = 5;

/** Wood and clamps that do not pass under the machine's bridge, and a spindle that cannot lift the tip over them. */
export function underBridge({ recipe, pair }: Setup): Finding[] {
  const { machine, stock, table, units } = recipe;
  const text = (mm: number): string => lengthText(mm, units);
  const high = obstacleHeight(recipe);
  const what = table.clamps >= (table.neighbours ?? 0) ? 'clamps' : 'uncut wood';
  const above = high > 0 ? ` and ${text(high)} of ${what} above it` : '';
  const out: Finding[] = [];
  const side = stock.plug > stock.field ? 'plug' : 'field';
  const height = table.board + stock[side] + high;
  if (machine.bridge !== null && height > machine.bridge + 1e-9)
    out.push({
      code: 'under-bridge',
      severity: 'warn',
      where: null,
      numbers: { height, bridge: machine.bridge, over: height - machine.bridge },
      do: `The ${side}'s wood on its board is ${text(table.board + stock[side])} high${above}; only ${text(machine.bridge)} pass under the bridge. Take ${text(inwards(height - machine.bridge, units, Math.ceil))} off: a thinner board or wood, or ${high > 0 ? `lower ${what}` : 'a lower table'}.`,
    });
  const { deep, side: cut } = deepestOf(cutsOf(recipe, pair));
  const lift = deep + high + OVER;
  if (machine.lift !== null && machine.lift < lift - 1e-9)
    out.push({
      code: 'short-lift',
      severity: 'warn',
      where: null,
      numbers: { lift: machine.lift, needed: lift },
      do: `From the full depth of the ${cut} (${text(deep)}) the tip has to lift ${text(inwards(lift, units, Math.ceil))} to pass ${high > 0 ? what : 'the face'} with ${text(OVER)} to spare, and the spindle goes up and down ${text(machine.lift)}. ${high > 0 ? `Lower ${what}, or cut` : 'Cut'} less deep.`,
    });
  return out;
}

import { plugHeight } from '../recipe/recipe.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** Thickness a carrier needs behind what is cut, mm. Common practice, no source. */
const BACKING = 2;

/** Plug stock that does not come up to the face, or leaves no backing to hold the plug. */
export function thinPlug({ recipe }: Setup): Finding[] {
  const { depth, fit, stock, units } = recipe;
  const carrier = fit.plug === 'carrier';
  const needed = carrier ? plugHeight(recipe) + BACKING : depth - fit.glueGap;
  if (stock.plug >= needed - 1e-9) return [];
  const why = carrier
    ? `leaves too little backing behind the ${lengthText(plugHeight(recipe), units)} that are cut`
    : 'will lie below the face';
  return [
    {
      code: 'thin-plug',
      severity: 'warn',
      where: null,
      numbers: { plug: stock.plug, needed },
      do: `The plug's stock (${lengthText(stock.plug, units)}) ${why}. Use ${lengthText(needed, units)} or more, or a shallower pocket.`,
    },
  ];
}

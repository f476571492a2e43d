import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** Thickness a plug on a carrier needs above its depth: the backing that is sawn off. Common practice, no source. */
const BACKING = 2;

/** Plug stock that cannot fill the pocket, or leaves no backing to hold the plug. */
export function thinPlug({ recipe: { depth, fit, stock, units } }: Setup): Finding[] {
  const carrier = fit.plug === 'carrier';
  const needed = carrier ? depth + BACKING : depth;
  if (stock.plug >= needed - 1e-9) return [];
  const why = carrier ? 'leaves too little backing to carry it' : 'will lie below the face';
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

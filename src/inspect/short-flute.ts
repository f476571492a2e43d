import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** Flute that should stand above the work so that chips get out. Common practice, no source. */
const CHIP_ROOM = 1;

/** A cutter whose edges only just reach the floor: chips pack in the slot and scorch. */
export function shortFlute({ recipe: { cutter, depth, units } }: Setup): Finding[] {
  const needed = depth + CHIP_ROOM;
  if (cutter.flute >= needed) return [];
  return [
    {
      code: 'short-flute',
      severity: 'warn',
      where: null,
      numbers: { flute: cutter.flute, depth, needed },
      do:
        `The flute (${lengthText(cutter.flute, units)}) only just reaches the depth of ${lengthText(depth, units)}, so chips cannot leave the slot. ` +
        `Use a cutter with ${lengthText(needed, units)} of flute or more, or cut less deep.`,
    },
  ];
}

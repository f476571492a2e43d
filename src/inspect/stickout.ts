import { inwards, lengthText, numberText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { AIR, obstacleHeight } from './sums/machine/collet.js';
import { cutsOf, deepestOf, toolsOf, toolWords } from './sums/machine/cuts.js';

/** How far the cutters stand out of the collet: too little, or more than is needed. */
export function stickout(setup: Setup): Finding[] {
  return [...clampedOnFlutes(setup), ...longStickout(setup)];
}

/** Less stands out than the flutes are long: the collet grips edges. */
function clampedOnFlutes({ recipe }: Setup): Finding[] {
  const text = (mm: number): string => lengthText(mm, recipe.units);
  return toolsOf(recipe)
    .filter(({ tool }) => tool.stickout < tool.flute - 1e-9)
    .map(({ name, tool }) => ({
      code: 'clamped-on-flutes',
      severity: 'warn',
      where: null,
      numbers: { stickout: tool.stickout, flute: tool.flute },
      do: `The collet grips ${toolWords([name])} on its flutes: they are ${text(tool.flute)} long and only ${text(tool.stickout)} stand out. It holds badly there, and edges and collet suffer. Let ${text(tool.flute)} or more stand out, or use a cutter with shorter flutes.`,
    }));
}

/** A stickout up to this many times what is needed is not worth a word. Our own choice. */
const LONG = 1.5;

/**
 * More stands out than depth, flutes and what is beside the cutter need. A cantilever bends with the cube of its length
 * (d = F L^3 / (3 E I)), which is told as if the cutter were of one thickness all along.
 */
function longStickout({ recipe, pair }: Setup): Finding[] {
  const text = (mm: number): string => lengthText(mm, recipe.units);
  const { deep } = deepestOf(cutsOf(recipe, pair));
  return toolsOf(recipe).flatMap(({ name, tool }): Finding[] => {
    const needed = Math.max(tool.flute, deep + obstacleHeight(recipe) + AIR);
    const ratio = tool.stickout / needed;
    if (ratio <= LONG + 1e-9) return [];
    const times = ratio * ratio * ratio;
    const who = name === 'cutter' ? 'The cutter' : 'The roughing cutter';
    return [
      {
        code: 'long-stickout',
        severity: 'note',
        where: null,
        numbers: { stickout: tool.stickout, needed, times },
        do: `${who} stands out ${text(tool.stickout)} where ${text(inwards(needed, recipe.units, Math.ceil))} would do, so it bends ${numberText(times, 1)} times as much (estimate, by the cube of the length). Put it further into the collet.`,
      },
    ];
  });
}

import type { Tool } from '../recipe/recipe.js';
import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { type Cut, cutsOf, deepestOf, type NamedTool, toolsOf, toolWords } from './sums/machine/cuts.js';

/** Flute that should stand above the work so that chips get out, mm. Common practice, no source. */
const CHIP_ROOM = 1;

/** Cutters whose edges only just reach the depth of the cut, or end within it: one finding a cutter. */
export function shortFlute(setup: Setup): Finding[] {
  const cut = deepestOf(cutsOf(setup.recipe, setup.pair));
  return toolsOf(setup.recipe).flatMap((named) => {
    if (shankRubs(named.tool, cut)) return [rubs(setup, named, cut)];
    return named.tool.flute < cut.deep + CHIP_ROOM - 1e-9 ? [short(setup, named, cut)] : [];
  });
}

/** Does a shank thicker than the cutter go down into the cut? */
function shankRubs({ diameter, flute, shank }: Tool, { deep }: Cut): boolean {
  return shank > diameter + 1e-9 && flute < deep - 1e-9;
}

/** Chips pack in the slot and scorch. */
function short({ recipe }: Setup, { name, tool }: NamedTool, cut: Cut): Finding {
  const { units } = recipe;
  const needed = cut.deep + CHIP_ROOM;
  const whose = name === 'roughing' ? "The roughing cutter's flute" : 'The flute';
  const reaches = tool.flute < cut.deep - 1e-9 ? 'does not reach the depth' : 'only just reaches the depth';
  return {
    code: 'short-flute',
    severity: 'warn',
    where: null,
    numbers: { flute: tool.flute, depth: cut.deep, needed },
    do:
      `${whose} (${lengthText(tool.flute, units)}) ${reaches} of ${lengthText(cut.deep, units)}${sideText(cut)}, so chips cannot leave the slot. ` +
      `Use a cutter with ${lengthText(inwards(needed, units, Math.ceil), units)} of flute or more, or cut less deep.`,
  };
}

/** The shank presses on the wall above the flutes, scorches it, and pushes the cutter off its line. */
function rubs({ recipe }: Setup, { name, tool }: NamedTool, cut: Cut): Finding {
  const text = (mm: number): string => lengthText(mm, recipe.units);
  const needed = inwards(cut.deep + CHIP_ROOM, recipe.units, Math.ceil);
  return {
    code: 'shank-rubs',
    severity: 'warn',
    where: null,
    numbers: { shank: tool.shank, diameter: tool.diameter, flute: tool.flute, depth: cut.deep, needed },
    do: `The shank of ${toolWords([name])} (${text(tool.shank)}) is thicker than its ${text(tool.diameter)} of edge and goes ${text(cut.deep - tool.flute)} into the cut of the ${cut.side}: it rubs the wall, scorches it and can snap the cutter. Use one with ${text(needed)} of flute or more, or a shank no thicker than its edge.`,
  };
}

/** Which cut it is, where it is not a pocket that keeps its floor. */
function sideText({ side, into }: Cut): string {
  if (into > 0) return ` of the ${side}, which is cut through`;
  return side === 'pocket' ? '' : " of the plug's walls";
}

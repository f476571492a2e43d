import { inwards, lengthText } from '../schema/units.js';
import type { Faults } from './faults.js';
import { plugHeight, type Recipe, type Tool } from './recipe.js';

/** What cutters, spindle and machine cannot do together. */
export function checkTools(recipe: Recipe, faults: Faults): void {
  const { cutter, machine, roughing } = recipe;
  if (machine.slowest > machine.fastest) {
    faults.add(
      ['machine', 'slowest'],
      `${machine.slowest} is more than fastest, ${machine.fastest}: use at most that`,
    );
    return;
  }
  checkTool('cutter', cutter, recipe, faults);
  if (roughing) checkTool('roughing', roughing, recipe, faults);
}

function checkTool(name: 'cutter' | 'roughing', tool: Tool, recipe: Recipe, faults: Faults): void {
  const { depth, machine, units } = recipe;
  const text = (mm: number): string => lengthText(mm, units);
  const height = plugHeight(recipe);
  const deepest = Math.max(depth, height);
  if (tool.stickout < deepest - 1e-9)
    faults.add(
      [name, 'stickout'],
      `${text(tool.stickout)} is shorter than the ${text(deepest)} that ${height > depth ? "the plug's walls are high" : 'the pocket is deep'}, so the collet would meet the wood: let it stand out at least ${text(inwards(deepest, units, Math.ceil))}, or cut less deep`,
    );
  if (tool.rpm < machine.slowest || tool.rpm > machine.fastest)
    faults.add(
      [name, 'rpm'],
      `${tool.rpm} is beyond what the spindle can do: ${machine.slowest} to ${machine.fastest} (machine.slowest, machine.fastest)`,
    );
  if (tool.feed !== null && tool.feed > machine.feed)
    faults.add(
      [name, 'feed'],
      `${text(tool.feed)} a minute is more than the machine does: at most ${text(machine.feed)} (machine.feed)`,
    );
}

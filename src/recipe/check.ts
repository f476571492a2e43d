import { inwards, lengthRange, lengthText } from '../schema/units.js';
import { checkTools } from './check-tools.js';
import type { Faults } from './faults.js';
import { cornerRadius, plugHeight, type Recipe } from './recipe.js';

/**
 * Values that are each in range and contradict each other. Every message names the number that would do. `proud` is the
 * recipe's own, when it gives one.
 */
export function checkTogether(recipe: Recipe, faults: Faults, proud: number | undefined): void {
  const { cutter, depth, fit, roughing, skin, stock, units } = recipe;
  const text = (mm: number) => lengthText(mm, units);
  const atLeast = (mm: number) => text(inwards(mm, units, Math.ceil));
  const atMost = (mm: number) => text(inwards(mm, units, Math.floor));
  const d = cutter.diameter;

  if (cutter.cuts !== null && (cutter.cuts < 0.8 * d - 1e-9 || cutter.cuts > 1.2 * d + 1e-9))
    faults.add(
      ['cutter', 'cuts'],
      `${text(cutter.cuts)} is more than a fifth off the diameter ${text(d)}: measure again, ${lengthRange(0.8 * d, 1.2 * d, units)}`,
    );
  if (cutter.ease > d)
    faults.add(
      ['cutter', 'ease'],
      `${text(cutter.ease)} is more than the cutter's diameter: 0 to ${atMost(d)}`,
    );
  if (depth > cutter.flute)
    faults.add(
      ['cutter', 'flute'],
      `${text(cutter.flute)} does not reach the depth of ${text(depth)}: use a cutter with at least ${atLeast(depth)} of flute, or a depth of at most ${atMost(cutter.flute)}`,
    );
  // Thicknesses are sums of decimals, so a sum that is equal on paper may be off by a last digit here.
  if (depth + skin > stock.field + 1e-9) {
    const rest = stock.field - skin;
    const less = rest > 0 ? `make the depth at most ${atMost(rest)}, or ` : '';
    faults.add(
      recipe.bowl ? ['bowl', 'thickness'] : ['stock', 'field'],
      `${text(stock.field)} is thinner than depth ${text(depth)} and skin ${text(skin)} together: ${less}use ${recipe.bowl ? 'staves' : 'stock'} of at least ${atLeast(depth + skin)}`,
    );
  }
  if (roughing && roughing.diameter < d)
    faults.add(
      ['roughing', 'diameter'],
      `${text(roughing.diameter)} is smaller than the cutter's ${text(d)}: use at least ${atLeast(d)}, or leave roughing out`,
    );
  checkPlug(recipe, faults, proud);
  checkTools(recipe, faults);
  const r = cornerRadius(cutter);
  // The narrowest limb a cutter of that corner radius leaves is 2 r wide, less what the plug gives up on both sides.
  const most = { plug: (2 * r) / 3, both: r, pocket: r }[fit.from];
  if (fit.clearance >= most)
    faults.add(
      ['fit', 'clearance'],
      fit.from === 'pocket'
        ? `${text(fit.clearance)} is too much for a corner radius of ${text(r)}: less than ${text(most)}; 0.05 mm to 0.15 mm is usual`
        : `${text(fit.clearance)} is too much for a corner radius of ${text(r)}: a limb of ${text(2 * r)} would come out no wider than the clearance; less than ${text(most)}; 0.05 mm to 0.15 mm is usual`,
    );
}

function checkPlug(recipe: Recipe, faults: Faults, proud: number | undefined): void {
  const { cutter, depth, fit, moisture, stock, units } = recipe;
  const text = (mm: number) => lengthText(mm, units);
  const carrier = fit.plug === 'carrier';
  if (carrier && fit.face === 'up')
    faults.add(
      ['fit', 'face'],
      'is "up", but a plug on a carrier goes in face down: leave it out, or make the plug loose',
    );
  if (carrier && proud !== undefined)
    faults.add(['fit', 'proud'], 'is for a loose plug; on a carrier give sawRoom instead');
  if (fit.glueGap >= depth)
    faults.add(
      ['fit', 'glueGap'],
      `${text(fit.glueGap)} leaves nothing of the depth of ${text(depth)}: use less; 0.5 mm to 1 mm is usual`,
    );
  if (!carrier && proud !== undefined && Math.abs(proud - fit.proud) > 1e-6) {
    const needed = depth - fit.glueGap + proud;
    faults.add(
      ['fit', 'proud'],
      `${text(proud)} needs a plug of ${text(needed)}, and stock.plug is ${text(stock.plug)}: leave one of both out`,
    );
  }
  const height = plugHeight(recipe);
  // A flute that does not even reach the pocket's floor is named already.
  if (depth <= cutter.flute && height > cutter.flute + 1e-9)
    faults.add(
      ['cutter', 'flute'],
      `${text(cutter.flute)} does not reach down the plug's ${text(height)}: use a cutter with at least that much flute, ${
        carrier ? 'less saw room or a shallower pocket' : 'or a thinner plug'
      }`,
    );
  if (carrier && stock.plug <= height + 1e-9)
    faults.add(
      ['stock', 'plug'],
      `${text(stock.plug)} leaves no carrier behind the plug's ${text(height)} (depth less glue gap, and saw room): use more than that, less saw room or a shallower pocket`,
    );
  if (moisture.driest > moisture.dampest)
    faults.add(
      ['moisture', 'driest'],
      `${moisture.driest} is more than dampest, ${moisture.dampest}: use at most that`,
    );
}

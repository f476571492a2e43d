import { inwards, lengthRange, lengthText } from '../schema/units.js';
import type { Faults } from './faults.js';
import { cornerRadius, type Recipe } from './recipe.js';

/** Values that are each in range and contradict each other. Every message names the number that would do. */
export function checkTogether(recipe: Recipe, faults: Faults): void {
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
      ['stock', 'field'],
      `${text(stock.field)} is thinner than depth ${text(depth)} and skin ${text(skin)} together: ${less}use stock of at least ${atLeast(depth + skin)}`,
    );
  }
  if (roughing && roughing.diameter < d)
    faults.add(
      ['roughing', 'diameter'],
      `${text(roughing.diameter)} is smaller than the cutter's ${text(d)}: use at least ${atLeast(d)}, or leave roughing out`,
    );
  const r = cornerRadius(cutter);
  const share = fit.from === 'both' ? fit.clearance / 2 : fit.clearance;
  if (share >= r) {
    const most = (fit.from === 'both' ? 2 : 1) * r;
    faults.add(
      ['fit', 'clearance'],
      `${text(fit.clearance)} is too much for a corner radius of ${text(r)}: less than ${text(most)}; 0.05 mm to 0.15 mm is usual`,
    );
  }
}

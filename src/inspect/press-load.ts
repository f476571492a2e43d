import type { Recipe } from '../recipe/recipe.js';
import { lengthText, numberText } from '../schema/units.js';
import { toTons } from '../shop/conversions.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { pressSum } from './sums/press.js';

/** A named press that could crush the plug, or burst a thin wall of the field by the glue it shuts in. */
export function pressLoad({ recipe, outline, pair }: Setup): Finding[] {
  const sum = pressSum(recipe, outline, pair);
  if (!sum || sum.load === null) return [];
  const { units, woods } = recipe;
  const { load, crush, limit, wall, burstLoad } = sum;
  const text = (newtons: number): string => loadText(newtons, recipe);
  const out: Finding[] = [];
  if (crush !== null && limit !== null && load > limit) {
    const over = load > crush;
    out.push({
      code: over ? 'press-crushes' : 'press-strong',
      severity: 'warn',
      where: null,
      numbers: { load, crush, limit },
      do: over
        ? `Danger: the press at its full ${text(load)} crushes the plug: ${woods.plug} of this area gives way near ${text(crush)} (estimate). Never go over ${text(limit)}; watch the gauge, press slowly, stop when the plug is down.`
        : `The press at its full ${text(load)} comes near the ${text(crush)} at which ${woods.plug} of this area gives way (estimate). Stay under ${text(limit)}.`,
    });
  }
  if (wall && burstLoad !== null && load > burstLoad)
    out.push({
      code: 'press-bursts',
      severity: 'warn',
      where: wall.at,
      numbers: { load, burstLoad, wall: wall.thickness },
      do: `Where the plug shuts the glue in, a load over ${text(burstLoad)} can burst the wall of ${lengthText(wall.thickness, units)} between ${wall.beside === 'edge' ? 'the pocket and the edge' : 'two pockets'} (estimate); the press makes ${text(load)}. Thin coat, press slowly, and clamp the field from the sides.`,
    });
  return out;
}

/** A load as kN and in the press's tons. */
function loadText(newtons: number, { press }: Recipe): string {
  const kind = press?.kind ?? 'us';
  return `${numberText(newtons / 1000, 1)} kN (${numberText(toTons(newtons, kind), 2)} ${kind === 'us' ? 'US' : 'metric'} tons)`;
}

import { cos, sin } from '../geometry/trig.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { grainCure, heightNeeded, rounded, slenderFinding, tooSlender, widthNeeded } from './slender.js';
import { fieldWalls, SKIN, type ThinWall } from './sums/walls/walls.js';

/** The skin to leave under slender walls, mm. Common practice, no source. */
const GOOD_SKIN = 2;

/** Walls of field too slender for the way their grain runs: those between pockets, and those beside the edge. */
export function thinWalls({ recipe, outline, pair }: Setup): Finding[] {
  const all = fieldWalls(recipe, outline, pair);
  const slender = tooSlender(all);
  const { units, woods, walls: wanted } = recipe;
  const direction = [cos(woods.fieldGrain), sin(woods.fieldGrain)] as const;
  const groups: [string, ThinWall[]][] = [
    ['between pockets', slender.filter((w) => w.beside === 'pocket')],
    ['between pocket and edge', slender.filter((w) => w.beside === 'edge')],
  ];
  return groups
    .filter(([, walls]) => walls.length > 0)
    .map(([where, walls]) => {
      const needed = widthNeeded(walls, direction);
      const width = rounded(needed, recipe, Math.ceil);
      const between = walls[0]!.beside === 'pocket';
      const wider = between ? `set walls.least to ${width}` : `leave ${width} of margin there`;
      const cures = [
        ...(walls[0]!.skinHolds
          ? [
              `leave a skin of ${lengthText(SKIN, units)} to ${lengthText(GOOD_SKIN, units)} under the pocket to hold ${walls.length === 1 ? 'it' : 'them'} (common practice)`,
            ]
          : []),
        // The pattern has been thickened already: what is still thin cannot be helped that way.
        ...(between && wanted.least !== null && wanted.least >= needed ? [] : [wider]),
        ...grainCure(all, 'woods.fieldGrain', woods.fieldGrain),
        `cut no deeper than ${rounded(heightNeeded(walls), recipe, Math.floor)}`,
      ];
      const who = `${walls.length} ${walls.length === 1 ? 'wall' : 'walls'} of field ${where}`;
      return slenderFinding('thin-walls', walls, recipe, { who, thing: 'walls', cures });
    });
}

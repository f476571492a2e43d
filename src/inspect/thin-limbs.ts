import { cos, sin } from '../geometry/trig.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { grainCure, heightNeeded, rounded, slenderFinding, tooSlender, widthNeeded } from './slender.js';
import { plugLimbs, type ThinWall } from './sums/walls/walls.js';

/** Limbs of the plug too slender for the way their grain runs: free ones, those held at both ends, and bars or rings by themselves. */
export function thinLimbs({ recipe, pair }: Setup): Finding[] {
  const all = plugLimbs(recipe, pair);
  const slender = tooSlender(all);
  const { fit, woods, walls: wanted } = recipe;
  const direction = [cos(woods.plugGrain), sin(woods.plugGrain)] as const;
  const alone = (w: ThinWall): boolean => w.closed || w.freeEnds === 2;
  const groups: [string, string, ThinWall[]][] = [
    ['limb with a free end', 'limbs with a free end', slender.filter((w) => w.freeEnds === 1)],
    [
      'limb held at both ends',
      'limbs held at both ends',
      slender.filter((w) => !alone(w) && w.freeEnds === 0),
    ],
    ['bar or ring by itself', 'bars or rings by themselves', slender.filter(alone)],
  ];
  return groups
    .filter(([, , limbs]) => limbs.length > 0)
    .map(([one, many, limbs]) => {
      const needed = widthNeeded(limbs, direction);
      const cures = [
        ...(wanted.limbs !== null && wanted.limbs >= needed
          ? []
          : [`set walls.limbs to ${rounded(needed, recipe, Math.ceil)}`]),
        ...grainCure(all, 'woods.plugGrain', woods.plugGrain),
        `make the plug no higher than ${rounded(heightNeeded(limbs), recipe, Math.floor)}`,
        ...(fit.plug === 'loose' ? ['cut the plug on a carrier, which holds its foot'] : []),
      ];
      const who = `${limbs.length} ${limbs.length === 1 ? one : many} of the plug`;
      return slenderFinding('thin-limbs', limbs, recipe, { who, thing: 'limbs', cures });
    });
}

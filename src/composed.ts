import { surviving } from './bowl/face.js';
import { makeVessel } from './bowl/vessel.js';
import { allBands, compose } from './generators/compose.js';
import type { Assets, Cut } from './generators/generator.js';
import type { Artwork } from './geometry/artwork.js';
import { intersect } from './geometry/boolean.js';
import { parts } from './geometry/region.js';
import type { Recipe } from './recipe/recipe.js';
import { Refusal } from './schema/fault.js';

/** Past the joints of any stave, mm: what runs on over them is sawn there, not cut off in the drawing. */
const PAST = 1000;

/** What a recipe draws, before the cutter; on a stave, what of it the finished wall will hold. Throws as `compose`. */
export function composed({ pattern, outline, bowl }: Recipe, assets: Assets, cut: Cut): Artwork {
  const artwork = compose(pattern, outline, assets, cut);
  if (!bowl) return artwork;
  const room = surviving(makeVessel(bowl), bowl.continuous || allBands(pattern) ? PAST : 0);
  const pieces = artwork.pieces.flatMap(({ name, region }) => {
    const kept = intersect(region, room);
    const apart = parts(kept);
    return apart.map((contours, k) => ({
      name: apart.length > 1 && parts(region).length === 1 ? `${name}, ${k + 1}` : name,
      region: { contours },
    }));
  });
  if (pieces.length === 0)
    throw new Refusal(
      'bowl.survives',
      'nothing of the pattern lies where the stave survives: let it be nearer to the middle of the stave (outline.margin)',
    );
  return { ...artwork, pieces };
}

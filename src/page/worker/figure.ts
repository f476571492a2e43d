import type { Pair } from '../../fit/pair.js';
import type { Contour, Region } from '../../geometry/region.js';
import { mirrorX } from '../../geometry/transform.js';
import type { Outline } from '../../outline/outline.js';
import { DARK, PALE, woodOr } from '../../output/wood-looks.js';
import type { Recipe } from '../../recipe/recipe.js';
import { pathOf } from './path.js';
import type { Box, Figure, WoodLook } from './protocol.js';

/** What lies on the face once the pair of each wood is made. */
export function figureOf(
  recipe: Recipe,
  outline: Outline,
  inlays: readonly { readonly wood: string; readonly pair: Pair }[],
): Figure {
  return figure(
    recipe,
    outline,
    inlays.map(({ wood, pair }) => ({
      wood,
      pocket: pathOf(pair.pocket.contours),
      plug: pathOf(setPlug(pair).contours),
    })),
  );
}

/** The same of artwork that the cutter has not been through. */
export function figureOfArtwork(
  recipe: Recipe,
  outline: Outline,
  woods: readonly { readonly wood: string; readonly pieces: readonly { readonly region: Region }[] }[],
): Figure {
  const contours = (pieces: readonly { readonly region: Region }[]): readonly Contour[] =>
    pieces.flatMap((p) => p.region.contours);
  return figure(
    recipe,
    outline,
    woods.map(({ wood, pieces }) => ({ wood, pocket: pathOf(contours(pieces)), plug: '' })),
  );
}

function figure(
  { woods }: Recipe,
  { box, face }: Outline,
  inlays: readonly { readonly wood: string; readonly pocket: string; readonly plug: string }[],
): Figure {
  return {
    box: down(box),
    face: pathOf(face.contours),
    field: lookOf(woods.field, PALE, woods.own),
    grain: { field: -woods.fieldGrain, plug: -woods.plugGrain },
    inlays: inlays.map(({ wood, ...paths }) => ({ wood: lookOf(wood, DARK, woods.own), ...paths })),
  };
}

export function lookOf(
  name: string,
  other: { readonly colour: string; readonly grain: string },
  own: Recipe['woods']['own'],
): WoodLook {
  const { colour, grain } = woodOr(name, other, own);
  return { name, colour, grain };
}

/** The plug as it lies in the pocket. */
export function setPlug({ plug, mirrored }: Pair): Region {
  return mirrored ? mirrorX(plug) : plug;
}

export function down({ minX, minY, maxX, maxY }: Box): Box {
  return { minX, minY: -maxY, maxX, maxY: -minY };
}

import type { Pair } from '../../src/fit/pair.js';
import { type Contour, polygon, type Region } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import { readRecipe } from '../../src/recipe/read.js';
import type { Recipe } from '../../src/recipe/recipe.js';
import { exampleText } from '../recipe/example.js';
import { outlineWith } from '../support/artwork.js';

export const face = outlineWith('circle', { diameter: 96, margin: 0 });
export const degree = Math.PI / 180;

export interface Given {
  readonly depth?: number;
  readonly floor?: number;
  /** Degrees. */
  readonly grain?: number;
  readonly changes?: Record<string, unknown>;
}

export function recipeOf({ depth = 8, floor = 3, grain = 0, changes = {} }: Given): Recipe {
  const recipe = readRecipe(exampleText(changes), 'x.json');
  return {
    ...recipe,
    depth,
    stock: { field: depth + floor, plug: depth },
    woods: { ...recipe.woods, fieldGrain: grain * degree, plugGrain: grain * degree },
  };
}
export const pairOf = (contours: readonly Contour[], mirrored = false): Pair => {
  const region: Region = { contours };
  return { pocket: region, plug: mirrored ? mirrorX(region) : region, mirrored };
};

export function box(x0: number, y0: number, x1: number, y1: number): Contour {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

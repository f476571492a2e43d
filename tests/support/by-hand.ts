import type { Pair } from '../../src/fit/pair.js';
import { type Contour, polygon } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import type { Finding } from '../../src/inspect/finding.js';
import type { Setup } from '../../src/inspect/setup.js';
import { makeOutline } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { exampleText } from '../recipe/example.js';

/** A rectangle about (cx, cy), mm. */
export function boxed(width: number, height: number, cx = 0, cy = 0): Contour {
  const [a, b] = [width / 2, height / 2];
  return polygon([
    [cx - a, cy - b],
    [cx + a, cy - b],
    [cx + a, cy + b],
    [cx - a, cy + b],
  ]);
}

/**
 * The setup of a recipe whose pocket and plug are these contours, so that sums can be done by hand: no rounding, no
 * clearance. The plug is mirrored when the recipe's is.
 */
export function setupOf(changes: Record<string, unknown>, ...contours: Contour[]): Setup {
  const recipe = readRecipe(exampleText(structuredClone(changes)), 'x.json');
  const region = { contours };
  const mirrored = recipe.fit.face === 'down';
  const pair: Pair = { pocket: region, plug: mirrored ? mirrorX(region) : region, mirrored };
  return {
    recipe,
    outline: makeOutline(recipe.outline.shape, recipe.outline.values),
    artwork: { pieces: [] },
    safe: { region: { contours: [] }, pieces: [], changes: [] },
    pair,
  };
}

/** Codes and severities of findings. */
export function codesOf(findings: readonly Finding[]): string[] {
  return findings.map((f) => `${f.code} ${f.severity}`);
}

/** What no message may contain. */
export const BROKEN = /NaN|Infinity|undefined|null|-0\b/;

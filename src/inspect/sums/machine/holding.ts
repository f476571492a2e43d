import { deepestPoint } from '../../../fit/deepest-point.js';
import { islandsOf } from '../../../fit/islands.js';
import type { Pair } from '../../../fit/pair.js';
import { area, type Contour, parts, reversedContour } from '../../../geometry/region.js';
import { mirrorX } from '../../../geometry/transform.js';
import { plugHeight, type Recipe } from '../../../recipe/recipe.js';
import { LEAST_FOOT, LEAST_STANCE, RESERVE, tapeHold } from '../../../shop/holding.js';
import { isThrough } from './cuts.js';
import { stance } from './stance.js';

/** A part that comes loose when it is cut out. */
export interface LoosePart {
  /** As on the drawings; parts of field have none, 0. */
  readonly number: number;
  /** In the pocket's coordinates. */
  readonly contours: readonly Contour[];
  readonly at: readonly [number, number];
  /** Under it, mm2. */
  readonly area: number;
  /** How wide it stands, mm (see stance.ts). */
  readonly width: number;
  /** What tape under it holds, N (estimate). */
  readonly hold: number;
  readonly small: boolean;
  readonly narrow: boolean;
  /** Whether tape holds less than the reserve over the side force. */
  readonly weak: boolean;
}

export interface LooseParts {
  readonly height: number;
  readonly all: readonly LoosePart[];
  /** Small, narrow or weakly held; the one with the smallest foot first. */
  readonly risky: readonly LoosePart[];
}

/** Parts of a loose plug; null on a carrier, which holds them. */
export function loosePlugParts(recipe: Recipe, pair: Pair): LooseParts | null {
  if (recipe.fit.plug !== 'loose') return null;
  const height = plugHeight(recipe);
  const all = islandsOf(pair).map(({ number, plug, at }) => {
    const contours = pair.mirrored ? mirrorX({ contours: plug }).contours : plug;
    return judged(recipe, height, { number, contours, at });
  });
  return { height, all, risky: riskyOf(all) };
}

/**
 * Parts of field that a pocket cut right through encloses; null when it does not go through. The pocket is the other way
 * round the boundary of the field, so its contours reversed are the field's parts; the field outside has no outer one.
 */
export function looseFieldParts(recipe: Recipe, pair: Pair): LooseParts | null {
  if (!isThrough(recipe)) return null;
  const height = recipe.stock.field;
  const field = { contours: pair.pocket.contours.map(reversedContour) };
  const all = parts(field).map((contours) =>
    judged(recipe, height, { number: 0, contours, at: deepestPoint(contours).at }),
  );
  return { height, all, risky: riskyOf(all) };
}

interface Foot {
  readonly number: number;
  readonly contours: readonly Contour[];
  readonly at: readonly [number, number];
}

/** Widths are known to this, mm (see stance.ts). */
const WIDTH = 0.02;

function judged(recipe: Recipe, height: number, { number, contours, at }: Foot): LoosePart {
  const foot = area({ contours });
  const width = stance(contours[0]!);
  const hold = tapeHold(foot, recipe.table.tape);
  return {
    number,
    contours,
    at,
    area: foot,
    width,
    hold,
    small: foot < LEAST_FOOT.value - 1e-6,
    narrow: width < LEAST_STANCE.value * height - WIDTH,
    weak: hold < RESERVE * recipe.machine.sideForce - 1e-9,
  };
}

function riskyOf(all: readonly LoosePart[]): LoosePart[] {
  return all
    .filter((p) => p.small || p.narrow || p.weak)
    .sort((a, b) => a.area - b.area || a.number - b.number);
}

import type { Pair } from '../../fit/pair.js';
import { bounds, parts, type Region } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Recipe } from '../../recipe/recipe.js';
import { type Board, type Direction, MOISTURE, worstGapChange } from '../../shop/movement.js';

/** What the seasons do to the gap per side of the part they do most to, mm, 0 or more. */
export interface MovementSum {
  /** Most that the gap closes and most that it opens, at the driest or the dampest. */
  readonly closes: number;
  readonly opens: number;
  /** Moisture contents at which it does, %. */
  readonly closesAt: number;
  readonly opensAt: number;
  /** Whether some part's gap closes, or opens, by more than the clearance and what the wood gives. */
  readonly tooTight: boolean;
  readonly tooWide: boolean;
}

/**
 * Strain that glued wood takes up without harm. From memory: across the grain wood tears at about half a percent
 * (2 to 7 MPa of tension strength over 0.5 to 1 GPa of stiffness there); four fifths of that is our own choice.
 */
export const GIVES = 0.004;

/** No sum: a wood without figures, or a moisture outside the 6 to 14 % that the figures hold for. */
export type NoMovement = 'unknown wood' | 'moisture out of range';

/**
 * Estimate: both woods flat-sawn (the larger coefficient), free to move, each part by itself, its middle staying put.
 * A wall's gap is looked at in the direction from that middle.
 */
export function movementSum(recipe: Recipe, pair: Pair): MovementSum | NoMovement {
  const { moisture, woods } = recipe;
  const inRange = (m: number): boolean => m >= MOISTURE.min && m <= MOISTURE.max;
  if (![moisture.field, moisture.plug, moisture.driest, moisture.dampest].every(inRange))
    return 'moisture out of range';
  const board = (wood: string, angle: number, from: number, to: number): Board => ({
    wood,
    cut: 'flat',
    grain: [cos(angle), sin(angle)] as Direction,
    from,
    to,
    own: woods.own,
  });
  let sum: MovementSum = {
    closes: 0,
    opens: 0,
    closesAt: moisture.dampest,
    opensAt: moisture.driest,
    tooTight: false,
    tooWide: false,
  };
  for (const to of [moisture.driest, moisture.dampest]) {
    const plug = board(woods.plug, woods.plugGrain, moisture.plug, to);
    const field = board(woods.field, woods.fieldGrain, moisture.field, to);
    for (const [width, height] of largestBoxes(pair.plug)) {
      const worst = worstGapChange(plug, field, width, height);
      if (!worst) return 'unknown wood';
      if (worst.closes > sum.closes) sum = { ...sum, closes: worst.closes, closesAt: to };
      if (worst.opens > sum.opens) sum = { ...sum, opens: worst.opens, opensAt: to };
      const room = (along: Direction): number =>
        recipe.fit.clearance + GIVES * toBorder(width, height, along);
      if (worst.closes > room(worst.closesAlong)) sum = { ...sum, tooTight: true };
      if (worst.opens > room(worst.opensAlong)) sum = { ...sum, tooWide: true };
    }
  }
  return sum;
}

/**
 * Widths and heights of the parts' boxes, mm, but those that fit in another's: the change grows with either. The
 * mirror changes none of them.
 */
function largestBoxes(plug: Region): [number, number][] {
  const sizes = parts(plug).map((p): [number, number] => {
    const b = bounds(p);
    return [b.maxX - b.minX, b.maxY - b.minY];
  });
  sizes.sort(([aw, ah], [bw, bh]) => bw - aw || bh - ah);
  let highest = 0;
  return sizes.filter(([, h]) => {
    if (h <= highest) return false;
    highest = h;
    return true;
  });
}

/** From the middle of a box to its border along a unit vector, mm. */
function toBorder(width: number, height: number, [x, y]: Direction): number {
  const side = (size: number, part: number): number =>
    part === 0 ? Number.POSITIVE_INFINITY : size / 2 / Math.abs(part);
  return Math.min(side(width, x), side(height, y));
}

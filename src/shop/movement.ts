import { BadInput } from '../schema/fault.js';
import type { OwnWoods } from './own.js';
import { inRange, overZero, type Range } from './range.js';
import { movementOf } from './shrinkage.js';

/** Moisture contents the handbook's coefficients hold for. */
export const MOISTURE: Range = { min: 6, max: 14, unit: '%' };

/**
 * A direction on the piece, as a vector of any length but zero: the cosine and the sine of its angle will do. Vectors,
 * so that this room needs no trigonometry.
 */
export type Direction = readonly [number, number];

/**
 * How a board was sawn, which says what its width runs along. Flat: the growth rings (tangential). Quarter: from the
 * pith outwards (radial). Between (rift): rings at half a right angle, where a strain has the mean of both.
 */
export type Cut = 'flat' | 'quarter' | 'between';

/** The wood of the plug or of the field, and the change it goes through. */
export interface Board {
  /** Name as in woods.ts. */
  readonly wood: string;
  readonly cut: Cut;
  /** Of the grain, in the pocket's drawing: a mirrored plug's is mirrored with it. */
  readonly grain: Direction;
  /** Moisture content when cut and fitted, and later on, %. */
  readonly from: number;
  readonly to: number;
  /** The recipe's own woods. */
  readonly own?: OwnWoods | undefined;
}

/** Strain of the face, a symmetric tensor: the part of its own length each line of the face grows. */
export interface Strain {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * Change along the grain per 1 % of moisture content. Normal wood shrinks by 0.1 to 0.3 % along the grain from green
 * (30 %) to ovendry (FPL report 1093, published); the lower end is taken, evenly over the 30 %.
 */
export const ALONG_GRAIN = 0.001 / 30;

/**
 * By how much a size grows, in its own unit; negative where it shrinks. Estimate: dD = D C (M2 - M1), Wood Handbook
 * chapter 13 equation 13-2 (transcribed). Moisture in %, 6 to 14; BadInput otherwise.
 */
export function change(size: number, coefficient: number, from: number, to: number): number {
  inRange('moisture', from, MOISTURE);
  inRange('moisture', to, MOISTURE);
  return size * coefficient * (to - from);
}

/** Change across the grain in the face per 1 % of moisture content; null for an unknown wood. */
export function acrossGrain(wood: string, cut: Cut, own?: OwnWoods): number | null {
  const movement = movementOf(wood, own);
  if (!movement) return null;
  const { radial, tangential } = movement.change;
  if (cut === 'flat') return tangential.value;
  if (cut === 'quarter') return radial.value;
  return (radial.value + tangential.value) / 2;
}

/**
 * Strain of a board's face. Estimate. With g the unit vector of the grain, a the strain along and c the strain across
 * it: a g g^T + c (1 - g g^T), so in a direction at angle t to the grain it is a cos^2 t + c sin^2 t. Null for an
 * unknown wood; BadInput for a grain without direction.
 */
export function faceStrain(board: Board): Strain | null {
  const coefficient = acrossGrain(board.wood, board.cut, board.own);
  if (coefficient === null) return null;
  const a = change(1, ALONG_GRAIN, board.from, board.to);
  const c = change(1, coefficient, board.from, board.to);
  const [x, y] = board.grain;
  const square = x * x + y * y;
  if (!(square > 0))
    throw new BadInput([{ where: 'grain', message: 'has no direction: give a vector that is not [0, 0]' }]);
  return {
    xx: (a * x * x + c * y * y) / square,
    xy: ((a - c) * x * y) / square,
    yy: (a * y * y + c * x * x) / square,
  };
}

/** What the plug grows by more than the field; null where either wood is unknown. */
export function strainDifference(plug: Board, field: Board): Strain | null {
  const p = faceStrain(plug);
  const f = faceStrain(field);
  return p && f && { xx: p.xx - f.xx, xy: p.xy - f.xy, yy: p.yy - f.yy };
}

/**
 * By how much the gap at one place of a plug's wall widens, mm; negative where it closes. Estimate, unglued and free.
 * `at`: the place, mm, from the middle of the part, which stays put. `normal`: out of the plug there. A wall that faces
 * the middle (of a notch, or round a hole) moves the other way from one that faces outwards. Formula: -n (Sp - Sf) p.
 * Null where a wood is unknown.
 */
export function gapChange(plug: Board, field: Board, at: Direction, normal: Direction): number | null {
  const s = strainDifference(plug, field);
  if (!s) return null;
  const [nx, ny] = normal;
  const [px, py] = times(s, at);
  return -(nx * px + ny * py) / length(normal);
}

export interface WorstChange {
  /** Most that the gap per side closes, and most that it opens, in any direction from the middle, mm, 0 or more. */
  readonly closes: number;
  readonly opens: number;
  /** Unit vectors of the directions in which they do. */
  readonly closesAlong: Direction;
  readonly opensAlong: Direction;
  /** No wall of a part in that box, whichever way it faces, can close or open by more than this, mm. */
  readonly bound: number;
}

/** Places tried along half the border of the box: the true worst is missed by less than 1e-4 of itself. */
const STEPS = 512;

/**
 * The worst that moisture does to the gap per side of one plug part with the given extents along x and y, mm (a part
 * by itself where they are loose; all of them together where they hang on a carrier). BadInput for an extent that is not over 0. Estimate: over every direction
 * from the middle of the box to its border, how the gap across that direction changes. Null where a wood is unknown.
 */
export function worstGapChange(plug: Board, field: Board, width: number, height: number): WorstChange | null {
  overZero('width', width, 'mm');
  overZero('height', height, 'mm');
  const s = strainDifference(plug, field);
  if (!s) return null;
  let closes = 0;
  let opens = 0;
  let closesAlong: Direction = [1, 0];
  let opensAlong: Direction = [1, 0];
  for (const p of halfBorder(width / 2, height / 2)) {
    const r = length(p);
    const [x, y] = times(s, p);
    const grows = (x * p[0] + y * p[1]) / r;
    if (grows > closes) [closes, closesAlong] = [grows, [p[0] / r, p[1] / r]];
    if (-grows > opens) [opens, opensAlong] = [-grows, [p[0] / r, p[1] / r]];
  }
  // abs(S p) is convex in p, so its most is at a corner.
  const bound = Math.max(
    length(times(s, [width / 2, height / 2])),
    length(times(s, [width / 2, -height / 2])),
  );
  return { closes, opens, closesAlong, opensAlong, bound };
}

/** Points on half the border of a box of half sizes a and b; the other half is its mirror through the middle. */
function halfBorder(a: number, b: number): Direction[] {
  const points: Direction[] = [];
  for (let k = 0; k <= STEPS; k++) {
    const t = (2 * k) / STEPS - 1;
    points.push([a, t * b], [t * a, b]);
  }
  return points;
}

function times(s: Strain, [x, y]: Direction): Direction {
  return [s.xx * x + s.xy * y, s.xy * x + s.yy * y];
}

function length([x, y]: Direction): number {
  return Math.sqrt(x * x + y * y);
}

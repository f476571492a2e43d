import { cos, sin } from '../../../geometry/trig.js';
import { slenderLimit } from '../../../shop/short-grain.js';

/** A place of a wall as the grain sees it: its slenderness and its unit direction. */
export interface GrainPlace {
  readonly slenderness: number;
  readonly tx: number;
  readonly ty: number;
  /** Of the wall's axis that it stands for, mm. */
  readonly length: number;
}

/** A wall as the grain sees it. */
export interface GrainWall {
  /** At its narrowest, mm. */
  readonly width: number;
  readonly places: readonly GrainPlace[];
}

/** Angles of the grain that are tried: every 15 degrees. */
const ANGLES = 12;

/** Slenderness over the limit that the grain at this angle (radians) sets there: over 1 it is too slender. */
export function overLimit({ slenderness, tx, ty }: Omit<GrainPlace, 'length'>, grain: number): number {
  return slenderness / slenderLimit(tx * cos(grain) + ty * sin(grain));
}

/** Length of the wall's axis where it is too slender for that grain (radians), mm. */
export function slenderLength({ places }: GrainWall, grain: number): number {
  const [c, s] = [cos(grain), sin(grain)];
  let sum = 0;
  for (const { slenderness, tx, ty, length } of places)
    if (slenderness > slenderLimit(tx * c + ty * s)) sum += length;
  return sum;
}

/**
 * Whether a wall is too slender: over its limit for at least as long as it is wide. A shorter neck has the thicker wood
 * beside it to lean on. Our own choice.
 */
export function isSlender(wall: GrainWall, grain: number): boolean {
  return slenderLength(wall, grain) >= wall.width;
}

/** A grain angle, radians, and how many walls would still be too slender with it. */
export interface BetterGrain {
  readonly angle: number;
  readonly left: number;
}

/**
 * Of 12 grain angles the one that leaves fewest walls too slender, and of those the one nearest to the grain now; null
 * where none does better.
 */
export function betterGrain(walls: readonly GrainWall[], now: number): BetterGrain | null {
  const count = (angle: number): number => walls.filter((w) => isSlender(w, angle)).length;
  const before = count(now);
  let best: BetterGrain | null = null;
  let turn = 0;
  for (let k = 0; k < ANGLES; k++) {
    const angle = (k * Math.PI) / ANGLES;
    const left = count(angle);
    const off = Math.abs(sin(angle - now));
    if (left >= before || (best && (left > best.left || (left === best.left && off >= turn)))) continue;
    best = { angle, left };
    turn = off;
  }
  return best;
}

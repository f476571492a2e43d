import type { OwnWoods } from './own.js';
import { overZero } from './range.js';
import { strengthOf } from './strength.js';

/**
 * Slender walls of field and limbs of plug against the grain.
 *
 * Where a wall runs across the grain its fibres cross it and are as short as it is thick ("short grain"), so it snaps
 * under little; along the grain its fibres run from end to end.
 */

/** Height over width up to which a wall right across the grain, and one right along it, is usual. Common practice, no source. */
export const SLENDER = { across: 4, along: 8 } as const;

/**
 * Height over width up to which a wall is usual. `along`: cosine of the angle between its direction and the grain. Between
 * the two figures it goes with the cosine's square, 4 + 4 cos2, without a jump: at 45 degrees it is 6. Our own choice.
 */
export function slenderLimit(along: number): number {
  return SLENDER.across + (SLENDER.along - SLENDER.across) * along * along;
}

/** What holds a wall: a floor under all of it, thicker wood at both its ends or at one, or nothing (a bar or ring by itself). */
export type Held = 'foot' | 'both ends' | 'one end' | 'nowhere';

/** A wall of even thickness, mm. */
export interface SlenderWall {
  readonly thickness: number;
  readonly height: number;
  /** From one end to the other; asked only where an end holds it. */
  readonly length: number;
  readonly held: Held;
}

/**
 * Side load that would break a wall, N a mm of its length; null where the wood's tension perpendicular to the grain is not
 * known, or nothing holds the wall. Estimate, and only for comparing walls with each other: what load comes is not known.
 *
 * Strength of materials, from memory: stress = M c / I = 6 M / (b t^2) for a beam b wide and t thick. With the wood's
 * tension perpendicular to the grain s (strength.ts):
 *
 *   foot       a strip 1 mm wide as a cantilever from the floor, the load at its mouth: M = q h,
 *              q = s t^2 / (6 h)
 *   both ends  a beam as wide as the wall is high, resting on its ends, the load even along it: M = q l^2 / 8,
 *              q = 4 s h t^2 / (3 l^2)
 *   one end    the same beam held at one end: M = q l^2 / 2,
 *              q = s h t^2 / (3 l^2)
 *
 * At a foot the fibres lie in the floor, so tension is across them whichever way the wall runs. At its ends it is across
 * them only in a wall that runs across the grain: others are stronger than this says.
 *
 * Worked: white ash (6.5 N/mm2), 2 mm thick, 16 mm high: at the foot 6.5 x 4 / 96 = 0.27 N/mm; through, 20 mm long and
 * held at both ends 4 x 6.5 x 16 x 4 / 1200 = 1.39 N/mm, at one 0.35 N/mm.
 */
export function breakingLoad(wood: string, wall: SlenderWall, own: OwnWoods = []): number | null {
  const { thickness: t, height: h, length: l, held } = wall;
  overZero('thickness', t, 'mm');
  overZero('height', h, 'mm');
  const tension = strengthOf(wood, own)?.tension;
  if (!tension || held === 'nowhere') return null;
  const s = tension.value / 1000;
  if (held === 'foot') return (s * t * t) / (6 * h);
  overZero('length', l, 'mm');
  return ((held === 'both ends' ? 4 : 1) * s * h * t * t) / (3 * l * l);
}

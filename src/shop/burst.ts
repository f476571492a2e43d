import type { OwnWoods } from './own.js';
import { overZero } from './range.js';
import { strengthOf } from './strength.js';

/** A thin wall of the field between two pockets, or between a pocket and the edge of the piece, mm. */
export interface ThinWall {
  readonly thickness: number;
  /** Above the pocket's floor: the pocket's depth. */
  readonly height: number;
  /** Between the places where thicker wood holds its ends; Infinity where there are none near. */
  readonly length: number;
}

/**
 * Greatest bending stress in a thin wall under a pressure on one side, same unit as the pressure.
 *
 * Estimate, by simple beams (strength of materials, from memory: M = p h^2 / 2 for a cantilever, M = p l^2 / 8 for a
 * beam resting on its ends, stress = 6 M / t^2 for a strip of unit width). The wall stands on the floor and is held at
 * both ends, its top is free: as a strip rooted in the floor 3 p (h/t)^2, as a strip from end to end 0.75 p (l/t)^2.
 * The lesser of the two counts. That is on the safe side of an elastic plate clamped on three edges, whose moments come
 * to at most 0.10 p l^2 at the ends and the cantilever's at the root (worked out by Ritz's method in the tests). Shear
 * rules only where a wall is about four times as thick as high, and is left out.
 */
export function wallStress(wall: ThinWall, pressure: number): number {
  overZero('thickness', wall.thickness, 'mm');
  overZero('height', wall.height, 'mm');
  if (wall.length !== Number.POSITIVE_INFINITY) overZero('length', wall.length, 'mm');
  const up = wall.height / wall.thickness;
  const along = wall.length / wall.thickness;
  return pressure * Math.min(3 * up * up, 0.75 * along * along);
}

/**
 * Pressure of trapped glue at which a thin wall may burst, kPa: where its bending stress comes to the wood's tension
 * perpendicular to the grain, the weakest way whichever way the grain runs. Estimate. Null where that strength is not
 * known.
 *
 * A plug that seals its pocket presses on the glue like a piston, so the load that does it is this pressure x the
 * plug's area: set it against `pressure` in press.ts.
 */
export function burstPressure(wood: string, wall: ThinWall, own: OwnWoods = []): number | null {
  const stress = wallStress(wall, 1);
  const tension = strengthOf(wood, own)?.tension;
  return tension ? tension.value / stress : null;
}

/** Load on a sealed plug of that area (mm2) at which the wall may burst, N. Estimate; null as `burstPressure`. */
export function burstLoad(wood: string, wall: ThinWall, area: number, own: OwnWoods = []): number | null {
  overZero('area', area, 'mm2');
  const kPa = burstPressure(wood, wall, own);
  return kPa === null ? null : (kPa * area) / 1000;
}

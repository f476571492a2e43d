import { atLeastZero, inRange, overZero } from './range.js';

/**
 * One plug in a blind pocket, mm and mm2. Estimates throughout: straight walls, an even gap, nothing soaked up.
 *
 * `perimeter`: length of all walls, holes too. With that of the line midway between pocket and plug the volumes below
 * are exact; with the plug's they are short by pi x clearance^2 x height a part.
 */
export interface Joint {
  readonly perimeter: number;
  /** Of the pocket's floor. */
  readonly area: number;
  readonly depth: number;
  /** Per side. */
  readonly clearance: number;
  /** Left under the plug for glue. */
  readonly glueGap: number;
}

/** Walls, floor and both together: mm2 or mm3. */
export interface Share {
  readonly walls: number;
  readonly floor: number;
  readonly total: number;
}

/**
 * Thickness of a wet coat, mm. From memory: makers of white and yellow glue speak of coats near 6 mil.
 */
export const COAT = 0.15;

/** Area of the pocket to coat, mm2: perimeter x depth, and the floor. */
export function areaToCoat({ perimeter, area, depth }: Joint): Share {
  return share(perimeter * depth, area);
}

/**
 * Volume between plug and pocket, mm3: clearance x wall area of the plug in the pocket (perimeter x (depth - glue
 * gap)), and glue gap x floor.
 */
export function gapVolume(joint: Joint): Share {
  check(joint);
  return share(joint.clearance * joint.perimeter * (joint.depth - joint.glueGap), joint.glueGap * joint.area);
}

export interface Trapped {
  /** Glue put on, mm3: coat x area coated. */
  readonly applied: number;
  /** Air in the pocket as the plug enters its mouth, which must find its way out, mm3. */
  readonly airAtEntry: number;
  /** Glue that the gap at the walls cannot hold, so that it gathers under the plug, mm3. */
  readonly surplus: number;
  /** Room under the plug that the surplus leaves to air, mm3. */
  readonly airLeft: number;
  /** Glue for which there is no room anywhere: it must come out at the mouth, or the plug cannot go down, mm3. */
  readonly squeezedOut: number;
}

/**
 * What a blind pocket traps when its walls and floor are coated `coat` mm thick. Estimate: the plug closes the mouth as
 * it enters, glue fills the gap at the walls first, and what is over works as hydraulics under the plug.
 */
export function trapped(joint: Joint, coat: number): Trapped {
  inRange('coat', coat, atLeastZero('mm'));
  const { walls, floor } = gapVolume(joint);
  const applied = coat * areaToCoat(joint).total;
  const surplus = Math.max(0, applied - walls);
  return {
    applied,
    airAtEntry: Math.max(0, joint.area * joint.depth - applied),
    surplus,
    airLeft: Math.max(0, floor - surplus),
    squeezedOut: Math.max(0, surplus - floor),
  };
}

/**
 * The least glue gap that takes up all the surplus, mm; 0 where the walls hold all of it. From gap x floor = applied -
 * clearance x perimeter x (depth - gap):
 *
 *   gap = (coat (perimeter depth + area) - clearance perimeter depth) / (area - clearance perimeter)
 *
 * Estimate. Null where no gap under the depth does: then use less glue.
 */
export function leastGlueGap(joint: Omit<Joint, 'glueGap'>, coat: number): number | null {
  inRange('coat', coat, atLeastZero('mm'));
  check({ ...joint, glueGap: 0 });
  const { perimeter, area, depth, clearance } = joint;
  const over = coat * (perimeter * depth + area) - clearance * perimeter * depth;
  if (over <= 0) return 0;
  const gap = over / (area - clearance * perimeter);
  return gap >= 0 && gap < depth ? gap : null;
}

function check({ perimeter, area, depth, clearance, glueGap }: Joint): void {
  overZero('perimeter', perimeter, 'mm');
  overZero('area', area, 'mm2');
  overZero('depth', depth, 'mm');
  inRange('clearance', clearance, atLeastZero('mm'));
  inRange('glueGap', glueGap, { min: 0, max: depth, unit: 'mm' });
}

function share(walls: number, floor: number): Share {
  return { walls, floor, total: walls + floor };
}

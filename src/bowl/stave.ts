import { atan2, cos, sin, tan } from '../geometry/trig.js';
import type { Profile } from './profile.js';

/**
 * One stave as it stands in the shell: flat, `thickness` thick, its outer face sloping at `slope` from the horizontal.
 * Vessel: axis upright, z up from where it stands, r away from the axis, angle 0 at the stave's middle. Stave: x across
 * its outer face from the middle, y up along it from z = 0, depth into it square to the face. Millimetres, radians.
 */
export interface Stave {
  readonly sides: number;
  readonly slope: number;
  readonly thickness: number;
  /** From the axis to the outer face's middle line at z = 0. */
  readonly apothem: number;
}

export interface OnStave {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
}

/** Half the angle that a stave takes of the round. */
export function halfAngle({ sides }: Stave): number {
  return sides === 1 ? Math.PI : Math.PI / sides;
}

/** Where a point of the vessel lies in the stave. `angle` from the stave's middle. */
export function toStave({ slope, apothem }: Stave, r: number, angle: number, z: number): OnStave {
  const [c, s] = [cos(slope), sin(slope)];
  const out = r * cos(angle) - apothem;
  return { x: r * sin(angle), y: out * c + z * s, depth: z * c - out * s };
}

/** The same point in space, the stave's middle in front of one who looks along +out: across, outwards and up, mm. */
export function toSpace(
  { slope, apothem }: Stave,
  { x, y, depth }: OnStave,
): { readonly across: number; readonly out: number; readonly up: number } {
  const [c, s] = [cos(slope), sin(slope)];
  return { across: x, out: apothem + y * c - depth * s, up: y * s + depth * c };
}

/** Where a point of the stave lies on the vessel. */
export function toVessel(stave: Stave, at: OnStave): { r: number; angle: number; z: number } {
  const { across, out, up } = toSpace(stave, at);
  return { r: Math.sqrt(out * out + across * across), angle: atan2(across, out), z: up };
}

/** Half the width of the stave at a place along it and a depth: where the joint faces lie. */
export function halfWidth(stave: Stave, y: number, depth: number): number {
  if (stave.sides === 1) return Number.POSITIVE_INFINITY;
  const { slope, apothem } = stave;
  return Math.max(0, apothem + y * cos(slope) - depth * sin(slope)) * tan(halfAngle(stave));
}

/** Points along the line into the wood at which the sign is looked at, before the place is closed in on. */
const LOOKS = 64;
/** Halvings: 2^-44 of a stave's thickness is far below what is written. */
const HALVINGS = 44;

/**
 * How deep under a point of the face a wall's surface lies, mm; below 0 where it stands out of the wood. Null where the
 * line into the wood never meets it between its lower and its upper end.
 */
export function depthOf(stave: Stave, wall: Profile, x: number, y: number): number | null {
  const reach = 3 * stave.thickness + wall.to - wall.from;
  const [c, s] = [cos(stave.slope), sin(stave.slope)];
  // Only where the line's height is one the wall has.
  const least = c > 1e-12 ? Math.max(-reach, (wall.from - y * s) / c) : -reach;
  const most = c > 1e-12 ? Math.min(reach, (wall.to - y * s) / c) : reach;
  if (c <= 1e-12 && (y * s < wall.from - 1e-9 || y * s > wall.to + 1e-9)) return null;
  if (!(most >= least)) return null;
  const beyond = (depth: number): number => {
    const { r, z } = toVessel(stave, { x, y, depth });
    return r - wall.radius(Math.min(wall.to, Math.max(wall.from, z)));
  };
  let a = least;
  let fa = beyond(a);
  if (Math.abs(fa) < 1e-9) return a;
  for (let k = 1; k <= LOOKS; k++) {
    const b = least + ((most - least) * k) / LOOKS;
    const fb = beyond(b);
    if (fa > 0 !== fb > 0) return closedIn(beyond, a, b, fa > 0);
    [a, fa] = [b, fb];
  }
  return Math.abs(fa) < 1e-9 ? a : null;
}

function closedIn(beyond: (d: number) => number, from: number, to: number, positive: boolean): number {
  let [a, b] = [from, to];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (a + b) / 2;
    if (beyond(middle) > 0 === positive) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

import { cos, sin } from '../geometry/trig.js';
import type { Profile } from './profile.js';
import { halfAngle, type Stave } from './stave.js';

/** A turned wall between its outside and its inside, from the floor (or the foot) to the rim. */
export interface Wall {
  readonly outside: Profile;
  readonly inside: Profile;
}

/** Something least or most, and at which height. */
export interface AtHeight {
  readonly mm: number;
  readonly z: number;
}

/** Heights that are looked at, and how often the best one is closed in on after that. */
const HEIGHTS = 400;
const CLOSER = 60;

/** The height at which a smooth figure is greatest. */
export function greatest(from: number, to: number, of: (z: number) => number): AtHeight {
  let best = from;
  for (let k = 0; k <= HEIGHTS; k++) {
    const z = from + ((to - from) * k) / HEIGHTS;
    if (of(z) > of(best)) best = z;
  }
  const step = (to - from) / HEIGHTS;
  let [a, b] = [Math.max(from, best - step), Math.min(to, best + step)];
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let k = 0; k < CLOSER; k++) {
    const [p, q] = [b - golden * (b - a), a + golden * (b - a)];
    if (of(p) >= of(q)) b = q;
    else a = p;
  }
  const z = of((a + b) / 2) >= of(best) ? (a + b) / 2 : best;
  return { mm: of(z), z };
}

/** How far under the outer face the outside of the wall lies, at the stave's middle, where it comes nearest to the face. */
export function over({ slope, apothem }: Stave, outside: Profile): (z: number) => number {
  const [c, s] = [cos(slope), sin(slope)];
  return (z) => z * c - (outside.radius(z) - apothem) * s;
}

/** How deep under the outer face the inside of the wall lies, at the joint, where it lies deepest. */
export function under(stave: Stave, inside: Profile): (z: number) => number {
  const { slope, apothem } = stave;
  const [c, s] = [cos(slope), sin(slope)];
  const joint = cos(halfAngle(stave));
  return (z) => z * c - (inside.radius(z) * joint - apothem) * s;
}

export interface WoodLeft {
  /** Least wood between the face and the wall's outside, mm; below 0: the wall breaks out there. */
  readonly over: AtHeight;
  /** Least wood between the wall's inside and the stave's inner face, mm. */
  readonly under: AtHeight;
  /** The least thickness of stave in which the wall lies with the wood asked for on either side of it, mm. */
  readonly thickness: number;
  /** Least thickness of the wall itself, radially, mm. */
  readonly wall: AtHeight;
}

/** How a wall lies in the wood of its staves. `room` is the wood asked for under the wall, mm. */
export function woodLeft(stave: Stave, { outside, inside }: Wall, room: number): WoodLeft {
  const above = over(stave, outside);
  const below = under(stave, inside);
  const nearest = greatest(outside.from, outside.to, (z) => -above(z));
  const deepest = greatest(inside.from, inside.to, below);
  const thin = greatest(inside.from, inside.to, (z) => inside.radius(z) - outside.radius(z));
  return {
    over: { mm: -nearest.mm, z: nearest.z },
    under: { mm: stave.thickness - deepest.mm, z: deepest.z },
    thickness: deepest.mm + room,
    wall: { mm: -thin.mm, z: thin.z },
  };
}

/** The apothem at which staves of a slope lie just `room` mm outside a wall. */
export function apothemFor(slope: number, outside: Profile, room: number): number {
  const [c, s] = [cos(slope), sin(slope)];
  return greatest(outside.from, outside.to, (z) => (outside.radius(z) * s - z * c + room) / s).mm;
}

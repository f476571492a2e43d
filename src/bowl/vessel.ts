import { Refusal } from '../schema/fault.js';
import type { Values } from '../schema/parameter.js';
import { arc, curve, type Profile, straight } from './profile.js';
import type { Stave } from './stave.js';
import { type AtHeight, apothemFor, greatest, type Wall, type WoodLeft, woodLeft } from './wall.js';

/** A profile as a recipe gives it; diameters, mm. `points`: height and diameter, for a curve. */
export interface ProfileSetup {
  readonly shape: 'straight' | 'arc' | 'curve';
  readonly values: Values;
  readonly points: readonly (readonly [z: number, d: number])[];
}

/** What a recipe says of a vessel: mm, radians. */
export interface BowlSetup {
  /** 1: one flat board. */
  readonly sides: number;
  /** From the horizontal. */
  readonly slope: number;
  readonly height: number;
  /** Of the staves; null: the least that works. */
  readonly thickness: number | null;
  readonly floor: number;
  readonly outside: ProfileSetup;
  /** Null: `wall` inside the outside. */
  readonly inside: ProfileSetup | null;
  readonly wall: number;
  /** The face of the stave that the pocket is cut into. */
  readonly face: 'outside' | 'inside';
  /** Numbers of the staves that carry the inlay, from 1. */
  readonly inlaid: readonly number[];
  /** Wood outside and inside of the finished wall, at least. */
  readonly over: number;
  readonly under: number;
  /** Waste at each end of a stave. */
  readonly trim: number;
  /** Taken off the turned wall by sanding, on each face. */
  readonly sanding: number;
  /** The pattern runs on from stave to stave. */
  readonly continuous: boolean;
  /** Blocks are glued in where the wall would leave the staves. */
  readonly fillers: boolean;
  /** By how much a joint face may be off its angle. */
  readonly angleError: number;
  /** Diameter of the ball cutter that carves the inside; null: none. */
  readonly ball: number | null;
}

/** A vessel with all that follows from its setup. */
export interface Vessel {
  readonly setup: BowlSetup;
  readonly stave: Stave;
  readonly wall: Wall;
  readonly left: WoodLeft;
}

/** Thinner than this a wall is no wall, mm. Common practice, no source. */
const THINNEST = 1;

/** What makes a vessel of a setup. Throws Refusal, with the number that would work. */
export function makeVessel(setup: BowlSetup): Vessel {
  const wall = wallOf(setup);
  const { sides, over, under } = setup;
  // A flat board lies level: its lower face is the outside, its thickness the height of the piece.
  const slope = sides === 1 ? 0 : setup.slope;
  const apothem = sides === 1 ? 0 : apothemFor(slope, wall.outside, over);
  if (sides === 1) {
    const stave = { sides, slope, apothem, thickness: setup.height };
    const thin = thinnest(wall);
    const none: AtHeight = { mm: 0, z: 0 };
    return { setup, stave, wall, left: { over: none, under: none, thickness: setup.height, wall: thin } };
  }
  const bare = { sides, slope, apothem, thickness: 0 };
  const least = woodLeft(bare, wall, under).thickness;
  const thickness = setup.thickness ?? Math.ceil(least - 1e-9);
  const stave = { ...bare, thickness };
  if (thickness < least - 1e-9 && !setup.fillers) {
    const { z } = woodLeft(stave, wall, under).under;
    throw new Refusal(
      'bowl.thickness',
      `staves ${mm(thickness)} thick do not hold the wall: at a height of ${mm(z)} it needs ${mm(up(least))}; make them that thick, or let blocks be glued in (bowl.fillers)`,
    );
  }
  return { setup, stave, wall, left: woodLeft(stave, wall, under) };
}

function wallOf(setup: BowlSetup): Wall {
  const { height, floor, wall: thick } = setup;
  const outside = profileOf(setup.outside, 0, height, 'outside');
  const inside = setup.inside
    ? profileOf(setup.inside, floor, height, 'inside')
    : inner(outside, floor, thick);
  const wall = { outside, inside };
  const small = greatest(floor, height, (z) => -inside.radius(z));
  if (-small.mm < THINNEST)
    throw new Refusal(
      'bowl.inside',
      `the inside closes at a height of ${mm(small.z)}: it has to be at least ${mm(2 * THINNEST)} across everywhere`,
    );
  const thin = thinnest(wall);
  if (thin.mm < THINNEST)
    throw new Refusal(
      'bowl.inside',
      thin.mm < 0
        ? `the inside crosses the outside: at a height of ${mm(thin.z)} it is ${mm(-2 * thin.mm)} wider across; make it ${mm(up(2 * (THINNEST - thin.mm)))} less there`
        : `the wall is ${mm(thin.mm)} thick at a height of ${mm(thin.z)}: leave at least ${mm(THINNEST)}`,
    );
  return wall;
}

function thinnest({ outside, inside }: Wall): AtHeight {
  const { mm: least, z } = greatest(inside.from, inside.to, (at) => inside.radius(at) - outside.radius(at));
  return { mm: -least, z };
}

/** A wall that is as thick everywhere, measured level. */
function inner(outside: Profile, floor: number, thick: number): Profile {
  return {
    from: floor,
    to: outside.to,
    radius: (z) => outside.radius(z) - thick,
    lean: outside.lean,
    hollow: outside.hollow,
  };
}

function profileOf({ shape, values, points }: ProfileSetup, from: number, to: number, of: string): Profile {
  if (shape === 'curve') {
    const [first, last] = [points[0]!, points.at(-1)!];
    if (Math.abs(first[0] - from) > 1e-6 || Math.abs(last[0] - to) > 1e-6)
      throw new Refusal(
        `bowl.${of}`,
        `its points go from a height of ${mm(first[0])} to ${mm(last[0])}: let them go from ${mm(from)} to ${mm(to)}`,
      );
    return curve(points.map(([z, d]) => [z, d / 2]));
  }
  const [bottom, top] = [Number(values.bottom) / 2, Number(values.top) / 2];
  return shape === 'arc' ? arc(from, to, bottom, top, Number(values.belly)) : straight(from, to, bottom, top);
}

function up(value: number): number {
  return Math.ceil(value * 100 - 1e-6) / 100;
}

function mm(value: number): string {
  return `${Number(value.toFixed(2))} mm`;
}

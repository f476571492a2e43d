import type { Pair } from '../../../fit/pair.js';
import type { Region } from '../../../geometry/region.js';
import type { Ball } from '../../../geometry/thicken/balls.js';
import { mirrorX } from '../../../geometry/transform.js';
import { atan2, cos, sin } from '../../../geometry/trig.js';
import type { Outline } from '../../../outline/outline.js';
import { plugHeight, type Recipe } from '../../../recipe/recipe.js';
import { breakingLoad, type Held, SLENDER } from '../../../shop/short-grain.js';
import { bandsOf, runsOf, sharesOf, stretchAbout } from './bands.js';
import { fieldOf } from './field.js';
import { type GrainWall, isSlender, overLimit, slenderLength } from './grain-angle.js';
import { ABREAST, type NarrowPart, narrowParts } from './wall-runs.js';

/** One place of a wall, judged. */
export interface WallPlace {
  readonly at: readonly [number, number];
  /** mm. */
  readonly width: number;
  /** Height over width. */
  readonly slenderness: number;
  /** Between the wall's direction there and the grain, radians, 0 to pi/2. */
  readonly angle: number;
  /** The slenderness that is usual at that angle. */
  readonly limit: number;
  /** Slenderness over that limit: too slender over 1. */
  readonly over: number;
}

/**
 * A thin wall of field (between two pockets, or a pocket and the edge of the face) or limb of plug, mm, in the pocket's
 * coordinates: a stretch of the medial axis between the same two contours.
 */
export interface ThinWall {
  readonly height: number;
  /** Where it is narrowest. */
  readonly least: WallPlace;
  /** Where it is furthest over its limit: the narrowest place, or one where the wall turns across the grain. */
  readonly worst: WallPlace;
  /** Of its axis about the narrowest place, while it is under 1.5 times as wide, mm, to a step of the axis, which is
   * a 37th of the height. It is not followed further than to a width of 0.375 heights. */
  readonly length: number;
  /** Of its axis where it is over its limit, mm. */
  readonly over: number;
  /** Whether that is at least as long as it is wide: then it is too slender. */
  readonly slender: boolean;
  readonly beside: 'pocket' | 'edge' | null;
  /** 0 to 2. */
  readonly freeEnds: number;
  /** Whether it closes on itself, as a ring does. */
  readonly closed: boolean;
  readonly held: Held;
  /** Whether 1.5 to 2 mm of skin under the pocket would hold it better than what is there. */
  readonly skinHolds: boolean;
  /** Side load that would break it at its narrowest, N a mm. Estimate for comparing; null where not known. */
  readonly breaks: number | null;
  /** Where its sides lie nearly abreast, as the grain sees it. */
  readonly seen: GrainWall;
  /** The wall itself between its sides, where it is over its limit. */
  readonly bands: Region;
}

/** Walls and limbs are listed from this slenderness on: three quarters of what is flagged across the grain. Our own choice. */
export const LISTED = 3;

/** A wall counts as one for as long as it is under this many times its least width. Our own choice. */
export const STILL = 1.5;

/** Widest width looked at, in heights: what is flagged right across the grain can be followed to 1.5 times its width. */
const WIDEST = STILL / SLENDER.across;

/** A skin thinner than this gives way, mm. Common practice, no source. */
export const SKIN = 1.5;

interface Known {
  readonly recipe: Recipe;
  readonly walls: readonly ThinWall[];
}

const fields = new WeakMap<Pair, Known>();
const plugs = new WeakMap<Pair, Known>();

/** Once for each pair and recipe: finding, numbers and sheet all ask. */
function once(
  cache: WeakMap<Pair, Known>,
  pair: Pair,
  recipe: Recipe,
  make: () => ThinWall[],
): readonly ThinWall[] {
  const known = cache.get(pair);
  if (known?.recipe === recipe) return known.walls;
  const walls = make().sort((a, b) => Number(b.slender) - Number(a.slender) || b.worst.over - a.worst.over);
  cache.set(pair, { recipe, walls });
  return walls;
}

/** Walls of field from LISTED slenderness on, too slender ones first, those furthest over their limits before others. Not where a pocket runs over the edge. */
export function fieldWalls(recipe: Recipe, outline: Outline, pair: Pair): readonly ThinWall[] {
  return once(fields, pair, recipe, () => {
    const { depth, stock, woods } = recipe;
    const { region, isEdge } = fieldOf(outline, pair.pocket);
    const floor = Math.max(0, stock.field - depth);
    return narrowParts(region, depth * WIDEST).flatMap((part) => {
      const ball = part.balls[part.least]!;
      const rims = Number(isEdge(ball.px, ball.py)) + Number(isEdge(ball.qx, ball.qy));
      // One contour holds both the face's edge and the pocket's: the pocket runs over the edge.
      if (rims === 2 || (rims === 1 && part.sides[0] === part.sides[1])) return [];
      return thinWall(part, {
        height: depth,
        grain: woods.fieldGrain,
        wood: woods.field,
        own: woods.own,
        foot: floor > 1e-9,
        skinHolds: floor < SKIN - 1e-9,
        beside: rims === 1 ? 'edge' : 'pocket',
      });
    });
  });
}

/** Limbs of the plug likewise, a mirrored plug's turned back. A plug on a carrier stands on it; a loose one is cut through. */
export function plugLimbs(recipe: Recipe, pair: Pair): readonly ThinWall[] {
  return once(plugs, pair, recipe, () => {
    const { fit, woods } = recipe;
    const height = plugHeight(recipe);
    const plug = pair.mirrored ? mirrorX(pair.plug) : pair.plug;
    return narrowParts(plug, height * WIDEST).flatMap((part) =>
      thinWall(part, {
        height,
        grain: woods.plugGrain,
        wood: woods.plug,
        own: woods.own,
        foot: fit.plug === 'carrier',
        skinHolds: false,
        beside: null,
      }),
    );
  });
}

interface Setting {
  readonly height: number;
  readonly grain: number;
  readonly wood: string;
  readonly own: Recipe['woods']['own'];
  readonly foot: boolean;
  readonly skinHolds: boolean;
  readonly beside: 'pocket' | 'edge' | null;
}

function thinWall(part: NarrowPart, s: Setting): ThinWall[] {
  const { height, grain } = s;
  if (!(height / part.width > LISTED)) return [];
  const { balls, least } = part;
  const judged = (ball: Ball, width: number, at: readonly [number, number]): WallPlace => {
    const slenderness = height / width;
    const over = overLimit({ slenderness, tx: ball.tx, ty: ball.ty }, grain);
    return { at, width, slenderness, angle: angleTo(ball, grain), limit: slenderness / over, over };
  };
  const places = balls.map((ball, i) =>
    i === least ? judged(ball, part.width, part.at) : judged(ball, 2 * ball.w, [ball.x, ball.y]),
  );
  // About a junction the sides close in and the axis has no direction to speak of.
  const counts = (i: number): boolean => i === least || balls[i]!.facing < ABREAST;
  let worst = places[least]!;
  places.forEach((place, i) => {
    if (counts(i) && place.over > worst.over) worst = place;
  });
  const runs = runsOf(part, (i) => counts(i) && places[i]!.over > 1);
  const shares = sharesOf(part);
  const seen: GrainWall = {
    width: part.width,
    places: balls.flatMap(({ tx, ty }, i) =>
      counts(i) ? [{ slenderness: places[i]!.slenderness, tx, ty, length: shares[i]! }] : [],
    ),
  };
  const length = stretchAbout(part, STILL * part.width);
  const held = heldBy(part, s.foot);
  return [
    {
      height,
      least: places[least]!,
      worst,
      length,
      over: slenderLength(seen, grain),
      slender: isSlender(seen, grain),
      beside: s.beside,
      freeEnds: part.freeEnds,
      closed: part.closed,
      held,
      skinHolds: s.skinHolds,
      breaks: breakingLoad(
        s.wood,
        { thickness: part.width, height, length: Math.max(length, part.width), held },
        s.own,
      ),
      seen,
      bands: bandsOf(part, runs),
    },
  ];
}

function heldBy({ closed, freeEnds }: NarrowPart, foot: boolean): Held {
  if (foot) return 'foot';
  if (closed || freeEnds === 2) return 'nowhere';
  return freeEnds === 1 ? 'one end' : 'both ends';
}

function angleTo({ tx, ty }: Ball, grain: number): number {
  const [c, s] = [cos(grain), sin(grain)];
  return atan2(Math.abs(tx * s - ty * c), Math.abs(tx * c + ty * s));
}

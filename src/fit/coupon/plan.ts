import type { Rule } from '../../cutter/rule.js';
import type { Safe } from '../../cutter/safe.js';
import type { Region } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import { inside } from './box.js';
import { corners } from './corners.js';
import { type Wood, woodRound } from './dots.js';
import { thinnest } from './narrows.js';
import type { Thinness } from './patch.js';
import { longestRun } from './runs.js';
import { type Arrangement, arrangements } from './slicing.js';
import type { Spot } from './spot.js';
import { Window } from './window.js';

/** What a coupon is asked to be. Lengths in mm. */
export interface CouponRequest {
  readonly rule: Rule;
  /** Most width and height of the figure of one step. */
  readonly size: number;
  /** Wood round the figure of each step. */
  readonly edge: number;
  /** How many dots the last step has. */
  readonly dots: number;
}

/** One step of a coupon, lower left corner of its wood at (0, 0), mm. All steps are alike but for dots and clearance. */
export interface StepPlan {
  readonly width: number;
  readonly height: number;
  /** The windows' patterns, cuttable, clearance not yet taken. */
  readonly figure: Region;
  /** Centres of the dots, in the order they are used. */
  readonly dots: readonly (readonly [number, number])[];
  readonly spots: readonly SpotPlan[];
  /** Thinner somewhere than the pattern is anywhere: harder than the piece. */
  readonly harder: boolean;
}

export interface SpotPlan {
  readonly spot: Spot;
  /** Where on the piece it was taken from: the window's middle, mm. */
  readonly from: readonly [number, number];
  /** Is the boundary there the very boundary of the pattern? */
  readonly kept: boolean;
  /** Runs: the length that the window holds, mm. Else null. */
  readonly held: number | null;
}

/** Of the figure's side the part that a straight run may take, a longer one being shown by a stretch: as much as fits. */
const RUN_SHARES = [0.6, 0.4, 0.25] as const;

/** Layouts whose windows are cut before the best so far is taken. */
const MOST_TRIES = 24;

/** The hardest spots of a pattern; a straight run longer than `mostRun` mm by a stretch of it. */
export function hardSpots(region: Region, { r }: Rule, mostRun: number): Spot[] {
  return [
    corners(region, 'pocket', r),
    corners(region, 'plug', r),
    thinnest(region, 'wall', r),
    thinnest(region, 'limb', r),
    longestRun(region, r, mostRun),
  ].filter((s) => s !== null);
}

/** A layout of windows in one step. */
interface Layout {
  readonly windows: readonly Window[];
  readonly arrangement: Arrangement;
}

/**
 * The step with the least wood that holds every hard spot: spots that lie together share a window, others get a window of
 * their own, and windows are packed without being turned. Null when nothing of that size holds them.
 */
export function planStep(safe: Safe, request: CouponRequest): StepPlan | null {
  for (const share of RUN_SHARES) {
    const plan = planOf(hardSpots(safe.region, request.rule, share * request.size), safe, request);
    if (plan) return plan;
  }
  return null;
}

function planOf(spots: readonly Spot[], safe: Safe, request: CouponRequest): StepPlan | null {
  const { rule } = request;
  const pattern = thinness(spots);
  const gap = gapOf(request, pattern);
  const windows = new Map<number, Window>();
  const windowOf = (set: number): Window => {
    const known = windows.get(set);
    if (known) return known;
    const made = new Window(
      spots.filter((_, k) => (set >> k) & 1),
      rule.r,
    );
    windows.set(set, made);
    return made;
  };
  let layout: Layout | null = null;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    layout = bestLayout(spots.length, windowOf, request, gap);
    if (!layout) return null;
    // What is cut takes less room than its window, so the layout is drawn up anew until all of it is cut.
    const uncut = layout.windows.filter((w) => !w.isCut);
    if (uncut.length === 0) break;
    for (const w of uncut) w.cut(safe, rule, pattern);
  }
  if (!layout) return null;
  for (const w of layout.windows) w.cut(safe, rule, pattern);
  return stepOf(layout, request);
}

/** The smallest size, in whole mm, at which a step can hold the spots; null when none up to `most` can. */
export function leastSize(safe: Safe, request: CouponRequest, most: number): number | null {
  for (let size = Math.ceil(request.size); size <= most; size++)
    if (planStep(safe, { ...request, size })) return size;
  return null;
}

function thinness(spots: readonly Spot[]): Thinness {
  const size = (kind: Spot['kind']): number =>
    spots.find((s) => s.kind === kind)?.size ?? Number.POSITIVE_INFINITY;
  return { wall: size('wall'), limb: size('limb') };
}

/** Field left between windows: no weaker than the pattern's own walls, or than the wood at the edge. */
function gapOf({ rule, edge }: CouponRequest, { wall }: Thinness): number {
  return Math.max(2.02 * rule.r, Math.min(wall, edge));
}

function bestLayout(
  spots: number,
  windowOf: (set: number) => Window,
  request: CouponRequest,
  gap: number,
): Layout | null {
  let best: Layout | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const groups of groupings(spots)) {
    const windows = groups.map(windowOf);
    const blocks = windows.map((w) => w.size);
    for (const arrangement of arrangements(blocks, gap, request.size)) {
      const { width, height } = woodOf(arrangement, request);
      const wood = width * height;
      if (wood >= least - 1e-9) continue;
      least = wood;
      best = { windows, arrangement };
    }
  }
  return best;
}

/** Every way to share out n spots among windows: partitions of a set, each window as a set of bits. */
function groupings(n: number): number[][] {
  if (n === 0) return [[]];
  const bit = 1 << (n - 1);
  return groupings(n - 1).flatMap((groups) => [
    ...groups.map((_, k) => groups.map((g, j) => (j === k ? g | bit : g))),
    [...groups, bit],
  ]);
}

function woodOf({ width, height }: Arrangement, { edge, dots, rule }: CouponRequest): Wood {
  return woodRound(width, height, edge, dots, rule.r);
}

function stepOf({ windows, arrangement }: Layout, request: CouponRequest): StepPlan {
  const { r } = request.rule;
  const wood = woodOf(arrangement, request);
  const placed = arrangement.blocks.map(({ block, x, y }) => {
    const w = windows[block]!;
    const b = w.extent;
    return placedRegion(w.patch.region, wood.left + x - b.minX, wood.low + y - b.minY);
  });
  return {
    width: wood.width,
    height: wood.height,
    figure: { contours: placed.flatMap((p) => p.contours) },
    dots: wood.dots,
    spots: windows.flatMap((w) => w.spots.map((spot) => spotPlan(spot, w, r))),
    harder: windows.some((w) => w.patch.harder),
  };
}

function spotPlan(spot: Spot, w: Window, r: number): SpotPlan {
  const held = spot.places.find((p) => inside(p.box, w.box))!;
  const wide = held.box.maxX - held.box.minX - r / 4;
  const high = held.box.maxY - held.box.minY - r / 4;
  return {
    spot,
    from: held.at,
    kept: w.patch.kept,
    held: spot.kind === 'run' ? Math.sqrt(wide * wide + high * high) : null,
  };
}

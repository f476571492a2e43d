import { subtract } from '../boolean.js';
import type { Edge } from '../edge.js';
import { type Contour, circle, contourArea } from '../region.js';
import { stroke, strokeLoops } from '../stroke.js';
import { SPARE } from '../tolerances.js';
import type { Limb } from './limbs.js';
import type { Run } from './runs.js';
import { fitted, step } from './spine.js';
import { runLength } from './stretches.js';

/** A stretch that was made wider: its middle, its length and its least width before, mm. */
export interface Stretched {
  readonly at: [number, number];
  readonly length: number;
  readonly width: number;
}

/** By how much the radii of bands differ that might end at one point, mm. */
const APART = 1.7e-4;

/** Half the width of the k-th band: bands that meet in one point must not share a circle. */
export function radiusOf(r: number, k: number): number {
  return r + SPARE + (k % 3) * APART;
}

/** A point reaches at most this many half-widths out from its bend: to just under 60 degrees. */
const MITER = 2.1;

/** The band of half-width w along a limb. */
export function bandOf(limb: Limb, w: number, miterLimit = MITER): readonly Contour[] {
  const [only] = limb.legs;
  if (limb.legs.length === 1 && only!.length === 1) return [circle(only![0]!.x, only![0]!.y, w)];
  const path: Edge[] = [];
  limb.legs.forEach((leg, i) => {
    const before = limb.bends[limb.closed ? (i + limb.legs.length - 1) % limb.legs.length : i - 1];
    const first = leg[0]!;
    if (before && (i > 0 || limb.closed)) path.push(...step(before.at[0], before.at[1], first.x, first.y));
    path.push(...fitted(leg, limb.closed && limb.bends.length === 0));
    const after = limb.bends[i];
    const last = leg[leg.length - 1]!;
    if (after) path.push(...step(last.x, last.y, after.at[0], after.at[1]));
  });
  const pointed = limb.bends.some((bend) => bend.pointed);
  const style = {
    closed: limb.closed,
    cap: [limb.start.cap, limb.end.cap] as const,
    join: pointed ? ('miter' as const) : ('round' as const),
    miterLimit,
  };
  const clips = [limb.start.clip, limb.end.clip].filter((c) => c !== null);
  if (clips.length === 0) return strokeLoops(path, 2 * w, style);
  const band = subtract(stroke(path, 2 * w, style), { contours: clips });
  // What the clip leaves beyond the end is no part of the band.
  return band.contours.filter((c) => Math.abs(contourArea(c)) > 0.05 * w * w);
}

export function stretched(runs: readonly Run[]): Stretched {
  const balls = runs.flatMap((run) => run.balls);
  const middle = balls[balls.length >> 1]!;
  return {
    at: [middle.x, middle.y],
    length: runs.reduce((sum, run) => sum + runLength(run.balls), 0),
    width: 2 * balls.reduce((least, ball) => Math.min(least, ball.w), Number.POSITIVE_INFINITY),
  };
}

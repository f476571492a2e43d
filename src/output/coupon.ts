import type { Safe } from '../cutter/safe.js';
import type { Board } from '../fit/coupon/board.js';
import type { SpotPlan } from '../fit/coupon/plan.js';
import type { Pair } from '../fit/pair.js';
import type { Box, Contour } from '../geometry/region.js';
import type { Job } from './job.js';

/** One step of a coupon: a pair of its own, in its place on the coupon. mm, the coupon's middle at (0, 0). */
export interface CouponStep {
  /** From 1: the number of its dots. */
  readonly number: number;
  /** Gap per side. */
  readonly clearance: number;
  /** Its wood, on the pocket's drawing. */
  readonly box: Box;
  readonly safe: Safe;
  readonly pair: Pair;
  /** Holes in its margin, on the pocket's drawing. */
  readonly dots: readonly Contour[];
}

/** A trial piece: the hardest spots of a pattern once a step, each step with a clearance of its own. */
export interface Coupon {
  /** The whole coupon as a job. Its recipe is the piece's but for the name. */
  readonly job: Job;
  readonly steps: readonly CouponStep[];
  readonly spots: readonly SpotPlan[];
  /** Most width and height that the figure of a step was given. */
  readonly size: number;
  /** Wood round each figure. */
  readonly edge: number;
  readonly board: Board;
  /** What it stands for. */
  readonly whole: {
    readonly name: string;
    readonly pair: Pair;
    /** The box round its face. */
    readonly box: Box;
  };
}

import { SAW_KERF } from '../fit/coupon/board.js';
import { DOT_DEPTH } from '../fit/coupon/dots.js';
import { type Box, parts } from '../geometry/region.js';
import { cornerRadius, cutterRadius } from '../recipe/recipe.js';
import type { Coupon } from './coupon.js';
import { stepSums, wholeSums } from './coupon-sums.js';
import { jobText, type ProofResult } from './job-text.js';

/** What the proof of a coupon is asked, in the shape that proof/ takes. */
export function couponAsked({ job, steps, edge }: Coupon) {
  const widest = Math.max(...steps.map((s) => s.clearance));
  return {
    radius: cutterRadius(job.recipe.cutter),
    carrier: job.pair.mirrored,
    saw: SAW_KERF,
    // A pocket that gives way for the clearance comes that much nearer to the edge.
    edge: edge - (job.recipe.fit.from === 'plug' ? 0 : widest),
    steps: steps.map(({ box, clearance, number }) => ({ box: corners(box), clearance, dots: number })),
  };
}

/** A coupon's job.json: that of a job, and under `coupon` its steps with their proofs, and the spots it holds. */
export function couponText(coupon: Coupon, proof: ProofResult, steps: readonly ProofResult[]): string {
  return jobText(coupon.job, proof, [], {}, { coupon: couponEntry(coupon, steps) });
}

/** The same for `--json`. Lengths mm, areas mm2, loads N, turns radians. */
export function couponEntry(coupon: Coupon, proofs: readonly ProofResult[]): object {
  const { job, whole, board, size, edge } = coupon;
  return {
    of: whole.name,
    wood: { width: board.width, height: board.height, area: board.width * board.height },
    piece: { area: areaOf(whole.box), wall: wholeSums(coupon).wall },
    size,
    edge,
    kerf: SAW_KERF,
    dots: { radius: cornerRadius(job.recipe.cutter), depth: DOT_DEPTH },
    spots: coupon.spots.map(({ spot, from, kept, held }) => ({
      kind: spot.kind,
      size: spot.size,
      turn: spot.turn,
      places: spot.places.length,
      from,
      kept,
      ...(held === null ? {} : { held }),
    })),
    steps: coupon.steps.map((step, k) => {
      const { plug, wall, crush, limit } = stepSums(coupon, k);
      const proof = proofs[k];
      return {
        step: step.number,
        clearance: step.clearance,
        box: corners(step.box),
        parts: { pocket: parts(step.pair.pocket).length, plug: parts(step.pair.plug).length },
        plugArea: plug,
        wallArea: wall,
        crushLoad: crush,
        pressAtMost: limit,
        ...(proof ? { gap: proof.gap, pocketReach: proof.pocket.reach, plugReach: proof.plug.reach } : {}),
      };
    }),
  };
}

export function areaOf({ minX, minY, maxX, maxY }: Box): number {
  return (maxX - minX) * (maxY - minY);
}

function corners({ minX, minY, maxX, maxY }: Box): readonly [number, number, number, number] {
  return [minX, minY, maxX, maxY];
}

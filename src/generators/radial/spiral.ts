import type { Vector } from '../../geometry/bezier.js';
import { resolve } from '../../geometry/boolean.js';
import { closedChain } from '../../geometry/chain.js';
import { bulged, type Edge, line, reversed } from '../../geometry/edge.js';
import { curveArcs, type Parametric } from '../../geometry/parametric.js';
import { exp, ln } from '../../geometry/power.js';
import type { Region } from '../../geometry/region.js';
import { cos, sin, tan } from '../../geometry/trig.js';

/** A spiral about the origin from radius `from` to radius `to`, mm, while it goes round by `sweep`, radians. */
export interface Spiral {
  readonly kind: 'archimedean' | 'logarithmic';
  readonly from: number;
  readonly to: number;
  readonly sweep: number;
}

/** Radius at t in 0..1 and its first two derivatives. */
export function spiralRadius({ kind, from, to }: Spiral, t: number): [number, number, number] {
  if (kind === 'archimedean') return [from + (to - from) * t, to - from, 0];
  const rate = ln(to / from);
  const r = from * exp(rate * t);
  return [r, rate * r, rate * rate * r];
}

/** Distance between neighbouring ones of n such spirals at the inner end, square to them, mm. */
export function spiralSpacing(spiral: Spiral, n: number): number {
  const [r, dr] = spiralRadius(spiral, 0);
  const round = r * spiral.sweep;
  // Turned by 2 pi / n a spiral moves along its circle; what counts is the part square to it.
  return (((2 * Math.PI * r) / n) * dr) / Math.sqrt(dr * dr + round * round);
}

/** How wide a band along a spiral is, mm: half its width at the inner and the outer end. */
export interface Band {
  readonly half0: number;
  readonly half1: number;
  /** Round ends; else the band runs on beyond the spiral's ends by its width. */
  readonly round: boolean;
}

/** The band along the spiral that begins in direction `angle`. */
export function spiralBand(spiral: Spiral, angle: number, band: Band): Region {
  const { half0, half1, round } = band;
  const slope = half1 - half0;
  const beside = (sign: 1 | -1): Parametric => {
    const frame = (t: number): { c: Vector; d: Vector; normal: Vector; bend: number } => {
      const [r, dr, ddr] = spiralRadius(spiral, t);
      const w = spiral.sweep;
      const x = cos(angle + w * t);
      const y = sin(angle + w * t);
      // First and second derivative in the frame of the radius and the circle.
      const d1 = [dr, r * w] as const;
      const d2 = [ddr - r * w * w, 2 * dr * w] as const;
      const speed = Math.sqrt(d1[0] * d1[0] + d1[1] * d1[1]);
      const d: Vector = [d1[0] * x - d1[1] * y, d1[0] * y + d1[1] * x];
      return {
        c: [r * x, r * y],
        d,
        normal: [-d[1] / speed, d[0] / speed],
        bend: (d1[0] * d2[1] - d1[1] * d2[0]) / (speed * speed * speed),
      };
    };
    return {
      point(t) {
        const { c, normal } = frame(t);
        const h = sign * (half0 + slope * t);
        return [c[0] + h * normal[0], c[1] + h * normal[1]];
      },
      tangent(t) {
        const { d, normal, bend } = frame(t);
        // The normal turns back along the curve as that bends.
        const along = 1 - sign * (half0 + slope * t) * bend;
        return [d[0] * along + sign * slope * normal[0], d[1] * along + sign * slope * normal[1]];
      },
    };
  };
  const pieces = 2 + Math.ceil(Math.abs(spiral.sweep) / (Math.PI / 4));
  const right = curveArcs(beside(-1), 0, 1, pieces);
  const left = curveArcs(beside(1), 0, 1, pieces).map(reversed).reverse();
  const contour = [...right, ...end(right, left, round), ...left, ...end(left, right, round)];
  return resolve([closedChain(contour)], 'nonzero');
}

const QUARTER = tan(Math.PI / 8);

/** From the end of one side to the start of the other: half a circle, or straight edges that run on by the width. */
function end(a: readonly Edge[], b: readonly Edge[], round: boolean): Edge[] {
  const { x1: px, y1: py } = a[a.length - 1]!;
  const { x0: qx, y0: qy } = b[0]!;
  // Square to the line across, outwards.
  const ox = (qy - py) / 2;
  const oy = -(qx - px) / 2;
  const mx = (px + qx) / 2 + ox;
  const my = (py + qy) / 2 + oy;
  if (round) return [bulged(px, py, mx, my, QUARTER), bulged(mx, my, qx, qy, QUARTER)];
  return [
    line(px, py, px + 2 * ox, py + 2 * oy),
    line(px + 2 * ox, py + 2 * oy, qx + 2 * ox, qy + 2 * oy),
    line(qx + 2 * ox, qy + 2 * oy, qx, qy),
  ];
}

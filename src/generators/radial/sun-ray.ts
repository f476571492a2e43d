import type { Vector } from '../../geometry/bezier.js';
import { closedChain } from '../../geometry/chain.js';
import { bulged, type Edge, line, reversed } from '../../geometry/edge.js';
import { curveArcs, type Parametric } from '../../geometry/parametric.js';
import type { Contour } from '../../geometry/region.js';
import { placed } from '../../geometry/transform.js';
import { cos, sin, tan } from '../../geometry/trig.js';

/** A ray along the x axis from radius `from` to radius `to`, mm. */
export interface Ray {
  readonly from: number;
  readonly to: number;
  /** Half its width at the inner and at the outer end. */
  readonly half0: number;
  readonly half1: number;
  /** How far its middle swings to either side at the most, and how many swings there are. */
  readonly wave: number;
  readonly swings: number;
  /** A round outer end; else one along the circle about the middle. */
  readonly round: boolean;
}

/** The ray turned to look in direction `angle`. */
export function sunRay(ray: Ray, angle: number): Contour {
  const { from, to, half0, half1, round } = ray;
  const x0 = Math.sqrt(from * from - half0 * half0);
  const x1 = round ? to - half1 : Math.sqrt(to * to - half1 * half1);
  const outer: Edge[] = round
    ? [bulged(x1, -half1, to, 0, QUARTER), bulged(to, 0, x1, half1, QUARTER)]
    : [bulged(x1, -half1, x1, half1, concentric(half1, to))];
  const inner = bulged(x0, half0, x0, -half0, -concentric(half0, from));
  const left = side(ray, x0, x1, 1).map(reversed).reverse();
  const contour = [...side(ray, x0, x1, -1), ...outer, ...left, inner];
  return placed(closedChain(contour), 0, 0, angle);
}

const QUARTER = tan(Math.PI / 8);

/** Bulge of the arc about the middle that ends `half` to either side of the axis. */
function concentric(half: number, radius: number): number {
  // tan(a / 2) from sin a, where a is half the arc's sweep.
  return half / (radius + Math.sqrt(radius * radius - half * half));
}

/** The side of the ray from x0 outwards to x1: right of the axis for sign -1. */
function side({ half0, half1, wave, swings }: Ray, x0: number, x1: number, sign: 1 | -1): Edge[] {
  const along = x1 - x0;
  const slope = (half1 - half0) / along;
  if (wave === 0) return [line(x0, sign * half0, x1, sign * half1)];
  const turns = (Math.PI * swings) / along;
  // The swing grows with the radius, so that rays leave the hub squarely and walls between them stay even.
  const curve: Parametric = {
    point: (t): Vector => [x0 + t, (wave * t * sin(turns * t)) / along + sign * (half0 + slope * t)],
    tangent: (t): Vector => [
      1,
      (wave * (sin(turns * t) + t * turns * cos(turns * t))) / along + sign * slope,
    ],
  };
  return curveArcs(curve, 0, along, 4 * swings);
}

import { bounds, type Contour, contourArea, reversedContour } from '../../geometry/region.js';
import { type Boundary, boundaryOf } from '../../geometry/thicken/balls.js';
import { clearance } from '../../geometry/thicken/ends.js';
import { gapOf } from '../../geometry/thicken/gaps.js';
import { narrowRuns, type Run } from '../../geometry/thicken/runs.js';
import { runLength, thinStretches } from '../../geometry/thicken/stretches.js';

/** Gaps lie outside the pieces, limbs inside. */
export type Side = 'gap' | 'limb';

/** What of one side is narrower than asked. */
export interface Narrow {
  /** The boundary with the narrow side on the left. */
  readonly boundary: Boundary;
  /** Stretches of the axis whose sides face each other. */
  readonly runs: readonly Run[];
  /** Outer contours of that side that hold no ball as wide as asked and have no stretch either: dots and small holes. */
  readonly dots: readonly Dot[];
}

/** A dot: the number of its contour, and the largest ball found in it, or a point in its middle. */
export interface Dot {
  readonly contour: number;
  readonly at: readonly [number, number];
  /** Radius of the ball there, mm. */
  readonly w: number;
}

/** cos 150 degrees: sides of a limb that close in faster than 30 degrees are a tip and stay. */
const TIP = -0.866;

/** Gaps are followed to their mouths, and round bends, while their sides open by less than this: cos 100 degrees. */
export const OPENING = -0.17;

/** What is under the width asked by less than this is as asked, mm. */
export const NEARLY = 0.01;

/** Limbs shorter than this share of half the width are the rounding of a corner. */
const SHORTEST = 0.25;

/** Narrow places of one side, of sound contours; h: half the width asked, mm. */
export function narrowPlaces(contours: readonly Contour[], h: number, side: Side): Narrow {
  const sided = side === 'gap' ? contours.map(reversedContour) : contours;
  const boundary = boundaryOf(sided);
  const { runs, wide } = narrowRuns(boundary, h, side === 'gap' ? OPENING : TIP);
  const out: Run[] = [];
  const busy = new Set<number>();
  for (const run of thinStretches(runs, h)) {
    const balls = run.closed || side === 'limb' ? run.balls : gapOf(run.balls);
    if (balls.length === 0 || leastOf(balls) > h - NEARLY) continue;
    if (side === 'limb' && !run.closed && runLength(balls) < SHORTEST * h) continue;
    out.push({ balls, closed: run.closed });
    for (const ball of balls) for (const place of [ball.p, ball.q]) busy.add(homeOf(boundary, place));
  }
  const dots = sided.flatMap((c, k): Dot[] => {
    if (wide[k] || busy.has(k) || contourArea(c) <= 0) return [];
    const dot = dotOf(boundary, c, k, runs, h);
    return dot.w > h - NEARLY ? [] : [dot];
  });
  return { boundary, runs: out, dots };
}

/** The largest ball of a small contour: about the best of the axis, of the arcs' own centres, and of its middle. */
function dotOf(b: Boundary, c: Contour, contour: number, runs: readonly Run[], h: number): Dot {
  const box = bounds([c]);
  const places: [number, number][] = [[(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]];
  for (const e of c) if (e.r > 0) places.push([e.cx, e.cy]);
  for (const run of runs)
    for (const ball of run.balls) if (homeOf(b, ball.p) === contour) places.push([ball.x, ball.y]);
  let dot: Dot = { contour, at: places[0]!, w: 0 };
  for (const at of places) {
    const w = clearance(b, at[0], at[1], h);
    if (w > dot.w) dot = { contour, at, w };
  }
  return dot;
}

/** Number of the contour that a place on a boundary is on. */
export function homeOf(b: Boundary, place: number): number {
  return b.home[Math.min(b.home.length - 1, Math.floor(place))]!;
}

/** Least radius of some balls, mm. */
export function leastOf(balls: readonly { readonly w: number }[]): number {
  return balls.reduce((least, ball) => Math.min(least, ball.w), Number.POSITIVE_INFINITY);
}

import { bounds, contains, contourArea, distanceToBoundary, type Region } from '../geometry/region.js';

/** A circle that fits a region, mm. */
export interface Fit {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Radius of what must stay free in the middle: the opening of a ring; else 0. */
  readonly bore: number;
}

/** A circle about the middle of the outline is taken if it has this share of the largest: a figure looks lost elsewhere. */
const HOME = 0.9;

/**
 * The largest circle that fits the region, about the origin if none elsewhere is much larger. Right for convex regions,
 * where depth has one summit. A region with an opening round the origin gives the circles between which it is whole.
 */
export function largestCircle(region: Region): Fit {
  const holes = region.contours.filter((c) => contourArea(c) < 0);
  if (holes.length > 0) {
    const outer = { contours: region.contours.filter((c) => contourArea(c) > 0) };
    const corners = holes.flat().map((e) => Math.sqrt(e.x0 * e.x0 + e.y0 * e.y0));
    return { x: 0, y: 0, radius: distanceToBoundary(outer, 0, 0), bore: Math.max(...corners) };
  }
  const depth = (x: number, y: number): number =>
    contains(region, x, y) ? distanceToBoundary(region, x, y) : -distanceToBoundary(region, x, y);
  const { minX, maxX, minY, maxY } = bounds(region.contours);
  const y = (x: number): number => summit((v) => depth(x, v), minY, maxY);
  const x = summit((u) => depth(u, y(u)), minX, maxX);
  const best = { x, y: y(x) };
  const radius = depth(best.x, best.y);
  const home = depth(0, 0);
  return home > HOME * radius - 1e-6 ? { x: 0, y: 0, radius: home, bore: 0 } : { ...best, radius, bore: 0 };
}

/** Where a function with one summit is highest: ternary search. */
function summit(f: (v: number) => number, from: number, to: number): number {
  let lo = from;
  let hi = to;
  while (hi - lo > 1e-7) {
    const a = lo + (hi - lo) / 3;
    const b = hi - (hi - lo) / 3;
    if (f(a) < f(b)) lo = a;
    else hi = b;
  }
  return (lo + hi) / 2;
}

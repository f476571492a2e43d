import { bounds, contains, distanceToBoundary, type Region } from '../geometry/region.js';

/** A circle that fits a region, mm. */
export interface Fit {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * The largest circle that fits the region, about the origin if none elsewhere is larger; null when the middle of the
 * region's box lies outside it (a ring). Right for convex regions, where depth has one summit.
 */
export function largestCircle(region: Region): Fit | null {
  const depth = (x: number, y: number): number =>
    contains(region, x, y) ? distanceToBoundary(region, x, y) : -distanceToBoundary(region, x, y);
  const { minX, maxX, minY, maxY } = bounds(region.contours);
  if (depth((minX + maxX) / 2, (minY + maxY) / 2) <= 0) return null;
  const y = (x: number): number => summit((v) => depth(x, v), minY, maxY);
  const x = summit((u) => depth(u, y(u)), minX, maxX);
  const best = { x, y: y(x) };
  const radius = depth(best.x, best.y);
  const home = depth(0, 0);
  return home > radius - 1e-6 ? { x: 0, y: 0, radius: home } : { ...best, radius };
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

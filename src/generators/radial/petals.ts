import { bulgedContour, type Contour } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';

/** A lens of two arcs from radius `from` to `to` along direction `angle`, `width` mm across its middle. */
export function petal(from: number, to: number, width: number, angle: number): Contour {
  const c = cos(angle);
  const s = sin(angle);
  // Bulge is sagitta over half the chord.
  const bulge = width / (to - from);
  return bulgedContour([
    { x: from * c, y: from * s, bulge },
    { x: to * c, y: to * s, bulge },
  ]);
}

/**
 * The width at which n such petals come no nearer to each other than `gap`: half of it from the line midway between
 * two. Never wider than long. Found by bisection, since a wider petal is nowhere further away.
 */
export function widestPetal(n: number, from: number, to: number, gap: number): number {
  const c = cos(Math.PI / n);
  const s = sin(Math.PI / n);
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  const clear = (width: number): boolean => {
    // The arc that bulges towards the line y = x tan(pi / n): a circle of radius r, centre (middle, -below).
    const sagitta = width / 2;
    const r = (half * half + sagitta * sagitta) / (2 * sagitta);
    const below = r - sagitta;
    const toLine = middle * s + below * c;
    // Its nearest point to the line, if the petal has it; else a tip is nearest.
    const along = middle - r * s;
    const onPetal = along > from && along < to;
    return (onPetal ? toLine - r : from * s) >= gap / 2;
  };
  let lo = 0;
  let hi = to - from;
  if (clear(hi)) return hi;
  for (let k = 0; k < 50; k++) {
    const mid = (lo + hi) / 2;
    if (clear(mid)) lo = mid;
    else hi = mid;
  }
  return lo;
}

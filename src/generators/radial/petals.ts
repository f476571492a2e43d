import { halveTangent } from '../../geometry/edge.js';
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

/** A drop: a point at radius `from` and the circle that its two straight sides run into, out to radius `to`. */
export interface Drop {
  readonly from: number;
  readonly to: number;
  /** Radius of the round end, mm. */
  readonly round: number;
}

/** Widest of n drops that come no nearer to each other than `gap`; `round` is not positive when none does. */
export function widestDrop(n: number, from: number, to: number, gap: number): Drop {
  const s = sin(Math.PI / n);
  // The circle touches both the line gap / 2 off the middle between two drops and the circle of radius `to`.
  const centre = (to + gap / 2) / (1 + s);
  // A drop is the hull of its point and its circle, so it keeps the gap where both do.
  return { from, to, round: from * s >= gap / 2 ? Math.min(to - centre, 0.45 * (to - from)) : 0 };
}

export function drop({ from, to, round }: Drop, angle: number): Contour {
  const c = cos(angle);
  const s = sin(angle);
  const centre = to - round;
  const reach = centre - from;
  // Where the sides touch the circle: sin of half the point angle is round / reach.
  const sine = round / reach;
  const cosine = Math.sqrt(1 - sine * sine);
  const along = centre - round * sine;
  const out = round * cosine;
  const at = (x: number, y: number, bulge: number): { x: number; y: number; bulge: number } => ({
    x: x * c - y * s,
    y: x * s + y * c,
    bulge,
  });
  // The round end in two arcs that meet at its top; each turns through a right angle and half the point angle.
  const half = halveTangent((1 + sine) / cosine);
  return bulgedContour([at(from, 0, 0), at(along, -out, half), at(to, 0, half), at(along, out, 0)]);
}

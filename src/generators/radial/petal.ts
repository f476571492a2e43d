import { halveTangent } from '../../geometry/edge.js';
import { bulgedContour, type Contour, polygon } from '../../geometry/region.js';
import { atan2, cos, sin, tan } from '../../geometry/trig.js';
import { polar, turned } from './polar.js';

/** Narrower petals than this are no petals, mm. */
export const LEAST = 0.2;

/** A lens of two arcs from radius `from` to `to` along direction `angle`, `width` mm across its middle. */
export function petal(from: number, to: number, width: number, angle: number): Contour {
  return lens(polar(from, angle), polar(to, angle), width);
}

/** A lens of two arcs from p to q, `width` mm across its middle. */
export function lens(p: readonly [number, number], q: readonly [number, number], width: number): Contour {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  // Bulge is sagitta over half the chord.
  const bulge = width / Math.sqrt(dx * dx + dy * dy);
  return bulgedContour([
    { x: p[0], y: p[1], bulge },
    { x: q[0], y: q[1], bulge },
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

/** A heart: a point at radius `from`, two straight sides, and two round lobes that touch the circle of radius `to`. */
export interface Heart {
  readonly from: number;
  readonly to: number;
  /** Radius of a lobe, mm. */
  readonly lobe: number;
}

/** How far a lobe's middle lies off the heart's axis, in lobe radii: under 1, so that the lobes overlap. */
const LOBES_APART = 0.88;

/** How far out the middles of the lobes lie, mm. */
function lobesOut({ to, lobe }: Heart): number {
  const off = LOBES_APART * lobe;
  return Math.sqrt((to - lobe) * (to - lobe) - off * off);
}

/** Widest of n hearts that come no nearer to each other than `gap`; `lobe` is 0 when none does. */
export function widestHeart(n: number, from: number, to: number, gap: number): Heart {
  const s = sin(Math.PI / n);
  const c = cos(Math.PI / n);
  const clear = (lobe: number): boolean => {
    const out = lobesOut({ from, to, lobe });
    return out * s - LOBES_APART * lobe * c >= lobe + gap / 2;
  };
  if (from * s < gap / 2) return { from, to, lobe: 0 };
  let lo = 0;
  let hi = 0.3 * (to - from);
  for (let k = 0; k < 50 && hi - lo > 1e-9; k++) {
    const mid = k === 0 ? hi : (lo + hi) / 2;
    if (clear(mid)) lo = mid;
    else hi = mid;
  }
  return { from, to, lobe: lo };
}

export function heart(shape: Heart, angle: number): Contour {
  const { from, lobe } = shape;
  const out = lobesOut(shape);
  const off = LOBES_APART * lobe;
  // The side from the point touches the lobe; seen from the point, the lobe's middle lies `slant` off the axis and
  // the lobe is `half` wide.
  const reach = Math.sqrt((out - from) * (out - from) + off * off);
  const slant = atan2(off, out - from);
  const sine = lobe / reach;
  const half = atan2(sine, Math.sqrt(1 - sine * sine));
  const side = slant + half;
  const touch = Math.sqrt(reach * reach - lobe * lobe);
  const cleft = out + lobe * Math.sqrt(1 - LOBES_APART * LOBES_APART);
  // From where the side touches, a quarter turn off its direction, round to the cleft.
  const sweep = Math.PI / 2 + side + atan2(LOBES_APART, Math.sqrt(1 - LOBES_APART * LOBES_APART));
  const bulge = tan(sweep / 4);
  const tx = from + touch * cos(side);
  const ty = touch * sin(side);
  return bulgedContour(
    [
      { x: from, y: 0, bulge: 0 },
      { x: tx, y: -ty, bulge },
      { x: cleft, y: 0, bulge },
      { x: tx, y: ty, bulge: 0 },
    ].map((p) => {
      const [x, y] = turned([p.x, p.y], angle);
      return { x, y, bulge: p.bulge };
    }),
  );
}

/** A rhomb from radius `from` to `to` along direction `angle`, `width` mm across its middle. */
export function rhomb(from: number, to: number, width: number, angle: number): Contour {
  const middle = (from + to) / 2;
  const corners: [number, number][] = [
    [from, 0],
    [middle, -width / 2],
    [to, 0],
    [middle, width / 2],
  ];
  return polygon(corners.map((p) => turned(p, angle)));
}

/** Widest of n rhombs that come no nearer to each other than `gap`, never wider than long; 0 when none does. */
export function widestRhomb(n: number, from: number, to: number, gap: number): number {
  const s = sin(Math.PI / n);
  const c = cos(Math.PI / n);
  // The side corners stand gap / 2 off the line midway between two.
  const most = from * s < gap / 2 ? 0 : (2 * (((from + to) / 2) * s - gap / 2)) / c;
  return Math.min(most, to - from);
}

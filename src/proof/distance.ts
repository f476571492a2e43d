import { CX, CY, onArc, R, U0X, U0Y, U1X, U1Y, WIDE, X0, X1, Y0, Y1 } from './edge-index.js';

/*
 * Least distance between two pieces (see edge-index.ts), in closed form. It is taken on at an end of one of them,
 * or where both have the same normal inside (for two circles: on the line of centres; for a line and a circle: on
 * the perpendicular through the centre), or it is 0 where they cross. Every value tried is the distance of two
 * points that do lie on the pieces, so too many candidates can do no harm.
 */

/** Squared distance from a point to the piece at `o`. */
export function pointToPiece2(x: number, y: number, p: Float64Array, o: number): number {
  const ax = x - p[o + X0]!;
  const ay = y - p[o + Y0]!;
  const bx = x - p[o + X1]!;
  const by = y - p[o + Y1]!;
  const r = p[o + R]!;
  if (r < 0) {
    const ux = p[o + U0X]!;
    const uy = p[o + U0Y]!;
    if (ax * ux + ay * uy > 0 && bx * ux + by * uy < 0) {
      const off = ux * ay - uy * ax;
      return off * off;
    }
  } else {
    const vx = x - p[o + CX]!;
    const vy = y - p[o + CY]!;
    if (onArc(p, o, vx, vy)) {
      const off = Math.sqrt(vx * vx + vy * vy) - r;
      return off * off;
    }
  }
  const a = ax * ax + ay * ay;
  const b = bx * bx + by * by;
  return Math.min(a, b);
}

/**
 * Squared least distance between the piece at `i` of `p` and the piece at `j` of `q`. Any value below `enough` may
 * be returned as soon as it is found, for callers who only ask whether the pieces are nearer than that.
 */
export function pieceToPiece2(
  p: Float64Array,
  i: number,
  q: Float64Array,
  j: number,
  enough: number,
): number {
  let best = pointToPiece2(p[i + X0]!, p[i + Y0]!, q, j);
  if (best < enough) return best;
  let d = pointToPiece2(p[i + X1]!, p[i + Y1]!, q, j);
  if (d < best) best = d;
  if (best < enough) return best;
  d = pointToPiece2(q[j + X0]!, q[j + Y0]!, p, i);
  if (d < best) best = d;
  if (best < enough) return best;
  d = pointToPiece2(q[j + X1]!, q[j + Y1]!, p, i);
  if (d < best) best = d;
  if (best < enough) return best;
  if (p[i + R]! < 0) d = q[j + R]! < 0 ? lineLine2(p, i, q, j) : lineArc2(p, i, q, j);
  else d = q[j + R]! < 0 ? lineArc2(q, j, p, i) : arcArc2(p, i, q, j);
  return Math.min(d, best);
}

/** 0 when two segments cross, else Infinity. */
function lineLine2(p: Float64Array, i: number, q: Float64Array, j: number): number {
  const px = p[i + U0X]!;
  const py = p[i + U0Y]!;
  const qx = q[j + U0X]!;
  const qy = q[j + U0Y]!;
  const a = px * (q[j + Y0]! - p[i + Y0]!) - py * (q[j + X0]! - p[i + X0]!);
  const b = px * (q[j + Y1]! - p[i + Y0]!) - py * (q[j + X1]! - p[i + X0]!);
  if (a > 0 === b > 0) return Infinity;
  const c = qx * (p[i + Y0]! - q[j + Y0]!) - qy * (p[i + X0]! - q[j + X0]!);
  const d = qx * (p[i + Y1]! - q[j + Y0]!) - qy * (p[i + X1]! - q[j + X0]!);
  return c > 0 === d > 0 ? Infinity : 0;
}

/** Distance along the perpendicular through the centre, or 0 when they cross. */
function lineArc2(l: Float64Array, i: number, a: Float64Array, j: number): number {
  const ux = l[i + U0X]!;
  const uy = l[i + U0Y]!;
  const dx = a[j + CX]! - l[i + X0]!;
  const dy = a[j + CY]! - l[i + Y0]!;
  const along = dx * ux + dy * uy;
  const length = (l[i + X1]! - l[i + X0]!) * ux + (l[i + Y1]! - l[i + Y0]!) * uy;
  const r = a[j + R]!;
  // From the centre to its foot on the line.
  const fx = along * ux - dx;
  const fy = along * uy - dy;
  const f2 = fx * fx + fy * fy;
  if (f2 >= r * r) {
    if (along < 0 || along > length || !onArc(a, j, fx, fy)) return Infinity;
    const off = Math.sqrt(f2) - r;
    return off * off;
  }
  const h = Math.sqrt(r * r - f2);
  if (along - h >= 0 && along - h <= length && onArc(a, j, fx - h * ux, fy - h * uy)) return 0;
  if (along + h >= 0 && along + h <= length && onArc(a, j, fx + h * ux, fy + h * uy)) return 0;
  return Infinity;
}

/** Distance along the line of centres, or 0 when they cross. */
function arcArc2(p: Float64Array, i: number, q: Float64Array, j: number): number {
  const dx = q[j + CX]! - p[i + CX]!;
  const dy = q[j + CY]! - p[i + CY]!;
  const c2 = dx * dx + dy * dy;
  const rp = p[i + R]!;
  const rq = q[j + R]!;
  if (c2 < 1e-24) return Infinity;
  const c = Math.sqrt(c2);
  if (c > rp + rq) {
    if (!onArc(p, i, dx, dy) || !onArc(q, j, -dx, -dy)) return Infinity;
    return (c - rp - rq) * (c - rp - rq);
  }
  if (c < rp - rq) {
    if (!onArc(p, i, dx, dy) || !onArc(q, j, dx, dy)) return Infinity;
    return (rp - c - rq) * (rp - c - rq);
  }
  if (c < rq - rp) {
    if (!onArc(p, i, -dx, -dy) || !onArc(q, j, -dx, -dy)) return Infinity;
    return (rq - c - rp) * (rq - c - rp);
  }
  // The circles cross at distance x along the line of centres, y to either side of it.
  const x = (c2 + rp * rp - rq * rq) / (2 * c);
  const y2 = rp * rp - x * x;
  const y = y2 > 0 ? Math.sqrt(y2) : 0;
  const ax = (x * dx) / c;
  const ay = (x * dy) / c;
  const bx = (-y * dy) / c;
  const by = (y * dx) / c;
  if (onArc(p, i, ax + bx, ay + by) && onArc(q, j, ax + bx - dx, ay + by - dy)) return 0;
  if (onArc(p, i, ax - bx, ay - by) && onArc(q, j, ax - bx - dx, ay - by - dy)) return 0;
  return Infinity;
}

/**
 * The point a share s of the way along a piece, from its first end (of an arc: the clockwise one) to its other.
 * Halves of an arc are exact; between them the share is of the chords, which is near enough for sampling.
 */
export function pointAlong(p: Float64Array, o: number, s: number): [number, number] {
  const r = p[o + R]!;
  if (r < 0) {
    return [p[o + X0]! + (p[o + X1]! - p[o + X0]!) * s, p[o + Y0]! + (p[o + Y1]! - p[o + Y0]!) * s];
  }
  const ax = p[o + U0X]!;
  const ay = p[o + U0Y]!;
  const bx = p[o + U1X]!;
  const by = p[o + U1Y]!;
  // Direction of the arc's middle; a quarter turn on from the start when the ends lie opposite each other.
  let mx = ax + bx;
  let my = ay + by;
  let l = Math.sqrt(mx * mx + my * my);
  if (l < 1e-4) {
    mx = by - ay;
    my = ax - bx;
    l = Math.sqrt(mx * mx + my * my);
    if (mx * -ay + my * ax < 0) l = -l;
  } else if (p[o + WIDE] === 1) l = -l;
  mx /= l;
  my /= l;
  const f = s < 0.5 ? 2 * s : 2 - 2 * s;
  const vx = (s < 0.5 ? ax : bx) * (1 - f) + mx * f;
  const vy = (s < 0.5 ? ay : by) * (1 - f) + my * f;
  const v = Math.sqrt(vx * vx + vy * vy) || 1;
  return [p[o + CX]! + (r * vx) / v, p[o + CY]! + (r * vy) / v];
}

/** The point of the piece at `o` of `p` nearest to the piece at `i` of `q`, found by narrowing down samples. */
export function nearestOn(p: Float64Array, o: number, q: Float64Array, i: number): [number, number] {
  let [low, high, at] = [0, 1, 0];
  for (let round = 0; round < 8; round++) {
    let least = Infinity;
    const step = (high - low) / 32;
    const from = low;
    for (let k = 0; k <= 32; k++) {
      const [x, y] = pointAlong(p, o, from + step * k);
      const d = pointToPiece2(x, y, q, i);
      if (d < least) {
        least = d;
        at = from + step * k;
      }
    }
    low = at > step ? at - step : 0;
    high = Math.min(at + step, 1);
  }
  return pointAlong(p, o, at);
}

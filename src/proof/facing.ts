import { CX, CY, onArc, R, STRIDE, U0X, U0Y, U1X, U1Y, WIDE, X0, X1, Y0, Y1 } from './edge-index.js';

/*
 * A piece faces an edge where it lies between the normals at the edge's ends. There its distance is measured along
 * the edge's own normals, that is from the whole line or circle, and how far it gets is known in closed form.
 */

/** Least of n.v over the points v of the piece at `o`, seen from (x, y); n a unit vector. */
function leastAlong(p: Float64Array, o: number, nx: number, ny: number, x: number, y: number): number {
  const a = nx * (p[o + X0]! - x) + ny * (p[o + Y0]! - y);
  const b = nx * (p[o + X1]! - x) + ny * (p[o + Y1]! - y);
  const ends = Math.min(a, b);
  if (p[o + R]! < 0 || !onArc(p, o, -nx, -ny)) return ends;
  return nx * (p[o + CX]! - x) + ny * (p[o + CY]! - y) - p[o + R]!;
}

/** How far the piece at `o` of `p` stays on the edge's side of the normal at the edge's start; negative beyond it. */
export function pastStart(p: Float64Array, o: number, q: Float64Array, j: number, turn: number): number {
  if (q[j + R]! < 0) return leastAlong(p, o, q[j + U0X]!, q[j + U0Y]!, q[j + X0]!, q[j + Y0]!);
  return turn > 0 ? fromFirst(p, o, q, j) : fromLast(p, o, q, j);
}

/** The same for the normal at the edge's end. `turn`: the sign of the edge's radius, 0 for a straight one. */
export function pastEnd(p: Float64Array, o: number, q: Float64Array, j: number, turn: number): number {
  if (q[j + R]! < 0) return leastAlong(p, o, -q[j + U0X]!, -q[j + U0Y]!, q[j + X1]!, q[j + Y1]!);
  return turn > 0 ? fromLast(p, o, q, j) : fromFirst(p, o, q, j);
}

function fromFirst(p: Float64Array, o: number, q: Float64Array, j: number): number {
  return leastAlong(p, o, -q[j + U0Y]!, q[j + U0X]!, q[j + CX]!, q[j + CY]!);
}

function fromLast(p: Float64Array, o: number, q: Float64Array, j: number): number {
  return leastAlong(p, o, q[j + U1Y]!, -q[j + U1X]!, q[j + CX]!, q[j + CY]!);
}

/** Greatest distance of the piece at `o` from the whole line or circle of the edge at `j`. */
export function carrierMost(p: Float64Array, o: number, q: Float64Array, j: number): number {
  const r = q[j + R]!;
  return r < 0 ? fromLine(p, o, q, j) : fromCircle(p, o, q[j + CX]!, q[j + CY]!, r);
}

/** Greatest distance of the piece at `o` from a point. */
export function pointMost(p: Float64Array, o: number, x: number, y: number): number {
  return fromCircle(p, o, x, y, 0);
}

function fromLine(p: Float64Array, o: number, q: Float64Array, j: number): number {
  const nx = -q[j + U0Y]!;
  const ny = q[j + U0X]!;
  const low = leastAlong(p, o, nx, ny, q[j + X0]!, q[j + Y0]!);
  const high = -leastAlong(p, o, -nx, -ny, q[j + X0]!, q[j + Y0]!);
  return Math.max(-low, high);
}

function fromCircle(p: Float64Array, o: number, cx: number, cy: number, radius: number): number {
  const ax = p[o + X0]! - cx;
  const ay = p[o + Y0]! - cy;
  const bx = p[o + X1]! - cx;
  const by = p[o + Y1]! - cy;
  let high = Math.sqrt(ax * ax + ay * ay);
  let low = Math.sqrt(bx * bx + by * by);
  if (low > high) [low, high] = [high, low];
  const r = p[o + R]!;
  if (r < 0) {
    const ux = p[o + U0X]!;
    const uy = p[o + U0Y]!;
    if (ax * ux + ay * uy < 0 && bx * ux + by * uy > 0) {
      const foot = ax * uy - ay * ux;
      low = foot < 0 ? -foot : foot;
    }
  } else {
    const dx = p[o + CX]! - cx;
    const dy = p[o + CY]! - cy;
    const d = Math.sqrt(dx * dx + dy * dy);
    if (onArc(p, o, dx, dy)) high = d + r;
    if (onArc(p, o, -dx, -dy)) low = d > r ? d - r : r - d;
  }
  return Math.max(high - radius, radius - low);
}

/** Writes the two halves of the piece at `o` to `a` and `b` of the same array. */
export function halve(p: Float64Array, o: number, a: number, b: number): void {
  p.copyWithin(a, o, o + STRIDE);
  p.copyWithin(b, o, o + STRIDE);
  if (p[o + R]! < 0) {
    p[a + X1] = p[b + X0] = (p[o + X0]! + p[o + X1]!) / 2;
    p[a + Y1] = p[b + Y0] = (p[o + Y0]! + p[o + Y1]!) / 2;
    return;
  }
  let mx = p[o + U0X]! + p[o + U1X]!;
  let my = p[o + U0Y]! + p[o + U1Y]!;
  if (mx * mx + my * my < 1e-8) {
    // Ends opposite each other: the middle is a quarter turn on.
    mx = p[o + U1Y]! - p[o + U0Y]!;
    my = p[o + U0X]! - p[o + U1X]!;
  } else if (p[o + WIDE] === 1) {
    mx = -mx;
    my = -my;
  }
  const l = Math.sqrt(mx * mx + my * my);
  mx /= l;
  my /= l;
  const r = p[o + R]!;
  p[a + WIDE] = p[b + WIDE] = 0;
  p[a + U1X] = p[b + U0X] = mx;
  p[a + U1Y] = p[b + U0Y] = my;
  const x = p[o + CX]! + r * mx;
  const y = p[o + CY]! + r * my;
  // The ends in counter-clockwise order, whichever way the edge is travelled: order does not matter to a distance.
  p[a + X0] = p[o + CX]! + r * p[o + U0X]!;
  p[a + Y0] = p[o + CY]! + r * p[o + U0Y]!;
  p[b + X1] = p[o + CX]! + r * p[o + U1X]!;
  p[b + Y1] = p[o + CY]! + r * p[o + U1Y]!;
  p[a + X1] = p[b + X0] = x;
  p[a + Y1] = p[b + Y0] = y;
}

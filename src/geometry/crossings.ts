import { type Edge, parameterEnd, pointParameter } from './edge.js';
import { distanceToEdge } from './region.js';
import { ON_EDGE } from './tolerances.js';

/**
 * Where two edges meet: calls `at(x, y)` for every crossing, touching point, and end of one that lies on the other
 * (which also marks the ends of stretches they share). Points off either edge by more than ON_EDGE do not count.
 */
export function crossings(a: Edge, b: Edge, at: (x: number, y: number) => void): void {
  const both = (x: number, y: number): void => {
    if (onEdge(a, x, y) && onEdge(b, x, y)) at(x, y);
  };
  // An edge's end lies on that edge: the other one is asked first, since it mostly says no.
  if (onEdge(b, a.x0, a.y0)) both(a.x0, a.y0);
  if (onEdge(b, a.x1, a.y1)) both(a.x1, a.y1);
  both(b.x0, b.y0);
  both(b.x1, b.y1);
  if (a.r === 0 && b.r === 0) lineLine(a, b, both);
  else if (a.r === 0) lineArc(a, b, both);
  else if (b.r === 0) lineArc(b, a, both);
  else arcArc(a, b, both);
}

/** Whether two edges meet anywhere. */
export function meet(a: Edge, b: Edge): boolean {
  let met = false;
  crossings(a, b, () => {
    met = true;
  });
  return met;
}

function onEdge(e: Edge, x: number, y: number): boolean {
  return !(e.r === 0 && offBox(e, x, y)) && distanceToEdge(e, x, y) <= ON_EDGE;
}

/** Is the point beside a segment's box, by more than rounding? It is then off the segment, and that is quicker to see. */
function offBox(e: Edge, x: number, y: number): boolean {
  const over = 2 * ON_EDGE;
  if (e.x0 < e.x1 ? x < e.x0 - over || x > e.x1 + over : x < e.x1 - over || x > e.x0 + over) return true;
  return e.y0 < e.y1 ? y < e.y0 - over || y > e.y1 + over : y < e.y1 - over || y > e.y0 + over;
}

type Hit = (x: number, y: number) => void;

function lineLine(a: Edge, b: Edge, hit: Hit): void {
  const ax = a.x1 - a.x0;
  const ay = a.y1 - a.y0;
  const bx = b.x1 - b.x0;
  const by = b.y1 - b.y0;
  const cross = ax * by - ay * bx;
  if (cross === 0) return;
  const t = ((b.x0 - a.x0) * by - (b.y0 - a.y0) * bx) / cross;
  if (t > -0.01 && t < 1.01) hit(a.x0 + ax * t, a.y0 + ay * t);
}

function lineArc(l: Edge, c: Edge, hit: Hit): void {
  const dx = l.x1 - l.x0;
  const dy = l.y1 - l.y0;
  const len = Math.sqrt(dx * dx + dy * dy);
  if (len === 0) return;
  const ux = dx / len;
  const uy = dy / len;
  const along = (c.cx - l.x0) * ux + (c.cy - l.y0) * uy;
  const away = (c.cx - l.x0) * uy - (c.cy - l.y0) * ux;
  // Not the difference of squares, which a large radius leaves few digits of.
  const radius = Math.abs(c.r);
  const h2 = (radius - away) * (radius + away);
  // A line that passes the circle by less than ON_EDGE, or dips into it by no more, touches it: where it would cross
  // is only sure to the root of that, but where it touches is sure to the last digits.
  const touch = 2 * radius * ON_EDGE;
  if (h2 < -touch) return;
  const h = h2 < touch ? 0 : Math.sqrt(h2);
  if (h === 0) {
    hit(l.x0 + ux * along, l.y0 + uy * along);
    return;
  }
  for (const t of [along - h, along + h]) {
    // One step of Newton's: with a large radius the root above has lost the digits that a point needs.
    const x = l.x0 + ux * t - c.cx;
    const y = l.y0 + uy * t - c.cy;
    const distance = Math.sqrt(x * x + y * y);
    const exact = t - ((distance - radius) * distance) / (x * ux + y * uy);
    hit(l.x0 + ux * exact, l.y0 + uy * exact);
  }
}

function arcArc(e: Edge, f: Edge, hit: Hit): void {
  // From the smaller circle: of a distance along the larger one's radius few digits would be left.
  const [a, b] = Math.abs(e.r) <= Math.abs(f.r) ? [e, f] : [f, e];
  const p = Math.abs(a.r);
  const q = Math.abs(b.r);
  const dx = b.cx - a.cx;
  const dy = b.cy - a.cy;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d < ON_EDGE || d > p + q + ON_EDGE || d < q - p - ON_EDGE) return;
  const along = (p * p + (d - q) * (d + q)) / (2 * d);
  // As with a line: circles that dip into each other, or come out of each other, by no more than ON_EDGE touch.
  const touch = p + q - d < ON_EDGE || d - (q - p) < ON_EDGE;
  const h = touch ? 0 : Math.sqrt(Math.max(0, (p - along) * (p + along)));
  const mx = a.cx + (dx * along) / d;
  const my = a.cy + (dy * along) / d;
  if (h === 0) {
    hit(mx, my);
    return;
  }
  refined(a, b, mx - (dy * h) / d, my + (dx * h) / d, hit);
  refined(a, b, mx + (dy * h) / d, my - (dx * h) / d, hit);
}

/** The crossing of two circles near a point, by a step of Newton's: large radii cost the formula the last digits. */
function refined(a: Edge, b: Edge, x: number, y: number, hit: Hit): void {
  const ax = x - a.cx;
  const ay = y - a.cy;
  const bx = x - b.cx;
  const by = y - b.cy;
  const la = Math.sqrt(ax * ax + ay * ay);
  const lb = Math.sqrt(bx * bx + by * by);
  const cross = (ax * by - ay * bx) / (la * lb);
  const fa = la - Math.abs(a.r);
  const fb = lb - Math.abs(b.r);
  if (Math.abs(cross) < 1e-7) hit(x, y);
  else hit(x - ((fa * by) / lb - (fb * ay) / la) / cross, y - ((fb * ax) / la - (fa * bx) / lb) / cross);
}

/** A place where an edge is cut: its parameter along the edge, and the point itself. */
export interface Cut {
  readonly t: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Where points (x, y, x, y ...) cut an edge, in order, strictly between its ends, near-doubles merged. The points are
 * kept as given: two edges that cross share their crossing to the last digit, though an arc may run past it by rounding.
 */
export function cutsAlong(e: Edge, points: readonly number[]): Cut[] {
  const end = parameterEnd(e);
  const atLeast = e.r === 0 ? ON_EDGE : ON_EDGE / Math.abs(e.r);
  const within: Cut[] = [];
  for (let k = 0; k < points.length; k += 2) {
    const [x, y] = [points[k]!, points[k + 1]!];
    const t = pointParameter(e, x, y);
    if (t > atLeast && t < end - atLeast) within.push({ t, x, y });
  }
  if (within.length < 2) return within;
  within.sort((p, q) => p.t - q.t);
  let last = Number.NEGATIVE_INFINITY;
  return within.filter(({ t }) => {
    const apart = t > last + atLeast;
    if (apart) last = t;
    return apart;
  });
}

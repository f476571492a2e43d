import { bulged, type Edge, edgeLength, line, MAX_SWEEP, reversed, splitArc } from './edge.js';
import { atan, cos, sin } from './trig.js';

/** A closed chain of edges: each ends where the next starts, the last where the first starts. */
export type Contour = readonly Edge[];

/** A set of closed contours: outer ones counter-clockwise, holes clockwise, none crossing. Inside is on the left. */
export interface Region {
  readonly contours: readonly Contour[];
}

/** An axis-parallel box, mm. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export const EMPTY: Region = { contours: [] };

/** A closed polygon through the points, in the order given. */
export function polygon(points: readonly (readonly [number, number])[]): Contour {
  return points.map((p, i) => {
    const q = points[(i + 1) % points.length]!;
    return line(p[0], p[1], q[0], q[1]);
  });
}

/** A full circle, counter-clockwise, in three arcs. */
export function circle(cx: number, cy: number, r: number): Contour {
  return bulgedContour([
    { x: cx + r, y: cy, bulge: Math.SQRT2 - 1 },
    { x: cx, y: cy + r, bulge: Math.SQRT2 - 1 },
    { x: cx - r, y: cy, bulge: Math.SQRT2 - 1 },
    { x: cx, y: cy - r, bulge: Math.SQRT2 - 1 },
  ]);
}

/** A contour by points and bulges (tan(sweep / 4) of the edge that leaves each point), as DXF polylines have it. */
export function bulgedContour(points: readonly { x: number; y: number; bulge: number }[]): Contour {
  return points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const e = bulged(p.x, p.y, q.x, q.y, p.bulge);
    const angle = 4 * atan(Math.abs(p.bulge));
    return angle > MAX_SWEEP ? splitArc(e, angle) : [e];
  });
}

export function reversedContour(c: Contour): Contour {
  return c.map(reversed).reverse();
}

/** Area between an edge, and the origin: the edge's share in Green's formula. */
function edgeArea(e: Edge): number {
  const triangle = (e.x0 * e.y1 - e.x1 * e.y0) / 2;
  if (e.r === 0) return triangle;
  // The circular segment between chord and arc: r^2 (a - sin a) / 2, sin a taken from the chord itself.
  const a = edgeLength(e) / Math.abs(e.r);
  const ux = e.x0 - e.cx;
  const uy = e.y0 - e.cy;
  const vx = e.x1 - e.cx;
  const vy = e.y1 - e.cy;
  const sinA = Math.abs(ux * vy - uy * vx);
  const cap = (e.r * e.r * a - sinA) / 2;
  return triangle + (e.r > 0 ? cap : -cap);
}

/** Signed area, mm2: positive for a counter-clockwise contour. */
export function contourArea(c: Contour): number {
  let sum = 0;
  for (const e of c) sum += edgeArea(e);
  return sum;
}

export function area(region: Region): number {
  let sum = 0;
  for (const c of region.contours) sum += contourArea(c);
  return sum;
}

/** Length of all contours, mm. */
export function perimeter(region: Region): number {
  let sum = 0;
  for (const c of region.contours) for (const e of c) sum += edgeLength(e);
  return sum;
}

/** The box of one edge, arcs' bulges included. */
export function edgeBox(e: Edge): Box {
  writeBox(e, scratch, 0);
  return { minX: scratch[0]!, minY: scratch[1]!, maxX: scratch[2]!, maxY: scratch[3]! };
}

/** The kernel is synchronous, and nothing keeps a reference. */
const scratch = [0, 0, 0, 0];

/** The same as four numbers at a place of a list: minX, minY, maxX, maxY. */
export function writeBox(e: Edge, into: number[], at: number): void {
  let minX = Math.min(e.x0, e.x1);
  let maxX = Math.max(e.x0, e.x1);
  let minY = Math.min(e.y0, e.y1);
  let maxY = Math.max(e.y0, e.y1);
  if (e.r !== 0) {
    const radius = Math.abs(e.r);
    const s = e.r > 0 ? 1 : -1;
    const ux = (e.x0 - e.cx) * s;
    const uy = (e.y0 - e.cy) * s;
    const vx = (e.x1 - e.cx) * s;
    const vy = (e.y1 - e.cy) * s;
    // Does the arc pass over each of the four poles? cross(u, pole) >= 0 and cross(pole, v) >= 0, both in the arc's sense.
    if (uy <= 0 && vy >= 0) maxX = Math.max(maxX, e.cx + radius);
    if (uy >= 0 && vy <= 0) minX = Math.min(minX, e.cx - radius);
    if (ux >= 0 && vx <= 0) maxY = Math.max(maxY, e.cy + radius);
    if (ux <= 0 && vx >= 0) minY = Math.min(minY, e.cy - radius);
  }
  into[at] = minX;
  into[at + 1] = minY;
  into[at + 2] = maxX;
  into[at + 3] = maxY;
}

/** The smallest box round a region; all zero when the region is empty. */
export function bounds(contours: readonly Contour[]): Box {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const c of contours)
    for (const e of c) {
      writeBox(e, scratch, 0);
      if (scratch[0]! < minX) minX = scratch[0]!;
      if (scratch[1]! < minY) minY = scratch[1]!;
      if (scratch[2]! > maxX) maxX = scratch[2]!;
      if (scratch[3]! > maxY) maxY = scratch[3]!;
    }
  return minX > maxX ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : { minX, minY, maxX, maxY };
}

/** Turns of the contours round a point (0 outside, 1 inside a sound region). Points on the boundary may go either way. */
export function windingNumber(contours: readonly Contour[], x: number, y: number): number {
  let turns = 0;
  for (const c of contours) for (const e of c) turns += rayCrossings(e, x, y);
  return turns;
}

/** Signed crossings of the ray from (x, y) towards +x with an edge: +1 upwards, -1 downwards. */
export function rayCrossings(e: Edge, x: number, y: number): number {
  if (e.r === 0) {
    if (e.y0 <= y === e.y1 <= y) return 0;
    const up = e.y0 <= y;
    const side = (e.x1 - e.x0) * (y - e.y0) - (x - e.x0) * (e.y1 - e.y0);
    return up ? (side > 0 ? 1 : 0) : side < 0 ? -1 : 0;
  }
  // Cut the arc at its top and bottom into monotone runs, each taken as its chord plus the bulge beside it.
  const radius = Math.abs(e.r);
  // Beyond a pole by rounding alone, an arc whose ends lie on either side is crossed all the same.
  if ((y > e.cy + radius || y < e.cy - radius) && e.y0 <= y === e.y1 <= y) return 0;
  const ccw = e.r > 0;
  const s = ccw ? 1 : -1;
  const overTop = s * (e.x0 - e.cx) >= 0 && s * (e.x1 - e.cx) <= 0 && passes(e, 0, 1);
  const overBottom = s * (e.x0 - e.cx) <= 0 && s * (e.x1 - e.cx) >= 0 && passes(e, 0, -1);
  let turns = 0;
  let px = e.x0;
  let py = e.y0;
  if (overTop) {
    turns += monotoneCrossing(e, px, py, e.cx, e.cy + radius, x, y);
    px = e.cx;
    py = e.cy + radius;
  } else if (overBottom) {
    turns += monotoneCrossing(e, px, py, e.cx, e.cy - radius, x, y);
    px = e.cx;
    py = e.cy - radius;
  }
  return turns + monotoneCrossing(e, px, py, e.x1, e.y1, x, y);
}

function passes(e: Edge, poleX: number, poleY: number): boolean {
  const s = e.r > 0 ? 1 : -1;
  const first = ((e.x0 - e.cx) * poleY - (e.y0 - e.cy) * poleX) * s;
  const second = (poleX * (e.y1 - e.cy) - poleY * (e.x1 - e.cx)) * s;
  return first >= 0 && second >= 0;
}

function monotoneCrossing(
  e: Edge,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x: number,
  y: number,
): number {
  if (y0 <= y === y1 <= y) return 0;
  const dy = y - e.cy;
  const half = Math.sqrt(Math.max(0, e.r * e.r - dy * dy));
  // Which side of the centre this run is on: its chord's middle tells.
  const at = (x0 + x1) / 2 >= e.cx ? e.cx + half : e.cx - half;
  if (at <= x) return 0;
  return y0 <= y ? 1 : -1;
}

export function contains(region: Region, x: number, y: number): boolean {
  return windingNumber(region.contours, x, y) > 0;
}

/** Distance from a point to an edge, mm. */
export function distanceToEdge(e: Edge, x: number, y: number): number {
  if (e.r === 0) {
    const dx = e.x1 - e.x0;
    const dy = e.y1 - e.y0;
    const l2 = dx * dx + dy * dy;
    let t = l2 === 0 ? 0 : ((x - e.x0) * dx + (y - e.y0) * dy) / l2;
    t = t < 0 ? 0 : Math.min(t, 1);
    const ex = x - e.x0 - t * dx;
    const ey = y - e.y0 - t * dy;
    return Math.sqrt(ex * ex + ey * ey);
  }
  const vx = x - e.cx;
  const vy = y - e.cy;
  const s = e.r > 0 ? 1 : -1;
  if (
    ((e.x0 - e.cx) * vy - (e.y0 - e.cy) * vx) * s >= 0 &&
    (vx * (e.y1 - e.cy) - vy * (e.x1 - e.cx)) * s >= 0
  ) {
    return Math.abs(Math.sqrt(vx * vx + vy * vy) - Math.abs(e.r));
  }
  const ax = x - e.x0;
  const ay = y - e.y0;
  const bx = x - e.x1;
  const by = y - e.y1;
  return Math.sqrt(Math.min(ax * ax + ay * ay, bx * bx + by * by));
}

/** Distance from a point to the nearest boundary of a region, mm; infinite when there is none. */
export function distanceToBoundary(region: Region, x: number, y: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (const c of region.contours) for (const e of c) best = Math.min(best, distanceToEdge(e, x, y));
  return best;
}

/** Sorts contours into parts: each outer contour with the holes directly inside it. Needs a sound region. */
export function parts(region: Region): Contour[][] {
  const outers: { contour: Contour; box: Box; size: number; holes: Contour[] }[] = [];
  const holes: Contour[] = [];
  for (const c of region.contours) {
    const size = contourArea(c);
    if (size > 0) outers.push({ contour: c, box: bounds([c]), size, holes: [] });
    else holes.push(c);
  }
  outers.sort((a, b) => a.size - b.size);
  for (const h of holes) {
    // A hole's own start point is strictly inside its outer contour, since contours of a sound region do not touch.
    const { x0, y0 } = h[0]!;
    const home = outers.find(
      (o) =>
        x0 >= o.box.minX &&
        x0 <= o.box.maxX &&
        y0 >= o.box.minY &&
        y0 <= o.box.maxY &&
        windingNumber([o.contour], x0, y0) > 0,
    );
    home?.holes.push(h);
  }
  const order = new Map(region.contours.map((c, i) => [c, i]));
  outers.sort((a, b) => order.get(a.contour)! - order.get(b.contour)!);
  return outers.map((o) => [o.contour, ...o.holes]);
}

/** Points along a contour such that no chord strays from its arc by more than `chord` mm. Start points only. */
export function flatten(c: Contour, chord: number): [number, number][] {
  const out: [number, number][] = [];
  for (const e of c) {
    out.push([e.x0, e.y0]);
    if (e.r === 0) continue;
    const radius = Math.abs(e.r);
    const total = edgeLength(e) / radius;
    // Sagitta of a chord spanning angle a: r (1 - cos(a / 2)) <= chord, so a <= 2 sqrt(2 chord / r) nearly, and safely.
    const n = Math.ceil(total / (2 * Math.sqrt((2 * Math.min(chord, radius)) / radius)));
    const pieces = n > 1 ? splitEvenly(e, total, n) : [];
    out.push(...pieces);
  }
  return out;
}

function splitEvenly(e: Edge, total: number, n: number): [number, number][] {
  const out: [number, number][] = [];
  const step = (e.r > 0 ? total : -total) / n;
  for (let i = 1; i < n; i++) {
    const c = cos(step * i);
    const s = sin(step * i);
    out.push([e.cx + (e.x0 - e.cx) * c - (e.y0 - e.cy) * s, e.cy + (e.x0 - e.cx) * s + (e.y0 - e.cy) * c]);
  }
  return out;
}

import { cos, sin } from '../../../geometry/trig.js';
import { distance } from '../inset.js';
import { middleOf, type Point } from '../tile.js';

/** A straight piece of the pattern within one tile. */
export type Segment = readonly [Point, Point];

/** A ray from the contact point on an edge: towards the edge after it (`on`) or the edge before it. */
interface Ray {
  readonly edge: number;
  readonly on: boolean;
  readonly from: Point;
  /** Unit direction. */
  readonly dx: number;
  readonly dy: number;
}

/** Two rays that may be cut off where they meet. */
interface Meeting {
  readonly a: number;
  readonly b: number;
  readonly at: Point;
  /** Whether they are the two rays round one corner. */
  readonly corner: boolean;
  readonly length: number;
}

/** Lengths nearer than this count as equal, mm: then the order of the edges decides, not rounding. */
const EQUAL = 1e-6;

/**
 * The lines of a pattern by polygons in contact within one tile (Hankin 1925; Kaplan, Islamic Star Patterns from
 * Polygons in Contact, 2005): from the contact point on every edge two rays at the contact angle (radians) to the
 * edge, each cut off where it meets a partner. Partners are the two rays round a corner where those meet within the
 * tile; of what remains, the nearest first, as Kaplan does; a ray without one ends at the first line it meets.
 */
export function contactLines(tile: readonly Point[], contacts: readonly Point[], angle: number): Segment[] {
  const rays = tile.flatMap((p, i) => raysOf(i, p, tile[(i + 1) % tile.length]!, contacts[i]!, angle));
  const taken = new Set<number>();
  const out: Segment[] = [];
  for (const { a, b, at } of meetings(rays, tile)) {
    if (taken.has(a) || taken.has(b)) continue;
    taken.add(a).add(b);
    out.push([rays[a]!.from, at], [at, rays[b]!.from]);
  }
  const lone = rays.filter((_, i) => !taken.has(i));
  return [...out, ...lone.flatMap((r) => cutOff(r, out))];
}

function raysOf(edge: number, p: Point, q: Point, from: Point, angle: number): Ray[] {
  const l = distance(p, q);
  const ux = (q[0] - p[0]) / l;
  const uy = (q[1] - p[1]) / l;
  const c = cos(angle);
  const s = sin(angle);
  // The inside of a counter-clockwise tile is on the left of its edges.
  return [
    { edge, on: true, from, dx: c * ux - s * uy, dy: c * uy + s * ux },
    { edge, on: false, from, dx: -c * ux - s * uy, dy: -c * uy + s * ux },
  ];
}

/** Every meeting within the tile of a ray that runs on round it with one that runs back, best first. */
function meetings(rays: readonly Ray[], tile: readonly Point[]): Meeting[] {
  const out: Meeting[] = [];
  rays.forEach((r, a) => {
    if (!r.on) return;
    rays.forEach((q, b) => {
      if (q.on || q.edge === r.edge) return;
      const at = meetingPoint(r, q);
      if (!at || !within(tile, at)) return;
      const corner = q.edge === (r.edge + 1) % tile.length;
      out.push({ a, b, at, corner, length: distance(r.from, at) + distance(q.from, at) });
    });
  });
  return out.sort((m, n) => {
    if (m.corner !== n.corner) return m.corner ? -1 : 1;
    return Math.abs(m.length - n.length) > EQUAL ? m.length - n.length : m.a - n.a || m.b - n.b;
  });
}

/** Where two rays meet; half way for two that run into each other in one line. */
function meetingPoint(r: Ray, q: Ray): Point | null {
  const cross = r.dx * q.dy - r.dy * q.dx;
  const wx = q.from[0] - r.from[0];
  const wy = q.from[1] - r.from[1];
  if (Math.abs(cross) < 1e-9) {
    const l = distance(r.from, q.from);
    const facing = r.dx * q.dx + r.dy * q.dy < 0 && wx * r.dx + wy * r.dy > 0;
    return facing && Math.abs(wx * r.dy - wy * r.dx) < 1e-7 * l ? middleOf([r.from, q.from]) : null;
  }
  const t = (wx * q.dy - wy * q.dx) / cross;
  const u = (wx * r.dy - wy * r.dx) / cross;
  return t > 0 && u > 0 ? [r.from[0] + r.dx * t, r.from[1] + r.dy * t] : null;
}

/** Whether a point lies inside a polygon; one that is just on its edge does not. */
function within(tile: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  tile.forEach((p, i) => {
    const q = tile[(i + 1) % tile.length]!;
    if (p[1] > y !== q[1] > y && x < p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])) inside = !inside;
  });
  return inside;
}

/** The ray up to the nearest of the lines that it meets; nothing when it meets none. */
function cutOff(ray: Ray, lines: readonly Segment[]): Segment[] {
  let best = Number.POSITIVE_INFINITY;
  for (const [p, q] of lines) {
    const ex = q[0] - p[0];
    const ey = q[1] - p[1];
    const cross = ray.dx * ey - ray.dy * ex;
    const wx = p[0] - ray.from[0];
    const wy = p[1] - ray.from[1];
    const t = (wx * ey - wy * ex) / cross;
    const u = (wx * ray.dy - wy * ray.dx) / cross;
    if (t > 1e-6 && t < best && u >= -1e-9 && u <= 1 + 1e-9) best = t;
  }
  return best < Number.POSITIVE_INFINITY
    ? [[ray.from, [ray.from[0] + ray.dx * best, ray.from[1] + ray.dy * best]]]
    : [];
}

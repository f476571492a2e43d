import { crossings } from '../crossings.js';
import { type Edge, edgeLength, line, tangentAt } from '../edge.js';
import { distanceToEdge } from '../region.js';
import type { Ball, Boundary } from './balls.js';

/** What lies straight ahead of the end of an axis. */
export interface Ahead {
  /** To the boundary, mm; infinite when there is none within the range asked. */
  readonly distance: number;
  /** The edge met. */
  readonly edge: Edge | null;
  /** Unit direction of that edge where it is met. */
  readonly direction: readonly [number, number];
}

/** The first boundary met on the way from a point along a unit direction, up to `range` mm away. */
export function ahead(b: Boundary, x: number, y: number, tx: number, ty: number, range: number): Ahead {
  const ray = line(x, y, x + tx * range, y + ty * range);
  const box = {
    minX: Math.min(ray.x0, ray.x1),
    maxX: Math.max(ray.x0, ray.x1),
    minY: Math.min(ray.y0, ray.y1),
    maxY: Math.max(ray.y0, ray.y1),
  };
  let distance = Number.POSITIVE_INFINITY;
  let edge: Edge | null = null;
  for (const j of [...b.index.near(box, 1e-6)]) {
    const e = b.edges[j]!;
    crossings(ray, e, (hx, hy) => {
      const d = (hx - x) * tx + (hy - y) * ty;
      if (d > 1e-9 && d < distance) {
        distance = d;
        edge = e;
      }
    });
  }
  const direction: readonly [number, number] = edge
    ? tangentAt(edge, x + tx * distance, y + ty * distance)
    : [-ty, tx];
  return { distance, edge, direction };
}

/** Distance from a point to the nearest boundary, at most `range`, mm. */
export function clearance(b: Boundary, x: number, y: number, range: number): number {
  let best = range;
  for (const j of b.index.near({ minX: x, maxX: x, minY: y, maxY: y }, range))
    best = Math.min(best, distanceToEdge(b.edges[j]!, x, y));
  return best;
}

/** Length of the boundary from place p forward to place q of one contour, mm; infinite when it is longer than `most`. */
export function lengthBetween(b: Boundary, p: number, q: number, most: number): number {
  const last = b.edges.length - 1;
  const i = Math.min(last, Math.floor(p));
  const j = Math.min(last, Math.floor(q));
  if (b.home[i] !== b.home[j]) return Number.POSITIVE_INFINITY;
  const [from, to] = [b.first[b.home[i]!]!, b.first[b.home[i]! + 1]!];
  if (i === j && q >= p) return (q - p) * edgeLength(b.edges[i]!);
  let sum = (1 - (p - i)) * edgeLength(b.edges[i]!);
  for (let k = i + 1 < to ? i + 1 : from; k !== j; k = k + 1 < to ? k + 1 : from) {
    sum += edgeLength(b.edges[k]!);
    if (sum > most) return Number.POSITIVE_INFINITY;
  }
  return sum + (q - j) * edgeLength(b.edges[j]!);
}

/**
 * Whether the axis ends at a free end of a stroke: the boundary between the last ball's contacts, past the end, goes
 * straight round the tip. A side arm would make it longer than the tip's own outline.
 */
export function isFreeEnd(b: Boundary, ball: Ball, tip: number): boolean {
  const most = 2.3 * Math.min(tip, 6 * ball.w) + 2.4 * ball.w;
  return lengthBetween(b, ball.p, ball.q, most) <= most;
}

import { crossings } from '../../geometry/crossings.js';
import { chordLength, type Edge } from '../../geometry/edge.js';
import { nearestPoints } from '../../geometry/nearest.js';
import { type Box, contains, edgeBox } from '../../geometry/region.js';
import { placed } from '../../geometry/transform.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Shape } from './shapes.js';

/** Where a letter stands: its base line's middle, mm, and the base line's direction, radians. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/**
 * A base line that bends evenly: curvature, 1/mm, positive when it turns left as it is read (letters read along the
 * bottom of a circle from inside), negative when right, 0 when straight.
 */
export type Curvature = number;

/** The pose `s` mm further along a base line than the origin, seen from the letter there. */
export function along(curvature: Curvature, s: number): Pose {
  if (curvature === 0) return { x: s, y: 0, turn: 0 };
  const turn = curvature * s;
  const half = sin(turn / 2);
  return { x: sin(turn) / curvature, y: (2 * half * half) / curvature, turn };
}

/** How near two letters are: their nearest points, in the frame of the first; `meet` when they touch or overlap. */
interface Near {
  readonly meet: boolean;
  readonly distance: number;
  readonly p: readonly [number, number];
  readonly q: readonly [number, number];
}

/** The nearest points of two letters if they are nearer than `reach`; null when they are not. */
export function near(a: Shape, b: Shape, pose: Pose, reach: number): Near | null {
  const box = movedBox(b.box, pose);
  if (apart(a.box, box, reach)) return null;
  const left = a.edges.filter((_, i) => !apart(a.boxes[i]!, box, reach));
  const right = placed(b.edges, pose.x, pose.y, pose.turn);
  const boxes = right.map(edgeBox);
  let best: Near | null = null;
  let least = reach;
  for (const e of left) {
    const own = edgeBox(e);
    for (let j = 0; j < right.length; j++) {
      if (apart(own, boxes[j]!, least)) continue;
      const f = right[j]!;
      if (!apart(own, boxes[j]!, 0) && cross(e, f))
        return { meet: true, distance: 0, p: [e.x0, e.y0], q: [f.x0, f.y0] };
      const n = nearestPoints([e], [f])!;
      if (n.distance >= least) continue;
      least = n.distance;
      best = { meet: false, ...n };
    }
  }
  if (inside(a, right[0]!) || insideMoved(b, a, pose))
    return { meet: true, distance: 0, p: [0, 0], q: [0, 0] };
  return best;
}

/** No edges cross, so one letter is inside the other if one point of it is. */
function inside(a: Shape, e: Edge): boolean {
  return contains(a.kept, e.x0, e.y0);
}

function insideMoved(b: Shape, a: Shape, { x, y, turn }: Pose): boolean {
  const { x0, y0 } = a.edges[0]!;
  const [c, s] = [cos(turn), sin(turn)];
  return contains(b.kept, (x0 - x) * c + (y0 - y) * s, (y0 - y) * c - (x0 - x) * s);
}

function cross(e: Edge, f: Edge): boolean {
  let met = false;
  crossings(e, f, () => {
    met = true;
  });
  return met;
}

export function apart(a: Box, b: Box, by: number): boolean {
  return a.minX - b.maxX > by || b.minX - a.maxX > by || a.minY - b.maxY > by || b.minY - a.maxY > by;
}

/** The box round a box that was turned and moved. */
export function movedBox({ minX, minY, maxX, maxY }: Box, { x, y, turn }: Pose): Box {
  if (turn === 0) return { minX: minX + x, maxX: maxX + x, minY: minY + y, maxY: maxY + y };
  const [c, s] = [cos(turn), sin(turn)];
  const xs = [minX * c - minY * s, maxX * c - minY * s, minX * c - maxY * s, maxX * c - maxY * s];
  const ys = [minX * s + minY * c, maxX * s + minY * c, minX * s + maxY * c, maxX * s + maxY * c];
  return {
    minX: x + Math.min(...xs),
    maxX: x + Math.max(...xs),
    minY: y + Math.min(...ys),
    maxY: y + Math.max(...ys),
  };
}

/** A place nearer than asked by no more than this is left, mm: far under the hair that is added to what is asked. */
const ENOUGH = 1e-4;

/**
 * How much further apart than `s` mm along their base line two letters must stand, the second to the right of the first,
 * to be `gap` mm clear of each other, mm; 0 when they are. True distances, so that AV may stand closer than HH.
 */
export function opening(a: Shape, b: Shape, s: number, curvature: Curvature, gap: number): number {
  let more = 0;
  for (let round = 0; round < 60; round++) {
    const pose = along(curvature, s + more);
    const n = near(a, b, pose, gap);
    if (!n || n.distance >= gap - ENOUGH) return more;
    // Straight ahead, each pair of points is clear at a distance that Pythagoras tells; the nearest pair decides next.
    more += n.meet ? cleared(a, b, pose, gap) : Math.max(ENOUGH, ahead(n.p, n.q, pose, curvature, gap));
  }
  return more;
}

/** How far the second point must go on, in the direction in which it moves with its letter, to be clear of the first. */
function ahead(
  [px, py]: readonly [number, number],
  [qx, qy]: readonly [number, number],
  pose: Pose,
  curvature: Curvature,
  gap: number,
): number {
  // Points off the base line move on a circle of another radius about the same centre.
  const [c, s] = [cos(pose.turn), sin(pose.turn)];
  const up = (qy - pose.y) * c - (qx - pose.x) * s;
  const right = (qx - pose.x) * c + (qy - pose.y) * s;
  const vx = 1 - curvature * up;
  const vy = curvature * right;
  const speed = Math.max(0.2, Math.sqrt(vx * vx + vy * vy));
  const ux = (vx * c - vy * s) / speed;
  const uy = (vx * s + vy * c) / speed;
  const on = (qx - px) * ux + (qy - py) * uy;
  const beside = (qy - py) * ux - (qx - px) * uy;
  return (Math.sqrt(Math.max(0, gap * gap - beside * beside)) - on) / speed;
}

/** Overlapping letters: how far the second must go on until every point of it is clear of every one of the first. */
function cleared(a: Shape, b: Shape, { x, y, turn }: Pose, gap: number): number {
  const [c, s] = [cos(turn), sin(turn)];
  let most = gap / 8;
  // By height, so that only those within the gap above and below are looked at.
  const left = stepsAlong(a, gap / 8).sort((p, q) => p[1] - q[1]);
  for (const [bx, by] of stepsAlong(b, gap / 8)) {
    const qx = bx * c - by * s + x;
    const qy = bx * s + by * c + y;
    for (let k = firstAbove(left, qy - gap); k < left.length; k++) {
      const [px, py] = left[k]!;
      const dy = qy - py;
      if (dy <= -gap) break;
      if (dy >= gap) continue;
      const need = Math.sqrt(gap * gap - dy * dy) - (qx - px);
      if (need > most) most = need;
    }
  }
  return most;
}

/** Place of the first point that is higher than `y`, in points that rise. */
function firstAbove(points: readonly (readonly [number, number])[], y: number): number {
  let [low, high] = [0, points.length];
  while (low < high) {
    const mid = (low + high) >> 1;
    if (points[mid]![1] > y) high = mid;
    else low = mid + 1;
  }
  return low;
}

/** A shape's points with those of its long straight edges between them. */
function stepsAlong(shape: Shape, step: number): (readonly [number, number])[] {
  const out = [...shape.points];
  for (const e of shape.edges) {
    if (e.r !== 0) continue;
    const n = Math.min(400, Math.ceil(chordLength(e) / step));
    for (let i = 1; i < n; i++) out.push([e.x0 + ((e.x1 - e.x0) * i) / n, e.y0 + ((e.y1 - e.y0) * i) / n]);
  }
  return out;
}

/** How much lower than it is the second letter must stand to be `gap` mm clear of the first, which stands above it, mm. */
export function lowering(a: Shape, b: Shape, pose: Pose, gap: number): number {
  let more = 0;
  for (let round = 0; round < 60; round++) {
    const n = near(a, b, { ...pose, y: pose.y - more }, gap);
    if (!n || n.distance >= gap - ENOUGH) return more;
    const beside = n.q[0] - n.p[0];
    const need = Math.sqrt(Math.max(0, gap * gap - beside * beside)) - (n.p[1] - n.q[1]);
    more += n.meet ? gap / 2 : Math.max(ENOUGH, need);
  }
  return more;
}

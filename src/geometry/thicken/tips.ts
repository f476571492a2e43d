import { chordLength } from '../edge.js';
import { type Contour, polygon } from '../region.js';
import { SPARE } from '../tolerances.js';
import type { Ball, Boundary } from './balls.js';
import { type Ahead, ahead, clearance } from './ends.js';
import { extended, type Node } from './spine.js';

/** The tips of limbs: what lies beyond the end of an axis, and how far to go on to it. */

type Point = readonly [number, number];

/** Where the axis meets the boundary beyond an end, at most 2r on. */
export function tipPoint(b: Boundary, ball: Ball, r: number): Point {
  const d = Math.min(2 * r, tipOf(b, ball, r).distance);
  return [ball.x + ball.tx * d, ball.y + ball.ty * d];
}

/** Distance between the tips beyond two ends, mm. */
export function between(b: Boundary, p: Ball, q: Ball, r: number): number {
  const [x0, y0] = tipPoint(b, p, r);
  const [x1, y1] = tipPoint(b, q, r);
  return Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
}

export function tipOf(b: Boundary, ball: Ball, r: number): Ahead {
  return ahead(b, ball.x, ball.y, ball.tx, ball.ty, 8 * r);
}

/** Straight on from an end that no other limb meets, as far as the wood about it is no narrower, at most r. */
export function intoTheWood(b: Boundary, nodes: readonly Node[], ball: Ball, r: number): Node[] {
  if (ball.w >= r) return [...nodes];
  let length = 0;
  for (let d = r / 8; d <= r * 1.01; d += r / 8) {
    if (clearance(b, ball.x + ball.tx * d, ball.y + ball.ty * d, r) < Math.min(ball.w, r) * 0.999) break;
    length = d;
  }
  return extended(nodes, length);
}

/** How far to go to a straight stroke end, and what to cut off where the end is slanted; null for other ends. */
export function flatEnd(ball: Ball, tip: Ahead, r: number): { length: number; clip: Contour | null } | null {
  const e = tip.edge;
  if (e?.r !== 0 || chordLength(e) < 0.8 * ball.w) return null;
  const [dx, dy] = tip.direction;
  const along = dx * ball.tx + dy * ball.ty;
  if (Math.abs(along) > 0.71) return null;
  const wide = r + SPARE;
  if (Math.abs(along) < 0.02) return { length: tip.distance + SPARE, clip: null };
  // Past the slanted line by as much as the line runs ahead at the band's side.
  const slope = Math.abs(along) / Math.sqrt(1 - along * along);
  const more = wide * slope;
  const hx = ball.x + ball.tx * tip.distance;
  const hy = ball.y + ball.ty * tip.distance;
  // The figure lies left of its boundary, so what lies beyond the end is on the right.
  const [ox, oy] = [dy, -dx];
  const long = (wide + more) * 1.6;
  const deep = 2 * more + 0.05 * r;
  const at = (s: number, t: number): Point => [hx + dx * s + ox * t, hy + dy * s + oy * t];
  return {
    length: tip.distance + more + 0.01 * r,
    clip: polygon([at(-long, SPARE), at(-long, deep), at(long, deep), at(long, SPARE)]),
  };
}

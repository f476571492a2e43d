import { type Edge, line } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import { type Nearest, nearestPoints } from '../geometry/nearest.js';
import { type Box, edgeBox } from '../geometry/region.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import { clusters } from './between.js';
import type { Body } from './kin.js';

/** Where bodies that were drawn apart come nearest to each other, or null when each touches another: they were one. */
export function meeting(bodies: readonly Body[], r: number): readonly [number, number] | null {
  const boxes = bodies.map((b) => b.box);
  const index = new EdgesIndex(boxes.map((b) => line(b.minX, b.minY, b.maxX, b.maxY)));
  const touching: [number, number][] = [];
  const apart: Nearest[] = [];
  boxes.forEach((box, i) => {
    for (const j of [...index.near(box, 2 * r)]) {
      if (j <= i) continue;
      const near = nearestPoints(beside(bodies[i]!, boxes[j]!, r), beside(bodies[j]!, box, r));
      if (near && near.distance < SAME_POINT) touching.push([i, j]);
      else if (near) apart.push(near);
    }
  });
  if (clusters(bodies.length, touching).length === 1) return null;
  const middles = (n: Nearest): [number, number] => [(n.p[0] + n.q[0]) / 2, (n.p[1] + n.q[1]) / 2];
  if (apart.length > 0) return middles(apart.reduce((a, b) => (b.distance < a.distance ? b : a)));
  const { minX, minY, maxX, maxY } = boxes[1]!;
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** The edges of a body that lie within 2r of a box. */
function beside({ contours }: Body, box: Box, r: number): Edge[] {
  const reach = 2 * r;
  return contours.flat().filter((e) => {
    const b = edgeBox(e);
    return (
      b.minX <= box.maxX + reach &&
      b.maxX >= box.minX - reach &&
      b.minY <= box.maxY + reach &&
      b.maxY >= box.minY - reach
    );
  });
}

import { arc, type Edge, line } from './edge.js';
import { type Contour, circle } from './region.js';
import { SAME_POINT } from './tolerances.js';

/** All points within r of the segment from p to q, as a counter-clockwise contour. */
export function capsule(px: number, py: number, qx: number, qy: number, r: number): Contour {
  const dx = qx - px;
  const dy = qy - py;
  const l = Math.sqrt(dx * dx + dy * dy);
  if (l <= SAME_POINT) return circle(px, py, r);
  const ux = (dx / l) * r;
  const uy = (dy / l) * r;
  const quarter = (cx: number, cy: number, ax: number, ay: number, bx: number, by: number): Edge =>
    arc(cx + ax, cy + ay, cx + bx, cy + by, cx, cy, r);
  return [
    line(px + uy, py - ux, qx + uy, qy - ux),
    quarter(qx, qy, uy, -ux, ux, uy),
    quarter(qx, qy, ux, uy, -uy, ux),
    line(qx - uy, qy + ux, px - uy, py + ux),
    quarter(px, py, -uy, ux, -ux, -uy),
    quarter(px, py, -ux, -uy, uy, -ux),
  ];
}

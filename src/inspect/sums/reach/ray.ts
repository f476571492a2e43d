import { type Edge, parameterEnd, pointParameter } from '../../../geometry/edge.js';

/** An end missed by so little, mm, is hit: of two edges that meet on the ray one must be. */
const END = 1e-9;

/** How far along a ray from (x, y) in the unit direction (dx, dy) it first meets an edge, mm; Infinity: it does not. */
export function firstHit(x: number, y: number, dx: number, dy: number, e: Edge): number {
  return e.r === 0 ? hitLine(x, y, dx, dy, e) : hitArc(x, y, dx, dy, e);
}

function hitLine(x: number, y: number, dx: number, dy: number, e: Edge): number {
  const ex = e.x1 - e.x0;
  const ey = e.y1 - e.y0;
  const across = dx * ey - dy * ex;
  if (across === 0) return Number.POSITIVE_INFINITY;
  const wx = e.x0 - x;
  const wy = e.y0 - y;
  // Where on the edge, as a share of it; and how far along the ray.
  const share = (wx * dy - wy * dx) / across;
  const far = (wx * ey - wy * ex) / across;
  const slack = END / parameterEnd(e);
  return share >= -slack && share <= 1 + slack && far >= -END ? Math.max(0, far) : Number.POSITIVE_INFINITY;
}

function hitArc(x: number, y: number, dx: number, dy: number, e: Edge): number {
  const wx = e.cx - x;
  const wy = e.cy - y;
  const along = wx * dx + wy * dy;
  const aside = wx * dy - wy * dx;
  const h2 = e.r * e.r - aside * aside;
  if (h2 < 0) return Number.POSITIVE_INFINITY;
  const h = Math.sqrt(h2);
  const slack = END / Math.abs(e.r);
  const end = parameterEnd(e) + slack;
  for (const far of [along - h, along + h]) {
    if (far < -END) continue;
    const t = pointParameter(e, x + dx * far, y + dy * far);
    if (t >= -slack && t <= end) return Math.max(0, far);
  }
  return Number.POSITIVE_INFINITY;
}

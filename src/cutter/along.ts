import { type Edge, sweep } from '../geometry/edge.js';
import { cos, sin } from '../geometry/trig.js';

/** The point a share (0 to 1) of an edge's length from its start. */
export function pointAlong(e: Edge, share: number): [number, number] {
  if (share <= 0) return [e.x0, e.y0];
  if (share >= 1) return [e.x1, e.y1];
  if (e.r === 0) return [e.x0 + (e.x1 - e.x0) * share, e.y0 + (e.y1 - e.y0) * share];
  const angle = (e.r > 0 ? 1 : -1) * sweep(e) * share;
  const c = cos(angle);
  const s = sin(angle);
  const dx = e.x0 - e.cx;
  const dy = e.y0 - e.cy;
  return [e.cx + dx * c - dy * s, e.cy + dx * s + dy * c];
}

import type { Edge } from './edge.js';
import { nearestPoints } from './nearest.js';

/** Quickly, whether two edges that do not cross are at least d apart: chords are, by more than the arcs bulge beside them. */
export function surelyApart(e: Edge, f: Edge, d: number): boolean {
  const clear = d + sagitta(e) + sagitta(f);
  const c2 = clear * clear;
  return (
    toChord2(e.x0, e.y0, f) >= c2 &&
    toChord2(e.x1, e.y1, f) >= c2 &&
    toChord2(f.x0, f.y0, e) >= c2 &&
    toChord2(f.x1, f.y1, e) >= c2
  );
}

/** Whether two edges that do not cross come nearer to each other than d. */
export function nearerThan(e: Edge, f: Edge, d: number): boolean {
  if (surelyApart(e, f, d)) return false;
  // Lines are their chords.
  return (e.r === 0 && f.r === 0) || nearestPoints([e], [f])!.distance < d;
}

/** How far an edge strays from its chord: the sagitta of an arc under half a circle. */
function sagitta(e: Edge): number {
  if (e.r === 0) return 0;
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  const q = (dx * dx + dy * dy) / 4;
  const rest = e.r * e.r - q;
  return q / (Math.abs(e.r) + (rest > 0 ? Math.sqrt(rest) : 0));
}

/** Squared distance from a point to an edge's chord. */
function toChord2(x: number, y: number, e: Edge): number {
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  const px = x - e.x0;
  const py = y - e.y0;
  const t = px * dx + py * dy;
  const l2 = dx * dx + dy * dy;
  if (t <= 0) return px * px + py * py;
  if (t >= l2) return (x - e.x1) * (x - e.x1) + (y - e.y1) * (y - e.y1);
  const off = px * dy - py * dx;
  return (off * off) / l2;
}

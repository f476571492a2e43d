import { type Edge, parameterEnd, pointParameter } from './edge.js';

/** Two points, one on each of two edges (or chains of them), and the distance between them, mm. */
export interface Nearest {
  readonly p: readonly [number, number];
  readonly q: readonly [number, number];
  readonly distance: number;
}

/** The nearest pair of points of two chains of edges that do not cross; null when either is empty. */
export function nearestPoints(a: readonly Edge[], b: readonly Edge[]): Nearest | null {
  let best: Nearest | null = null;
  for (const e of a)
    for (const f of b)
      for (const [p, q] of candidates(e, f)) {
        const dx = q[0] - p[0];
        const dy = q[1] - p[1];
        const distance = Math.sqrt(dx * dx + dy * dy);
        if (!best || distance < best.distance) best = { p, q, distance };
      }
  return best;
}

type Point = [number, number];

/** The nearest pair is among these: ends against the other edge, and the feet on the line through the centres. */
function candidates(e: Edge, f: Edge): [Point, Point][] {
  const out: [Point, Point][] = [
    [[e.x0, e.y0], footOn(f, e.x0, e.y0)],
    [[e.x1, e.y1], footOn(f, e.x1, e.y1)],
    [footOn(e, f.x0, f.y0), [f.x0, f.y0]],
    [footOn(e, f.x1, f.y1), [f.x1, f.y1]],
  ];
  if (e.r !== 0) {
    const q = footOn(f, e.cx, e.cy);
    out.push([footOn(e, q[0], q[1]), q]);
  }
  if (f.r !== 0) {
    const p = footOn(e, f.cx, f.cy);
    out.push([p, footOn(f, p[0], p[1])]);
  }
  return out;
}

/** The point of an edge nearest to (x, y). */
export function footOn(e: Edge, x: number, y: number): Point {
  const end = parameterEnd(e);
  const t = pointParameter(e, x, y);
  if (e.r === 0) {
    if (!(t > 0)) return [e.x0, e.y0];
    if (t >= end) return [e.x1, e.y1];
    const k = t / end;
    return [e.x0 + (e.x1 - e.x0) * k, e.y0 + (e.y1 - e.y0) * k];
  }
  const dx = x - e.cx;
  const dy = y - e.cy;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (t >= 0 && t <= end && d > 0) {
    const k = Math.abs(e.r) / d;
    return [e.cx + dx * k, e.cy + dy * k];
  }
  const d0 = (x - e.x0) * (x - e.x0) + (y - e.y0) * (y - e.y0);
  const d1 = (x - e.x1) * (x - e.x1) + (y - e.y1) * (y - e.y1);
  return d0 <= d1 ? [e.x0, e.y0] : [e.x1, e.y1];
}

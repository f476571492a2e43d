import { type Edge, parameterEnd, pointParameter } from './edge.js';

/** Two points, one on each of two edges (or chains of them), and the distance between them, mm. */
export interface Nearest {
  readonly p: readonly [number, number];
  readonly q: readonly [number, number];
  readonly distance: number;
}

/** The nearest pair of points of two chains of edges that do not cross; null when either is empty. */
export function nearestPoints(a: readonly Edge[], b: readonly Edge[]): Nearest | null {
  if (a.length === 0 || b.length === 0) return null;
  best.distance = Infinity;
  for (const e of a) for (const f of b) offerAll(e, f);
  return { p: [best.px, best.py], q: [best.qx, best.qy], distance: best.distance };
}

/** What is nearest so far; the kernel is synchronous, and nothing keeps a reference. */
const best = { px: 0, py: 0, qx: 0, qy: 0, distance: 0 };

/** The nearest pair is among these: ends against the other edge, and the feet on the line through the centres. */
function offerAll(e: Edge, f: Edge): void {
  setFoot(f, e.x0, e.y0);
  offer(e.x0, e.y0, foot.x, foot.y);
  setFoot(f, e.x1, e.y1);
  offer(e.x1, e.y1, foot.x, foot.y);
  setFoot(e, f.x0, f.y0);
  offer(foot.x, foot.y, f.x0, f.y0);
  setFoot(e, f.x1, f.y1);
  offer(foot.x, foot.y, f.x1, f.y1);
  if (e.r !== 0) {
    setFoot(f, e.cx, e.cy);
    const { x, y } = foot;
    setFoot(e, x, y);
    offer(foot.x, foot.y, x, y);
  }
  if (f.r !== 0) {
    setFoot(e, f.cx, f.cy);
    const { x, y } = foot;
    setFoot(f, x, y);
    offer(x, y, foot.x, foot.y);
  }
}

function offer(px: number, py: number, qx: number, qy: number): void {
  const dx = qx - px;
  const dy = qy - py;
  const distance = Math.sqrt(dx * dx + dy * dy);
  if (!(distance < best.distance)) return;
  best.px = px;
  best.py = py;
  best.qx = qx;
  best.qy = qy;
  best.distance = distance;
}

/** The point of an edge nearest to (x, y). */
export function footOn(e: Edge, x: number, y: number): [number, number] {
  setFoot(e, x, y);
  return [foot.x, foot.y];
}

const foot = { x: 0, y: 0 };

function setFoot(e: Edge, x: number, y: number): void {
  const end = parameterEnd(e);
  const t = pointParameter(e, x, y);
  if (e.r === 0) {
    const k = !(t > 0) ? 0 : t / end;
    if (t >= end && t > 0) {
      foot.x = e.x1;
      foot.y = e.y1;
    } else {
      foot.x = e.x0 + (e.x1 - e.x0) * k;
      foot.y = e.y0 + (e.y1 - e.y0) * k;
    }
    return;
  }
  const dx = x - e.cx;
  const dy = y - e.cy;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (t >= 0 && t <= end && d > 0) {
    const k = Math.abs(e.r) / d;
    foot.x = e.cx + dx * k;
    foot.y = e.cy + dy * k;
    return;
  }
  const d0 = (x - e.x0) * (x - e.x0) + (y - e.y0) * (y - e.y0);
  const d1 = (x - e.x1) * (x - e.x1) + (y - e.y1) * (y - e.y1);
  foot.x = d0 <= d1 ? e.x0 : e.x1;
  foot.y = d0 <= d1 ? e.y0 : e.y1;
}

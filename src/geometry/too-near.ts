import { type Edge, parameterEnd, pointParameter } from './edge.js';
import { distanceToEdge } from './region.js';

/** Scratch for the cut parameters of one pair, ten at most; the kernel is synchronous, and nothing keeps a reference. */
const cuts = new Float64Array(16);
let count = 0;

/**
 * The stretches of edge `o` that lie nearer than `r` (by more than `graze`) to edge `s`: pushes pairs of parameters
 * (as `pointParameter` measures) onto `out`.
 *
 * The points at distance r from s form two parallel curves and two end circles. Cutting o at all of them leaves
 * stretches that are wholly near or wholly far, so one point of each decides; no case analysis is needed.
 */
export function nearStretches(o: Edge, s: Edge, r: number, graze: number, out: number[]): void {
  const end = parameterEnd(o);
  count = 0;
  cutByCircle(o, end, s.x0, s.y0, r);
  cutByCircle(o, end, s.x1, s.y1, r);
  if (s.r === 0) {
    const dx = s.x1 - s.x0;
    const dy = s.y1 - s.y0;
    const l = Math.sqrt(dx * dx + dy * dy);
    if (l > 0) {
      const nx = -dy / l;
      const ny = dx / l;
      const c = nx * s.x0 + ny * s.y0;
      cutByLine(o, end, nx, ny, c + r);
      cutByLine(o, end, nx, ny, c - r);
    }
  } else {
    const radius = Math.abs(s.r);
    cutByCircle(o, end, s.cx, s.cy, radius + r);
    if (radius !== r) cutByCircle(o, end, s.cx, s.cy, Math.abs(radius - r));
  }
  sort();
  let from = 0;
  for (let i = 0; i <= count; i++) {
    const to = i < count ? cuts[i]! : end;
    if (to > from) {
      const t = (from + to) / 2;
      let x: number;
      let y: number;
      if (o.r === 0) {
        x = o.x0 + ((o.x1 - o.x0) * t) / end;
        y = o.y0 + ((o.y1 - o.y0) * t) / end;
      } else {
        // As `pointAt`, without making a pair of them.
        const ux = o.x0 - o.cx;
        const uy = o.y0 - o.cy;
        const q = 1 + t * t;
        const c = (1 - t * t) / q;
        const d = (o.r > 0 ? 2 * t : -2 * t) / q;
        x = o.cx + ux * c - uy * d;
        y = o.cy + ux * d + uy * c;
      }
      if (distanceToEdge(s, x, y) < r - graze) {
        if (out.length > 0 && out[out.length - 1] === from) out[out.length - 1] = to;
        else out.push(from, to);
      }
      from = to;
    }
  }
}

/** By hand: there are a few at most, and the call would cost more than the work. */
function sort(): void {
  for (let i = 1; i < count; i++) {
    const v = cuts[i]!;
    let k = i;
    for (; k > 0 && cuts[k - 1]! > v; k--) cuts[k] = cuts[k - 1]!;
    cuts[k] = v;
  }
}

function cutByCircle(o: Edge, end: number, qx: number, qy: number, q: number): void {
  if (o.r === 0) {
    const ux = (o.x1 - o.x0) / end;
    const uy = (o.y1 - o.y0) / end;
    const along = (qx - o.x0) * ux + (qy - o.y0) * uy;
    const away = (qx - o.x0) * uy - (qy - o.y0) * ux;
    const h2 = q * q - away * away;
    if (h2 < 0) return;
    const h = Math.sqrt(h2);
    keep(along - h, end);
    keep(along + h, end);
    return;
  }
  const radius = Math.abs(o.r);
  const dx = qx - o.cx;
  const dy = qy - o.cy;
  const d2 = dx * dx + dy * dy;
  const d = Math.sqrt(d2);
  if (d === 0 || d > radius + q || d < Math.abs(radius - q)) return;
  const a = (radius * radius - q * q + d2) / (2 * d);
  const h = Math.sqrt(Math.max(0, radius * radius - a * a));
  keepPoint(o, end, o.cx + (dx * a - dy * h) / d, o.cy + (dy * a + dx * h) / d);
  keepPoint(o, end, o.cx + (dx * a + dy * h) / d, o.cy + (dy * a - dx * h) / d);
}

/** Cuts by the line nx x + ny y = c. */
function cutByLine(o: Edge, end: number, nx: number, ny: number, c: number): void {
  if (o.r === 0) {
    const f0 = nx * o.x0 + ny * o.y0 - c;
    const f1 = nx * o.x1 + ny * o.y1 - c;
    if (f0 !== f1) keep((end * f0) / (f0 - f1), end);
    return;
  }
  const f = nx * o.cx + ny * o.cy - c;
  const h2 = o.r * o.r - f * f;
  if (h2 < 0) return;
  const h = Math.sqrt(h2);
  keepPoint(o, end, o.cx - nx * f - ny * h, o.cy - ny * f + nx * h);
  keepPoint(o, end, o.cx - nx * f + ny * h, o.cy - ny * f - nx * h);
}

function keepPoint(o: Edge, end: number, x: number, y: number): void {
  keep(pointParameter(o, x, y), end);
}

function keep(t: number, end: number): void {
  if (t > 0 && t < end) cuts[count++] = t;
}

/** What pairs of parameters, in any order and overlapping, leave of 0..end: calls `keep` for each stretch, in order. */
export function betweenStretches(
  taken: readonly number[],
  end: number,
  keep: (from: number, to: number) => void,
): void {
  let from = 0;
  while (from < end) {
    // The nearest taken stretch that starts at or before `from` and reaches beyond it pushes `from` on.
    let to = end;
    let pushed = false;
    for (let k = 0; k < taken.length; k += 2) {
      if (taken[k]! <= from && taken[k + 1]! > from) {
        from = taken[k + 1]!;
        pushed = true;
      } else if (taken[k]! > from && taken[k]! < to) to = taken[k]!;
    }
    if (pushed) continue;
    keep(from, to);
    from = to;
  }
}

import { chordLength, type Edge, halfTangent, onItsCircle } from './edge.js';
import type { Contour } from './region.js';
import { CRUMB, SAME_POINT } from './tolerances.js';

/** Two lines nearer to one line than this (radians), or two arcs whose circles agree to SAME_POINT, become one. */
const STRAIGHT = 1e-9;

/** tan(85 degrees): half of the widest arc the kernel keeps in one. */
const WIDEST = 11.430052302761343;

/** A contour without crumbs and with collinear lines and co-circular arcs joined (up to 170 degrees). */
export function tidied(contour: Contour): Contour {
  const clean = withoutCrumbs(contour);
  const out: Edge[] = [];
  for (const e of clean) {
    if (chordLength(e) <= SAME_POINT) continue;
    const last = out[out.length - 1];
    const joined = last && join(last, e);
    if (joined) out[out.length - 1] = joined;
    else out.push(e);
  }
  while (out.length > 2) {
    const joined = join(out[out.length - 1]!, out[0]!);
    if (!joined) break;
    out.pop();
    out[0] = joined;
  }
  if (out.length === clean.length) return clean;
  return out.length < 2 ? [] : closed(out);
}

/**
 * A contour without edges shorter than CRUMB: the edges before and after a crumb (or a run of them) meet at its middle.
 * Where a crumb lies between tangent edges both then turn by the same little angle, and no corner comes of it.
 */
export function withoutCrumbs(contour: Contour): Contour {
  if (!contour.some(isCrumb)) return contour;
  const first = contour.findIndex((e) => !isCrumb(e));
  if (first < 0) return [];
  const out: Edge[] = [];
  const n = contour.length;
  let from: Edge | null = null;
  for (let k = 0; k <= n; k++) {
    const e = contour[(first + k) % n]!;
    if (k < n && isCrumb(e)) {
      from ??= e;
      continue;
    }
    const x = from ? (from.x0 + e.x0) / 2 : e.x0;
    const y = from ? (from.y0 + e.y0) / 2 : e.y0;
    const last = out.length - 1;
    if (from && last >= 0) out[last] = { ...out[last]!, x1: x, y1: y };
    if (k < n) out.push(from ? { ...e, x0: x, y0: y } : e);
    else if (from) out[0] = { ...out[0]!, x0: x, y0: y };
    from = null;
  }
  return out.map((e) => onItsCircle(e));
}

function isCrumb(e: Edge): boolean {
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  return dx * dx + dy * dy < CRUMB * CRUMB;
}

/** Ends meet again after short edges were left out. */
function closed(edges: Edge[]): Contour {
  return edges.map((e, i) => {
    const before = edges[(i + edges.length - 1) % edges.length]!;
    return before.x1 === e.x0 && before.y1 === e.y0 ? e : { ...e, x0: before.x1, y0: before.y1 };
  });
}

function join(a: Edge, b: Edge): Edge | null {
  if (a.r === 0 && b.r === 0) {
    const ax = a.x1 - a.x0;
    const ay = a.y1 - a.y0;
    const bx = b.x1 - b.x0;
    const by = b.y1 - b.y0;
    const cross = ax * by - ay * bx;
    const bent = cross * cross > STRAIGHT * STRAIGHT * (ax * ax + ay * ay) * (bx * bx + by * by);
    if (bent || ax * bx + ay * by <= 0) return null;
    return { ...a, x1: b.x1, y1: b.y1 };
  }
  if (a.r === 0 || b.r === 0 || Math.abs(a.r - b.r) > SAME_POINT) return null;
  if (Math.abs(a.cx - b.cx) > SAME_POINT || Math.abs(a.cy - b.cy) > SAME_POINT) return null;
  const s = halfTangent(a);
  const t = halfTangent(b);
  // tan of the sum of the half sweeps; the denominator turns negative past 180 degrees.
  if (s * t >= 1 || (s + t) / (1 - s * t) > WIDEST) return null;
  return { ...a, x1: b.x1, y1: b.y1 };
}

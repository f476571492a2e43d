import { chordLength, type Edge, halfTangent } from './edge.js';
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

/** A contour without edges shorter than CRUMB: the edges before and after a crumb meet at its middle. */
export function withoutCrumbs(contour: Contour): Contour {
  if (!contour.some(isCrumb)) return contour;
  const out: Edge[] = [];
  for (const e of contour) {
    const last = out[out.length - 1];
    if (last && isCrumb(last)) {
      out.pop();
      const before = out[out.length - 1];
      const x = before ? (last.x0 + last.x1) / 2 : last.x1;
      const y = before ? (last.y0 + last.y1) / 2 : last.y1;
      if (before) out[out.length - 1] = { ...before, x1: x, y1: y };
      out.push({ ...e, x0: x, y0: y });
    } else out.push(e);
  }
  // A crumb at the seam: the last edge meets the first at its far end.
  if (out.length > 2 && isCrumb(out[out.length - 1]!)) out.pop();
  return closed(out);
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

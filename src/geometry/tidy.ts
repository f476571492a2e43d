import {
  chordLength,
  type Edge,
  endTangent,
  halfTangent,
  onItsCircle,
  startTangent,
  withEnds,
} from './edge.js';
import type { Contour } from './region.js';
import { CRUMB, SAME_POINT, SMOOTH_JOINT } from './tolerances.js';

/** Two lines nearer to one line than this (radians), or two arcs whose circles agree to SAME_POINT, become one. */
const STRAIGHT = 1e-9;

/** tan(85 degrees): half of the widest arc the kernel keeps in one. */
const WIDEST = 11.430052302761343;

/** Where a line goes back along itself to the left, nearer than this, mm, there is no wood between. A slit stays one. */
const HAIR_WIDTH = SAME_POINT / 10;

/** A contour without crumbs and hairs, and with collinear lines and co-circular arcs joined (up to 170 degrees). */
export function tidied(contour: Contour): Contour {
  const clean = withoutCrumbs(contour);
  const out: Edge[] = [];
  for (const e of clean) append(out, e);
  while (out.length > 2) {
    const last = out[out.length - 1]!;
    const joined = join(last, out[0]!);
    const rest = joined ? null : withoutHair(last, out[0]!);
    if (!joined && !rest) break;
    out.pop();
    if (joined) out[0] = joined;
    else {
      out.shift();
      append(out, rest!);
    }
  }
  if (out.length === clean.length && !thereAndBack(out)) return clean;
  return out.length < 2 || thereAndBack(out) ? [] : closed(out);
}

function append(out: Edge[], e: Edge): void {
  if (chordLength(e) <= SAME_POINT) return;
  const last = out[out.length - 1];
  const joined = last && join(last, e);
  if (joined) {
    out[out.length - 1] = joined;
    return;
  }
  const rest = last && withoutHair(last, e);
  if (!rest) {
    out.push(e);
    return;
  }
  out.pop();
  append(out, rest);
}

/** What is left of two lines of which one goes back along the other; null where they do not. */
function withoutHair(a: Edge, b: Edge): Edge | null {
  if (a.r !== 0 || b.r !== 0) return null;
  const ax = a.x1 - a.x0;
  const ay = a.y1 - a.y0;
  const bx = b.x1 - b.x0;
  const by = b.y1 - b.y0;
  const cross = ax * by - ay * bx;
  if (ax * bx + ay * by >= 0 || cross <= 0) return null;
  // How far the end of the shorter one lies beside the longer one.
  const longer = Math.max(ax * ax + ay * ay, bx * bx + by * by);
  return cross * cross > HAIR_WIDTH * HAIR_WIDTH * longer ? null : withEnds(a, a.x0, a.y0, b.x1, b.y1);
}

/** Two straight edges enclose nothing. */
function thereAndBack(edges: readonly Edge[]): boolean {
  return edges.length === 2 && edges[0]!.r === 0 && edges[1]!.r === 0;
}

/**
 * A contour without edges shorter than CRUMB: the edges before and after a crumb (or a run of them) meet at its middle.
 * Where a crumb lies between tangent edges both then turn by the same little angle, and no corner comes of it.
 */
export function withoutCrumbs(contour: Contour): Contour {
  if (!contour.some(isCrumb)) return contour;
  const dropped = toDrop(contour);
  const first = dropped.indexOf(false);
  if (first < 0) return [];
  if (!dropped.includes(true)) return contour;
  const out: Edge[] = [];
  const n = contour.length;
  let from: Edge | null = null;
  for (let k = 0; k <= n; k++) {
    const e = contour[(first + k) % n]!;
    if (k < n && dropped[(first + k) % n]) {
      from ??= e;
      continue;
    }
    const x = from ? (from.x0 + e.x0) / 2 : e.x0;
    const y = from ? (from.y0 + e.y0) / 2 : e.y0;
    const last = out.length - 1;
    if (from && last >= 0) out[last] = withEnds(out[last]!, out[last]!.x0, out[last]!.y0, x, y);
    if (k < n) out.push(from ? withEnds(e, x, y, e.x1, e.y1) : e);
    else if (from) out[0] = withEnds(out[0]!, x, y, out[0]!.x1, out[0]!.y1);
    from = null;
  }
  return out.map((e) => onItsCircle(e));
}

/**
 * Which edges are left out: crumbs, but for those that pass smoothly from one edge to the next where these two, made to
 * meet, would not.
 */
function toDrop(contour: Contour): boolean[] {
  const drop = contour.map(isCrumb);
  const n = contour.length;
  for (let i = 0; i < n; i++) {
    if (!drop[i] || isCrumb(contour[(i + n - 1) % n]!)) continue;
    let run = 1;
    while (run < n && isCrumb(contour[(i + run) % n]!)) run++;
    const edges = Array.from({ length: run + 2 }, (_, k) => contour[(i + n - 1 + k) % n]!);
    if (run + 2 > n || edges.some((e, k) => k > 0 && !smooth(edges[k - 1]!, e))) continue;
    for (const k of needed(edges)) drop[(i + k - 1) % n] = false;
  }
  return drop;
}

/** Which crumbs of a run between two edges are needed for it to stay smooth: none, or the longest, or all. */
function needed(edges: readonly Edge[]): number[] {
  const crumbs = edges.slice(1, -1).map((_, k) => k + 1);
  const longest = crumbs.reduce((a, b) => (chordLength(edges[b]!) > chordLength(edges[a]!) ? b : a));
  const last = edges.length - 1;
  const enough = [[], [longest]].find((kept) => meetSmoothly([0, ...kept, last].map((k) => edges[k]!)));
  return enough ?? crumbs;
}

/** Whether edges stay smooth where each is made to meet the next half way between their ends. */
function meetSmoothly(edges: readonly Edge[]): boolean {
  const joints = edges
    .slice(1)
    .map((e, k) => [(edges[k]!.x1 + e.x0) / 2, (edges[k]!.y1 + e.y0) / 2] as const);
  const joined = edges.map((e, k) => {
    const [x0, y0] = joints[k - 1] ?? [e.x0, e.y0];
    const [x1, y1] = joints[k] ?? [e.x1, e.y1];
    return onItsCircle(withEnds(e, x0, y0, x1, y1));
  });
  return joined.every((e, k) => k === 0 || smooth(joined[k - 1]!, e));
}

function smooth(e: Edge, after: Edge): boolean {
  const [ax, ay] = endTangent(e);
  const [bx, by] = startTangent(after);
  return ax * bx + ay * by > 0 && Math.abs(ax * by - ay * bx) < SMOOTH_JOINT;
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
    return before.x1 === e.x0 && before.y1 === e.y0 ? e : withEnds(e, before.x1, before.y1, e.x1, e.y1);
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
    return withEnds(a, a.x0, a.y0, b.x1, b.y1);
  }
  if (a.r === 0 || b.r === 0 || Math.abs(a.r - b.r) > SAME_POINT) return null;
  if (Math.abs(a.cx - b.cx) > SAME_POINT || Math.abs(a.cy - b.cy) > SAME_POINT) return null;
  const s = halfTangent(a);
  const t = halfTangent(b);
  // tan of the sum of the half sweeps; the denominator turns negative past 180 degrees.
  if (s * t >= 1 || (s + t) / (1 - s * t) > WIDEST) return null;
  return withEnds(a, a.x0, a.y0, b.x1, b.y1);
}

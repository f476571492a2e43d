import { biarc } from './biarc.js';
import {
  type Edge,
  edgeLength,
  endTangent,
  parameterEnd,
  part,
  pointAt,
  startTangent,
  tangentAt,
} from './edge.js';
import { type Contour, distanceToEdge } from './region.js';
import { tidied } from './tidy.js';
import { tan } from './trig.js';

/** Turns between these (radians) are blemishes: under it smooth enough to leave, over it corners to round. */
const LEAST_TURN = 2e-4;
const MOST_TURN = 0.08;

/** An edge shorter than this share of r, between two that it meets smoothly, is a blemish as well: it cannot hold its direction when written. */
const SHORT = 0.004;

/** How far to either side of a blemish the boundary is drawn anew, in r; and how long a run of them may be. */
const BESIDE = 0.04;
const LONGEST = 0.4;

/** What is drawn anew stays this near to what was, mm. */
const STRAY = 0.002;

/**
 * A contour without shallow kinks: where shapes that all but coincide were joined, the boundary turns by a thousandth of
 * a radian or so, too little for a corner to be rounded and too much for a smooth joint. Two tangent arcs of radius r or
 * more take the place of each such joint and a little beside it; where none fit, it stays.
 */
export function eased(given: Contour, r: number): Contour {
  if (given.length < 3 || !given.some((e, i) => isBlemish(e, given[(i + 1) % given.length]!, r)))
    return given;
  const contour = begunMidway(given);
  const n = contour.length;
  const kinks: number[] = [];
  for (let i = 1; i < n; i++) if (isBlemish(contour[i - 1]!, contour[i]!, r)) kinks.push(i);
  const at: number[] = [0];
  for (const e of contour) at.push(at[at.length - 1]! + edgeLength(e));
  const total = at[n]!;
  const reach = BESIDE * r;
  if (total < 8 * reach) return given;
  let now: Contour = contour;
  // From the last to the first, so that places before stay as measured.
  for (const [from, to] of spans(
    kinks.map((i) => at[i]!),
    reach,
    LONGEST * r,
    total,
  ).reverse())
    now = redrawn(now, from, to, r) ?? now;
  return tidied(now);
}

function isBlemish(e: Edge, next: Edge, r: number): boolean {
  const turn = turnAt(e, next);
  return (turn > LEAST_TURN && turn < MOST_TURN) || (turn < MOST_TURN && edgeLength(next) < SHORT * r);
}

function turnAt(e: Edge, next: Edge): number {
  const [ax, ay] = endTangent(e);
  const [bx, by] = startTangent(next);
  return ax * bx + ay * by <= 0 ? 4 : Math.abs(ax * by - ay * bx);
}

/** Stretches about places along a contour, those that overlap made one; over the contour's start they are left out. */
function spans(places: readonly number[], reach: number, longest: number, total: number): [number, number][] {
  const out: [number, number][] = [];
  for (const p of places) {
    const last = out[out.length - 1];
    if (last && p - reach < last[1] && p + reach - last[0] < longest) last[1] = p + reach;
    else if (!last || p - reach >= last[1]) out.push([p - reach, p + reach]);
  }
  return out.filter(([from, to]) => from > 0 && to < total);
}

interface Place {
  readonly edge: number;
  readonly t: number;
  readonly point: [number, number];
  readonly tangent: [number, number];
}

function placeAt(contour: Contour, along: number): Place {
  let left = along;
  for (let i = 0; i < contour.length; i++) {
    const e = contour[i]!;
    const l = edgeLength(e);
    if (left > l && i + 1 < contour.length) {
      left -= l;
      continue;
    }
    const share = Math.min(left, l);
    const t = Math.min(parameterEnd(e), e.r === 0 ? share : tan(share / Math.abs(e.r) / 2));
    const point = pointAt(e, t);
    return { edge: i, t, point, tangent: tangentAt(e, point[0], point[1]) };
  }
  throw new RangeError('a place beyond the contour');
}

function redrawn(contour: Contour, from: number, to: number, r: number): Contour | null {
  const a = placeAt(contour, from);
  const b = placeAt(contour, to);
  const arcs = biarc(a.point, a.tangent, b.point, b.tangent, null)?.edges;
  if (!arcs || arcs.some((e) => e.r !== 0 && Math.abs(e.r) < r)) return null;
  for (let i = a.edge + 1; i <= b.edge; i++) {
    const { x0, y0 } = contour[i]!;
    if (Math.min(...arcs.map((e) => distanceToEdge(e, x0, y0))) > STRAY) return null;
  }
  const first = contour[a.edge]!;
  const last = contour[b.edge]!;
  const out = [
    ...contour.slice(0, a.edge),
    part(first, 0, a.t),
    ...arcs,
    part(last, b.t, Number.POSITIVE_INFINITY),
  ];
  return [...out, ...contour.slice(b.edge + 1)];
}

/** The contour begun in the middle of its longest edge, so that no joint lies at its start. */
function begunMidway(contour: Contour): Contour {
  let longest = 0;
  for (let i = 1; i < contour.length; i++)
    if (edgeLength(contour[i]!) > edgeLength(contour[longest]!)) longest = i;
  const e = contour[longest]!;
  const middle = placeAt([e], edgeLength(e) / 2).t;
  const end = parameterEnd(e);
  return [
    part(e, middle, end),
    ...contour.slice(longest + 1),
    ...contour.slice(0, longest),
    part(e, 0, middle),
  ];
}

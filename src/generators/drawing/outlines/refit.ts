import {
  bulged,
  chordLength,
  type Edge,
  endTangent,
  halfTangent,
  line,
  MAX_SWEEP,
  midpoint,
  parameterEnd,
  pointAt,
  pointParameter,
  startTangent,
} from '../../../geometry/edge.js';
import { circle } from '../../../geometry/region.js';
import { atan2, tan } from '../../../geometry/trig.js';
import type { Stretch } from './chain.js';
import { arcBetweenEnds, circleThrough } from './circle-fit.js';
import { ONE_POINT } from './points.js';
import type { Repairs } from './repair.js';

/** An arc stands for no fewer edges than this: any three points lie on a circle. */
const LEAST_FOR_ARC = 4;

/** Arcs that meet their neighbours at less than this (sine of the angle; 0.2 degrees) are drawn with care and are kept. */
const TANGENT = 0.0035;

/** Share of `within` that arcs are held to: what is measured at some points holds between them too. */
const MEASURED = 0.98;

/** tan(sweep / 4) of the widest arc. */
const WIDEST = tan(MAX_SWEEP / 4);

type Place = readonly [number, number];

/**
 * The loop with runs of short edges that lie within `within` mm of a line or an arc made one, as long as they go; the
 * ends of every run stay where they are, so corners are kept. A loop that is all one circle becomes that circle.
 */
export function refitted(loop: readonly Stretch[], within: number, repairs: Repairs): Stretch[] {
  if (within === 0 || loop.length < 3) return [...loop];
  const round = asCircle(loop, within);
  if (round) {
    repairs.add('refitted', midpoint(loop[0]!.edge), round.off);
    return round.edges.map((edge) => ({ edge, origin: loop[0]!.origin, curve: false }));
  }
  const turned = fromCorner(loop);
  const free = turned.map((s, i) => isFree(turned, i, s));
  const out: Stretch[] = [];
  let end = 0;
  for (let i = 0; i < turned.length; ) {
    // Where the free edges from here on end.
    for (end = Math.max(end, i); end < turned.length && free[end]; ) end++;
    const run = free[i] ? longest(turned, i, end, within) : null;
    if (!run) {
      out.push(turned[i]!);
      i++;
      continue;
    }
    // A corner on a straight line is no change to be told of.
    if (run.off > ONE_POINT) repairs.add('refitted', midpoint(run.edge), run.off);
    out.push({ edge: run.edge, origin: turned[i]!.origin, curve: false });
    i = run.to;
  }
  return out;
}

/** Straight edges may be refitted; so may arcs that meet a neighbour at an angle. */
function isFree(loop: readonly Stretch[], i: number, { edge, curve }: Stretch): boolean {
  if (curve) return false;
  if (edge.r === 0) return true;
  const n = loop.length;
  const kink = (a: Edge, b: Edge): number => {
    const [ax, ay] = endTangent(a);
    const [bx, by] = startTangent(b);
    return Math.abs(ax * by - ay * bx);
  };
  const before = loop[(i + n - 1) % n]!.edge;
  const after = loop[(i + 1) % n]!.edge;
  return kink(before, edge) > TANGENT && kink(edge, after) > TANGENT;
}

/** The loop from the corner that is hardest to miss: the sharpest, between the longest edges. */
function fromCorner(loop: readonly Stretch[]): Stretch[] {
  let best = 0;
  let most = -1;
  loop.forEach(({ edge }, i) => {
    const before = loop[(i + loop.length - 1) % loop.length]!.edge;
    const [ax, ay] = endTangent(before);
    const [bx, by] = startTangent(edge);
    const sharp = (1 - ax * bx - ay * by) * Math.min(chordLength(before), chordLength(edge));
    if (sharp > most) [best, most] = [i, sharp];
  });
  return [...loop.slice(best), ...loop.slice(0, best)];
}

interface Run {
  readonly edge: Edge;
  /** The first edge after it. */
  readonly to: number;
  readonly off: number;
}

/** The longest run from the i-th edge, before `end`, that one line or arc stands for; null when there is none. */
function longest(loop: readonly Stretch[], i: number, end: number, within: number): Run | null {
  const attempt = (to: number): Run | null => {
    const edges = loop.slice(i, to).map((s) => s.edge);
    const found = asLine(edges, within) ?? (edges.length >= LEAST_FOR_ARC ? asArc(edges, within) : null);
    return found && { ...found, to };
  };
  let best: Run | null = null;
  let reach = 2;
  let failed = end - i + 1;
  // Twice as far each time, then halved to the last that holds.
  for (; i + reach <= end; reach *= 2) {
    const run = attempt(i + reach);
    if (run) best = run;
    else if (reach >= LEAST_FOR_ARC) {
      failed = reach;
      break;
    }
  }
  let lo = best ? best.to - i : LEAST_FOR_ARC - 1;
  let hi = Math.min(failed, end - i + 1);
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1;
    const run = attempt(i + mid);
    if (run) [best, lo] = [run, mid];
    else hi = mid;
  }
  return best;
}

function asLine(edges: readonly Edge[], within: number): { edge: Edge; off: number } | null {
  const first = edges[0]!;
  const last = edges[edges.length - 1]!;
  const edge = line(first.x0, first.y0, last.x1, last.y1);
  const l = chordLength(edge);
  if (l <= 2 * within) return null;
  const ux = (edge.x1 - edge.x0) / l;
  const uy = (edge.y1 - edge.y0) / l;
  let off = 0;
  for (const [x, y] of samples(edges)) {
    const along = (x - edge.x0) * ux + (y - edge.y0) * uy;
    const away = Math.abs((x - edge.x0) * uy - (y - edge.y0) * ux);
    if (away > within || along < -within || along > l + within) return null;
    off = Math.max(off, away);
  }
  return { edge, off };
}

function asArc(edges: readonly Edge[], within: number): { edge: Edge; off: number } | null {
  const first = edges[0]!;
  const last = edges[edges.length - 1]!;
  const found = arcBetweenEnds([first.x0, first.y0], [last.x1, last.y1], samples(edges));
  if (!found || Math.abs(found.bulge) > WIDEST) return null;
  const edge = bulged(first.x0, first.y0, last.x1, last.y1, found.bulge);
  if (edge.r === 0) return null;
  const off = strays(edges, edge, within * MEASURED);
  return off === null ? null : { edge, off };
}

/** How far edges stray from an arc between the same ends at the most; null when further than `within`, or back along it. */
function strays(edges: readonly Edge[], whole: Edge, within: number): number | null {
  const r = Math.abs(whole.r);
  const end = halfTangent(whole);
  const slack = within / r;
  let off = 0;
  let reached = 0;
  for (const e of edges) {
    const t = pointParameter(whole, e.x1, e.y1);
    if (e !== edges[edges.length - 1] && !(t > reached - slack && t < end + slack)) return null;
    reached = Math.max(reached, t);
    for (const [x, y] of farthest(e, whole.cx, whole.cy)) {
      const dx = x - whole.cx;
      const dy = y - whole.cy;
      const d = Math.abs(Math.sqrt(dx * dx + dy * dy) - r);
      if (!(d <= within)) return null;
      off = Math.max(off, d);
    }
  }
  return off;
}

/** The points of an edge that lie nearest to and farthest from a centre: exactly for a line, nearly for an arc. */
function farthest(e: Edge, cx: number, cy: number): Place[] {
  const ends: Place[] = [
    [e.x0, e.y0],
    [e.x1, e.y1],
  ];
  if (e.r !== 0) return [...ends, ...[0.25, 0.5, 0.75].map((s) => pointAt(e, parameterEnd(e) * s))];
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  const t = ((cx - e.x0) * dx + (cy - e.y0) * dy) / (dx * dx + dy * dy);
  return t > 0 && t < 1 ? [...ends, [e.x0 + dx * t, e.y0 + dy * t]] : ends;
}

/** Corners and middles. */
function samples(edges: readonly Edge[]): Place[] {
  return edges.flatMap((e): Place[] => [[e.x0, e.y0], midpoint(e)]);
}

/** The whole loop as a circle, where every part of it lies within `within` of one. */
function asCircle(loop: readonly Stretch[], within: number): { edges: Edge[]; off: number } | null {
  if (loop.length < 2 * LEAST_FOR_ARC || loop.some((s, i) => !isFree(loop, i, s))) return null;
  const edges = loop.map((s) => s.edge);
  const found = circleThrough(samples(edges));
  if (!found || !(found.r > 2 * within)) return null;
  let off = 0;
  let turns = 0;
  for (const e of edges) {
    for (const [x, y] of farthest(e, found.x, found.y)) {
      const dx = x - found.x;
      const dy = y - found.y;
      const d = Math.abs(Math.sqrt(dx * dx + dy * dy) - found.r);
      if (!(d <= within * MEASURED)) return null;
      off = Math.max(off, d);
    }
    turns += turnRound(e, found.x, found.y);
  }
  // Once round, not to and fro or twice.
  if (Math.abs(Math.abs(turns) - 2 * Math.PI) > 0.1) return null;
  const made = circle(found.x, found.y, found.r);
  return { edges: [...made], off };
}

/** The angle by which an edge that keeps well away from a point goes round it, radians, signed. */
function turnRound(e: Edge, x: number, y: number): number {
  const ux = e.x0 - x;
  const uy = e.y0 - y;
  const vx = e.x1 - x;
  const vy = e.y1 - y;
  return atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

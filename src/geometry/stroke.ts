import { resolve } from './boolean.js';
import { closedChain } from './chain.js';
import {
  arc,
  bulged,
  chordLength,
  type Edge,
  endTangent,
  halfTangent,
  halveTangent,
  line,
  reversed,
  startTangent,
} from './edge.js';
import { type Contour, EMPTY, type Region } from './region.js';
import { SAME_POINT, SMOOTH } from './tolerances.js';

export interface StrokeStyle {
  /** Does the path end where it starts, with a join there instead of two ends? */
  readonly closed: boolean;
  /** What fills the outside of a corner. A mitre over the limit becomes a bevel, as in SVG. */
  readonly join?: 'miter' | 'round' | 'bevel';
  /** The longest mitre, in widths; 4 when left out, as in SVG. */
  readonly miterLimit?: number;
  /** The shape of both ends, or of the start and the end. */
  readonly cap?: Cap | readonly [Cap, Cap];
}

export type Cap = 'butt' | 'round' | 'square';

/** SVG's own limit of the length of a mitre, in widths, from the inner corner to the tip. */
const MITER_LIMIT = 4;

type Point = readonly [number, number];

type Corners = Required<Pick<StrokeStyle, 'join' | 'miterLimit'>>;

/**
 * The band of one width along a chain of lines and arcs (each starts where the last ended), mm. The path may cross
 * itself. Arcs tighter than half the width are filled to their centre and no further.
 */
export function stroke(chain: readonly Edge[], width: number, style: StrokeStyle): Region {
  const loops = strokeLoops(chain, width, style);
  return loops.length === 0 ? EMPTY : resolve(loops, 'nonzero');
}

/** The band as loops that may cross themselves and each other; it is where they turn round a point, always to the left. */
export function strokeLoops(chain: readonly Edge[], width: number, style: StrokeStyle): Contour[] {
  const { closed, join = 'miter', cap = 'butt', miterLimit = MITER_LIMIT } = style;
  const path = chain.filter((e) => Math.abs(e.x1 - e.x0) + Math.abs(e.y1 - e.y0) > SAME_POINT);
  if (path.length === 0) return [];
  const half = width / 2;
  const corners = { join, miterLimit };
  // Each side is a chain of points and edges; strips, corners and ends all turn left, so their sum encloses the band.
  const right = side(path, half, closed, corners);
  const left = side(path.map(reversed).reverse(), half, closed, corners);
  if (closed) return [right, left];
  const last = path[path.length - 1]!;
  const first = path[0]!;
  const contour = chained([
    ...right,
    ...end([last.x1, last.y1], endTangent(last), half, typeof cap === 'string' ? cap : cap[1]),
    ...left,
    ...end(
      [first.x0, first.y0],
      turnedBack(startTangent(first)),
      half,
      typeof cap === 'string' ? cap : cap[0],
    ),
  ]);
  return [contour];
}

/** The chain `half` to the right of the path, corners included. */
function side(path: readonly Edge[], half: number, closed: boolean, how: Corners): Edge[] {
  const out: Edge[] = [];
  for (let i = 0; i < path.length; i++) {
    const e = path[i]!;
    out.push(...beside(e, half));
    const next = path[i + 1] ?? (closed ? path[0] : undefined);
    if (next) out.push(...corner(e, next, half, how));
  }
  return closed ? chained(out) : out;
}

/** The edge moved to its right; round the centre of an arc too tight for that. */
function beside(e: Edge, d: number): Edge[] {
  const a = toTheRight([e.x0, e.y0], startTangent(e), d);
  const b = toTheRight([e.x1, e.y1], endTangent(e), d);
  if (e.r === 0) return [line(a[0], a[1], b[0], b[1])];
  const r = e.r + d;
  if (e.r > 0 || r < -SAME_POINT) return [arc(a[0], a[1], b[0], b[1], e.cx, e.cy, r)];
  // Both ends of the arc lie between its centre and the ends of this side, so the way back to them cancels out.
  return joined([a, [e.cx, e.cy], b]);
}

/** From the end of the edge's right side to the start of the next one's. */
function corner(e: Edge, next: Edge, d: number, { join, miterLimit }: Corners): Edge[] {
  const p: Point = [e.x1, e.y1];
  const t = endTangent(e);
  const u = startTangent(next);
  const cross = t[0] * u[1] - t[1] * u[0];
  const dot = t[0] * u[0] + t[1] * u[1];
  const a = toTheRight(p, t, d);
  const b = toTheRight(p, u, d);
  // The step between is along the path and far below a point: `chained` closes it.
  if (Math.abs(cross) < SMOOTH && dot > 0) return [];
  // The inner side of a corner runs back to the path: what overlaps there counts twice and does no harm.
  if (cross < 0) return joined([a, p, b]);
  // tan(turn / 2) and, for a turn on the spot, as good as infinite.
  const tanHalf = 1 + dot > 1e-12 ? cross / (1 + dot) : 1e9;
  if (join === 'round') return rounded(a, b, tanHalf);
  // A mitre reaches half / cos(turn / 2) from the path's corner.
  if (join === 'bevel' || 1 + tanHalf * tanHalf > miterLimit * miterLimit) return joined([a, b]);
  const tip: Point = [a[0] + t[0] * d * tanHalf, a[1] + t[1] * d * tanHalf];
  return joined([a, tip, b]);
}

/** An arc that turns left from a to b, with its half turn's tangent; in two where one would be near half a circle. */
function rounded(a: Point, b: Point, tanHalf: number): Edge[] {
  const quarter = halveTangent(tanHalf);
  if (quarter < 0.8) return [bulged(a[0], a[1], b[0], b[1], quarter)];
  // Half way round, the arc stands (chord / 2) tan(turn / 4) off the chord's middle, to its right.
  const mx = (a[0] + b[0]) / 2 + ((b[1] - a[1]) / 2) * quarter;
  const my = (a[1] + b[1]) / 2 - ((b[0] - a[0]) / 2) * quarter;
  const eighth = halveTangent(quarter);
  return [bulged(a[0], a[1], mx, my, eighth), bulged(mx, my, b[0], b[1], eighth)];
}

/** Across the end of the path at p, which runs along t there, from its right side to its left. */
function end(p: Point, t: Point, d: number, cap: Cap): Edge[] {
  const a = toTheRight(p, t, d);
  const b = toTheRight(p, t, -d);
  if (cap === 'round') {
    const tip: Point = [p[0] + t[0] * d, p[1] + t[1] * d];
    const quarter = Math.SQRT2 - 1;
    return [bulged(a[0], a[1], tip[0], tip[1], quarter), bulged(tip[0], tip[1], b[0], b[1], quarter)];
  }
  if (cap === 'butt') return joined([a, b]);
  return joined([a, [a[0] + t[0] * d, a[1] + t[1] * d], [b[0] + t[0] * d, b[1] + t[1] * d], b]);
}

function toTheRight(p: Point, t: Point, d: number): Point {
  return [p[0] + t[1] * d, p[1] - t[0] * d];
}

function turnedBack([x, y]: Point): Point {
  return [-x, -y];
}

function joined(points: readonly Point[]): Edge[] {
  const out: Edge[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [p, q] = [points[i]!, points[i + 1]!];
    if (Math.abs(p[0] - q[0]) + Math.abs(p[1] - q[1]) > SAME_POINT) out.push(line(p[0], p[1], q[0], q[1]));
  }
  return out;
}

/** Ends made one to the last bit, with crumbs left out (offset ends of one point differ by rounding), and spikes. */
function chained(edges: readonly Edge[]): Edge[] {
  const kept = edges.filter(
    (e) => Math.abs(e.x1 - e.x0) + Math.abs(e.y1 - e.y0) > SAME_POINT || halfTangent(e) > 1,
  );
  return closedChain(withoutSpikes(kept));
}

/**
 * The chain without lines that run out and straight back, as beside tight arcs that follow each other: they enclose
 * nothing, but rounding would make slivers of them.
 */
function withoutSpikes(edges: readonly Edge[]): Edge[] {
  const out: Edge[] = [];
  for (const e of edges) {
    let next: Edge | null = e;
    for (let last = out.at(-1); next && last && retraces(last, next); last = out.at(-1)) {
      out.pop();
      const rest: Edge = line(last.x0, last.y0, next.x1, next.y1);
      next = chordLength(rest) > SAME_POINT ? rest : null;
    }
    if (next) out.push(next);
  }
  return out;
}

function retraces(e: Edge, next: Edge): boolean {
  if (e.r !== 0 || next.r !== 0) return false;
  const [tx, ty] = endTangent(e);
  const [ux, uy] = startTangent(next);
  return tx * ux + ty * uy < 0 && Math.abs(tx * uy - ty * ux) < SMOOTH;
}

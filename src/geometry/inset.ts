import {
  arc,
  chordLength,
  type Edge,
  edgeLength,
  endTangent,
  line,
  parameterEnd,
  part,
  pointAt,
  reversed,
  startTangent,
} from './edge.js';
import { EdgesIndex } from './edges-index.js';
import { link } from './link.js';
import { type Contour, rayCrossings } from './region.js';
import { GRAZE, jointWithin, NO_RADIUS, SMOOTH } from './tolerances.js';
import { addNear, beginStretches, betweenStretches, noneNear } from './too-near.js';

/** A stretch of an inset boundary and where it came from. */
export interface Stretch {
  /** The inset edge itself, r to the left of its source. */
  readonly edge: Edge;
  /** The boundary edge it is parallel to; null when it turns about a corner. */
  readonly source: Edge | null;
  /** Part of the source it belongs to, by parameter (inset and source share parameters). */
  readonly from: number;
  readonly to: number;
  /** The boundary points r to the right of the stretch's two ends. */
  readonly foot0: readonly [number, number];
  readonly foot1: readonly [number, number];
}

/** The boundary of the set of points at least r inside a region, in stretches that know their sources. */
export interface Inset {
  readonly stretches: readonly Stretch[];
  /** Position of the stretch that continues each one along the inset boundary. */
  readonly next: readonly number[];
  /** Position of the stretch that follows each one along the *source* contour, whatever was dropped between. */
  readonly follows: readonly number[];
  /** Contours that left nothing: no disc of radius r fits beside any point of them. Positions in the input. */
  readonly lost: readonly number[];
}

/**
 * The erosion of a region by a disc of radius r, exact on lines and arcs (Serra 1982): every boundary edge is moved
 * left by r, corners that turn right get an arc about them, and what lies nearer than r to any other boundary edge
 * is cut away. What stays is linked end to start. Null when the ends do not pair up (a degenerate coincidence;
 * the caller tries again with r changed by a hair).
 *
 * `overlay`: the contours may cross, where clockwise ones (discs, capsules) are to be taken away from the region
 * of the others; then what is left is where the winding number is exactly 1. `graze`: see tolerances.ts.
 */
export function inset(contours: readonly Contour[], r: number, overlay = false, graze = GRAZE): Inset | null {
  const sources: Edge[] = contours.flat();
  const index = new EdgesIndex(sources);
  const stretches: Stretch[] = [];
  const follows: number[] = [];
  const lost: number[] = [];
  let base = 0;
  for (let c = 0; c < contours.length; c++) {
    const first = stretches.length;
    insetContour(contours[c]!, base, r, graze, index, sources, stretches);
    base += contours[c]!.length;
    if (overlay) dropOutside(index, sources, stretches, first);
    const count = stretches.length - first;
    for (let k = 0; k < count; k++) follows.push(first + ((k + 1) % count));
    if (count === 0) lost.push(c);
  }
  const next = link(
    stretches.map((s) => s.edge),
    jointWithin(r, graze),
  );
  return next && { stretches, next, follows, lost };
}

function dropOutside(index: EdgesIndex, sources: readonly Edge[], stretches: Stretch[], first: number): void {
  let kept = first;
  for (let k = first; k < stretches.length; k++) {
    const s = stretches[k]!;
    const [x, y] = pointAt(s.edge, parameterEnd(s.edge) / 2);
    let turns = 0;
    for (const j of index.alongRay(x, y)) turns += rayCrossings(sources[j]!, x, y);
    if (turns === 1) stretches[kept++] = s;
  }
  stretches.length = kept;
}

function insetContour(
  contour: Contour,
  base: number,
  r: number,
  graze: number,
  index: EdgesIndex,
  sources: readonly Edge[],
  out: Stretch[],
): void {
  for (let i = 0; i < contour.length; i++) {
    const e = contour[i]!;
    const moved = movedLeft(e, r);
    if (moved) keepFar(moved, e, base + i, r, graze, index, sources, out);
    const after = contour[i + 1 < contour.length ? i + 1 : 0]!;
    for (const turn of turnAbout(e, after, r)) keepFar(turn, null, -1, r, graze, index, sources, out);
  }
}

/** The edge r to the left, or null when it has turned inside out (its points are then nearer than r to the edge itself). */
export function movedLeft(e: Edge, r: number): Edge | null {
  if (e.r === 0) {
    const dx = e.x1 - e.x0;
    const dy = e.y1 - e.y0;
    const l = Math.sqrt(dx * dx + dy * dy) || 1;
    const tx = dx / l;
    const ty = dy / l;
    return line(e.x0 - ty * r, e.y0 + tx * r, e.x1 - ty * r, e.y1 + tx * r);
  }
  const radius = e.r - r;
  if (e.r > 0 ? radius < NO_RADIUS : radius > -NO_RADIUS) return null;
  const k = radius / e.r;
  const x0 = e.cx + (e.x0 - e.cx) * k;
  const y0 = e.cy + (e.y0 - e.cy) * k;
  const x1 = e.cx + (e.x1 - e.cx) * k;
  const y1 = e.cy + (e.y1 - e.cy) * k;
  return arc(x0, y0, x1, y1, e.cx, e.cy, radius);
}

const NONE: readonly Edge[] = [];

/** The clockwise arcs of radius r about the corner between two edges, when it turns right (seen from the left: reflex). */
function turnAbout(e: Edge, after: Edge, r: number): readonly Edge[] {
  const [ax, ay] = endTangent(e);
  const [bx, by] = startTangent(after);
  const cross = ax * by - ay * bx;
  const dot = ax * bx + ay * by;
  if (dot > 0 ? cross > -SMOOTH : turnsLeft(e, after, cross)) return NONE;
  const x = e.x1;
  const y = e.y1;
  const make = (px: number, py: number, qx: number, qy: number): Edge =>
    arc(x - py * r, y + px * r, x - qy * r, y + qx * r, x, y, -r);
  if (dot > 0) return [make(ax, ay, bx, by)];
  // More than a quarter turn: in two arcs, so that none nears half a circle. The middle direction bisects.
  const len = Math.sqrt((ax + bx) * (ax + bx) + (ay + by) * (ay + by));
  const [mx, my] = len > 1e-3 ? [(ax + bx) / len, (ay + by) / len] : [ay, -ax];
  return [make(ax, ay, mx, my), make(mx, my, bx, by)];
}

/** The side of a turn beyond 90 degrees. In a cusp the tangents are opposed and the edges' bends decide. */
function turnsLeft(e: Edge, after: Edge, cross: number): boolean {
  if (Math.abs(cross) > 1e-3) return cross > 0;
  const d = Math.min(chordLength(e), chordLength(after)) / 8;
  const [px, py] = pointAt(reversed(e), parameterOf(e, d));
  const [qx, qy] = pointAt(after, parameterOf(after, d));
  return (e.x1 - px) * (qy - e.y1) - (e.y1 - py) * (qx - e.x1) >= 0;
}

/** The parameter of a point about d mm from the start of an edge. */
function parameterOf(e: Edge, d: number): number {
  return e.r === 0 ? d : d / Math.abs(2 * e.r);
}

/** Adds what of a moved edge, or of a turn about a corner (no source), lies no nearer than r to any boundary edge but its own. */
function keepFar(
  edge: Edge,
  source: Edge | null,
  own: number,
  r: number,
  graze: number,
  index: EdgesIndex,
  sources: readonly Edge[],
  out: Stretch[],
): void {
  const end = beginStretches(edge);
  if (!(end > 0)) return;
  for (const j of index.around(edge, r)) if (j !== own && addNear(sources[j]!, r, graze)) return;
  const least = shortest(r, graze);
  if (noneNear()) emit(edge, source, 0, end, r, least, out);
  else betweenStretches((from, to) => emit(edge, source, from, to, r, least, out));
}

/**
 * Shorter stretches are remnants of rounding. Where two edges touch (a cusp, circles at one point) each is cut by the other
 * where it is only sure to the root of the rounding; a further try forgives what `graze` leaves of that.
 */
function shortest(r: number, graze: number): number {
  return graze > GRAZE ? 2 * Math.sqrt(2 * graze * r) : 1e-9;
}

function emit(
  edge: Edge,
  source: Edge | null,
  from: number,
  to: number,
  r: number,
  least: number,
  out: Stretch[],
): void {
  const end = parameterEnd(edge);
  const whole = from <= 0 && to >= end;
  const piece = whole ? edge : part(edge, from, to);
  if (chordLength(piece) < least && edgeLength(piece) < least) return;
  if (source === null) {
    // It turns about the corner.
    const foot: [number, number] = [edge.cx, edge.cy];
    out.push({ edge: piece, source, from, to, foot0: foot, foot1: foot });
    return;
  }
  const foot0: [number, number] = from <= 0 ? [source.x0, source.y0] : footOf(source, piece.x0, piece.y0, r);
  const foot1: [number, number] = to >= end ? [source.x1, source.y1] : footOf(source, piece.x1, piece.y1, r);
  out.push({ edge: piece, source, from, to, foot0, foot1 });
}

function footOf(source: Edge, x: number, y: number, r: number): [number, number] {
  if (source.r === 0) {
    const [tx, ty] = startTangent(source);
    return [x + ty * r, y - tx * r];
  }
  const k = source.r / (source.r - r);
  return [source.cx + (x - source.cx) * k, source.cy + (y - source.cy) * k];
}

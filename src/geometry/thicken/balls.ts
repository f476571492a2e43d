import {
  type Edge,
  endTangent,
  parameterEnd,
  pointAt,
  pointParameter,
  startTangent,
  tangentAt,
} from '../edge.js';
import { EdgesIndex } from '../edges-index.js';
import { footOn } from '../nearest.js';
import { type Contour, edgeBox } from '../region.js';
import { SMOOTH } from '../tolerances.js';
import { ballRadius } from '../touching-ball.js';
import { atan, atan2, cos, sin, tan } from '../trig.js';

/**
 * An inscribed ball: its centre is a point of the medial axis (Blum 1967), its radius half the width there. It touches
 * the boundary at p on the right of the axis' direction t, and at q on the left.
 */
export interface Ball {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  /** Unit direction of the axis. */
  readonly tx: number;
  readonly ty: number;
  /** Places of the two contacts on the boundary: edge number plus share of the edge. */
  readonly p: number;
  readonly q: number;
  /** The contacts themselves. */
  readonly px: number;
  readonly py: number;
  readonly qx: number;
  readonly qy: number;
  /** Cosine of the angle between the contacts seen from the centre: -1 where the sides are parallel. */
  readonly facing: number;
}

/** The edges of some contours numbered through, with where each contour begins and ends, and an index. */
export interface Boundary {
  readonly edges: readonly Edge[];
  readonly first: readonly number[];
  /** Number of the contour of each edge. */
  readonly home: readonly number[];
  readonly index: EdgesIndex;
  /** minX, minY, maxX, maxY of each edge. */
  readonly boxes: Float64Array;
}

export function boundaryOf(contours: readonly Contour[]): Boundary {
  const edges = contours.flat();
  const first: number[] = [0];
  const home: number[] = [];
  contours.forEach((c, k) => {
    first.push(first[k]! + c.length);
    for (let i = 0; i < c.length; i++) home.push(k);
  });
  const boxes = new Float64Array(4 * edges.length);
  edges.forEach((e, i) => {
    const { minX, minY, maxX, maxY } = edgeBox(e);
    boxes.set([minX, minY, maxX, maxY], 4 * i);
  });
  return { edges, first, home, index: new EdgesIndex(edges), boxes };
}

/** Samples per r along an edge. */
const STEPS_PER_RADIUS = 7;

/** Largest turn between samples of a tight arc or of a fan at a reflex vertex, radians (5 degrees). */
const TURN = 0.09;

/** What the balls set against one contour say. */
export interface Sampled {
  /** In boundary order: balls under `limit` whose other contact lies opposite, and further along the boundary. */
  readonly balls: readonly Ball[];
  /** Whether any ball reached the limit. */
  readonly wide: boolean;
}

/**
 * Balls set against a contour from its left at close steps, each grown until it touches another part of the boundary,
 * reaches the centre of its own arc, or reaches `limit`. `facing` is the largest cosine of the angle between contacts.
 */
export function ballsAlong(b: Boundary, contour: number, limit: number, facing: number): Sampled {
  const out: Ball[] = [];
  let wide = false;
  const from = b.first[contour]!;
  const to = b.first[contour + 1]!;
  const add = (grown: Ball | null | undefined): void => {
    if (grown === undefined) wide = true;
    else if (grown) out.push(grown);
  };
  for (let i = from; i < to; i++) {
    const e = b.edges[i]!;
    const around = [...b.index.nearEdge(i, 2 * limit)];
    const end = parameterEnd(e);
    for (const t of parametersAlong(e, end, limit)) {
      const [x, y] = pointAt(e, t);
      const [tx, ty] = tangentAt(e, x, y);
      // Inside an arc that turns left no ball passes its centre.
      const own = e.r > 0 ? e.r : Number.POSITIVE_INFINITY;
      add(grow(b, around, x, y, -ty, tx, i, i, i + t / end, Math.min(own, limit), own, facing));
    }
    const j = i + 1 < to ? i + 1 : from;
    for (const [nx, ny] of fan(e, b.edges[j]!))
      add(grow(b, around, e.x1, e.y1, nx, ny, i, j, i + 1, limit, Number.POSITIVE_INFINITY, facing));
  }
  return { balls: out, wide };
}

/** Parameters of an edge at which balls are set: evenly spaced, never at its ends. */
function parametersAlong(e: Edge, end: number, limit: number): number[] {
  const sweep = e.r === 0 ? 0 : 2 * atan(end);
  const length = e.r === 0 ? end : Math.abs(e.r) * sweep;
  const n = Math.max(2, Math.ceil((length * STEPS_PER_RADIUS) / limit), Math.ceil(sweep / TURN));
  const out: number[] = [];
  for (let k = 0; k < n; k++) {
    const share = (k + 0.5) / n;
    out.push(e.r === 0 ? end * share : tan((sweep * share) / 2));
  }
  return out;
}

/** Unit normals between those of two edges, at a corner that points into the left: none at other joints. */
function fan(e: Edge, next: Edge): [number, number][] {
  const [ax, ay] = endTangent(e);
  const [bx, by] = startTangent(next);
  const cross = ax * by - ay * bx;
  if (cross > -SMOOTH) return [];
  const turn = atan2(-cross, ax * bx + ay * by);
  const n = Math.ceil(turn / TURN) + 1;
  const out: [number, number][] = [];
  for (let k = 0; k <= n; k++) {
    const a = (-turn * k) / n;
    const c = cos(a);
    const s = sin(a);
    const tx = ax * c - ay * s;
    const ty = ax * s + ay * c;
    out.push([-ty, tx]);
  }
  return out;
}

/** The ball, null when its own arc stops it or it is not wanted, undefined when it reaches the limit. */
function grow(
  b: Boundary,
  around: readonly number[],
  x: number,
  y: number,
  nx: number,
  ny: number,
  skip: number,
  skip2: number,
  place: number,
  limit: number,
  own: number,
  facing: number,
): Ball | null | undefined {
  const { boxes } = b;
  let w = limit;
  let touched = -1;
  for (const j of around) {
    if (j === skip || j === skip2) continue;
    // Nothing outside the ball's box can be touched sooner.
    const k = 4 * j;
    if (boxes[k]! > x + nx * w + w || boxes[k + 2]! < x + nx * w - w) continue;
    if (boxes[k + 1]! > y + ny * w + w || boxes[k + 3]! < y + ny * w - w) continue;
    const rho = ballRadius(x, y, nx, ny, b.edges[j]!);
    if (rho < w) {
      w = rho;
      touched = j;
    }
  }
  if (touched < 0) return own <= limit ? null : undefined;
  // Each branch is taken from one side only.
  if (w <= 0 || w > own - 1e-6 || touched < skip) return null;
  const cx = x + nx * w;
  const cy = y + ny * w;
  const f = b.edges[touched]!;
  const [qx, qy] = footOn(f, cx, cy);
  const ux = (qx - cx) / w;
  const uy = (qy - cy) / w;
  const cosine = -nx * ux - ny * uy;
  if (cosine > facing) return null;
  const dx = -nx - ux;
  const dy = -ny - uy;
  const l = Math.sqrt(dx * dx + dy * dy);
  const t = pointParameter(f, qx, qy) / parameterEnd(f);
  const q = touched + Math.min(1, Math.max(0, Number.isFinite(t) ? t : 0));
  if (q <= place) return null;
  return {
    x: cx,
    y: cy,
    w,
    tx: -dy / l,
    ty: dx / l,
    p: place,
    q,
    px: x,
    py: y,
    qx,
    qy,
    facing: cosine,
  };
}

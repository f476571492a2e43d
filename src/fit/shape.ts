import { type Edge, edgeLength, midpoint, parameterEnd, pointAt } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import { area, type Contour, distanceToEdge, perimeter } from '../geometry/region.js';

/** A turn by an angle as its cosine and sine. */
export interface Turn {
  readonly c: number;
  readonly s: number;
}

/** A whole straight stretch or arc of a contour, however many edges draw it. */
export interface Feature {
  readonly length: number;
  /** Signed radius, mm; 0 for a straight one. */
  readonly r: number;
  /** Unit direction: of travel at its middle, or from the shape's centroid to the centre of a full circle. */
  readonly ux: number;
  readonly uy: number;
  /** Distance of a full circle's centre from the centroid; 0 for other features. */
  readonly off: number;
}

/** A part with what is needed to compare it with others. Lengths in mm. */
export interface Shape {
  readonly contours: readonly Contour[];
  readonly area: number;
  readonly perimeter: number;
  /** Centroid of the boundary, which turns with the part. */
  readonly x: number;
  readonly y: number;
  /** Longest first. */
  readonly features: readonly Feature[];
  /** Points of the boundary, at most STEP apart: x, y, x, y ... */
  readonly samples: Float64Array;
  /** Distance of a point from the boundary when that is at most `within`, else Infinity. */
  near(x: number, y: number, within: number): number;
}

/** Boundaries are compared at points this far apart. Between two such points an arc of 1.5 mm radius strays by 0.02 mm. */
const STEP = 0.5;
/** Neighbouring edges whose lines or circles differ by less than this are one feature, mm or radians. */
const SAME = 1e-4;
/** A circle's centre this near to the centroid gives no direction, mm. */
const CENTRED = 1e-3;

export function shapeOf(contours: readonly Contour[]): Shape {
  const region = { contours };
  const edges = contours.flat();
  const length = perimeter(region);
  let x = 0;
  let y = 0;
  for (const e of edges) {
    const [px, py] = middleOf(e);
    const share = edgeLength(e) / length;
    x += px * share;
    y += py * share;
  }
  const index = new EdgesIndex(edges);
  return {
    contours,
    area: area(region),
    perimeter: length,
    x,
    y,
    features: contours.flatMap((c) => featuresOf(c, x, y)).sort((f, g) => g.length - f.length),
    samples: sampled(edges),
    near(px, py, within) {
      let best = Number.POSITIVE_INFINITY;
      const box = { minX: px, minY: py, maxX: px, maxY: py };
      for (const i of index.near(box, within)) best = Math.min(best, distanceToEdge(edges[i]!, px, py));
      return best <= within ? best : Number.POSITIVE_INFINITY;
    },
  };
}

/** Centroid of an edge. Of an arc it lies at chord / sweep from the centre (any table of centroids of arcs). */
function middleOf(e: Edge): [number, number] {
  const [mx, my] = midpoint(e);
  if (e.r === 0) return [mx, my];
  const radius = Math.abs(e.r);
  const chord = Math.sqrt((e.x1 - e.x0) * (e.x1 - e.x0) + (e.y1 - e.y0) * (e.y1 - e.y0));
  const k = chord / edgeLength(e);
  return [e.cx + ((mx - e.cx) / radius) * k * radius, e.cy + ((my - e.cy) / radius) * k * radius];
}

function sampled(edges: readonly Edge[]): Float64Array {
  const out: number[] = [];
  for (const e of edges) {
    const n = Math.max(2, Math.ceil(edgeLength(e) / STEP));
    const end = parameterEnd(e);
    for (let k = 0; k < n; k++) {
      const [x, y] = pointAt(e, (end * k) / n);
      out.push(x, y);
    }
  }
  return Float64Array.from(out);
}

function featuresOf(contour: Contour, x: number, y: number): Feature[] {
  const n = contour.length;
  const start = contour.findIndex((e, i) => !oneFeature(contour[(i + n - 1) % n]!, e));
  if (start < 0) return fullCircle(contour, x, y);
  const out: Feature[] = [];
  for (let i = 0; i < n; ) {
    const first = contour[(start + i) % n]!;
    let last = first;
    let length = 0;
    do {
      last = contour[(start + i) % n]!;
      length += edgeLength(last);
      i++;
    } while (i < n && oneFeature(last, contour[(start + i) % n]!));
    // The chord runs along the direction of travel at the middle, whatever the sweep under a full turn.
    const dx = last.x1 - first.x0;
    const dy = last.y1 - first.y0;
    const l = Math.sqrt(dx * dx + dy * dy);
    if (l > SAME) out.push({ length, r: first.r, ux: dx / l, uy: dy / l, off: 0 });
  }
  return out;
}

function fullCircle(contour: Contour, x: number, y: number): Feature[] {
  const { cx, cy, r } = contour[0]!;
  const off = Math.sqrt((cx - x) * (cx - x) + (cy - y) * (cy - y));
  if (off < CENTRED) return [];
  let length = 0;
  for (const e of contour) length += edgeLength(e);
  return [{ length, r, ux: (cx - x) / off, uy: (cy - y) / off, off }];
}

/** Does edge b go on along the line or the circle of edge a? */
function oneFeature(a: Edge, b: Edge): boolean {
  if ((a.r === 0) !== (b.r === 0)) return false;
  if (a.r !== 0)
    return Math.abs(a.r - b.r) < SAME && Math.abs(a.cx - b.cx) < SAME && Math.abs(a.cy - b.cy) < SAME;
  const [ax, ay, bx, by] = [a.x1 - a.x0, a.y1 - a.y0, b.x1 - b.x0, b.y1 - b.y0];
  const both = Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by));
  return ax * bx + ay * by > 0 && Math.abs(ax * by - ay * bx) < SAME * both;
}

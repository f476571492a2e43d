import type { Artwork, Piece, Remark } from '../geometry/artwork.js';
import { resolve } from '../geometry/boolean.js';
import { cubicArcs, quadraticArcs } from '../geometry/curves.js';
import {
  bulged,
  type Edge,
  endTangent,
  line,
  splitArc,
  startTangent,
  sweep,
  withEnds,
} from '../geometry/edge.js';
import type { Pen } from '../geometry/pen.js';
import { type Contour, contourArea, type Region, reversedContour } from '../geometry/region.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import { atan } from '../geometry/trig.js';
import { Refusal } from '../schema/fault.js';

/** Far above any piece that a cutter could work through; enough to stop a runaway drawing before memory does. */
const MOST_EDGES = 400_000;

/** A pen that keeps what is drawn. `artwork` gives the pieces, each as what has winding number other than 0. */
export function recorder(): Pen & { artwork(): Artwork } {
  const drawn: Drawn[] = [];
  const remarks: Remark[] = [];
  let path: Edge[] = [];
  let open = false;
  let start: readonly [number, number] = [0, 0];
  let at: readonly [number, number] = [0, 0];
  let edges = 0;

  function check(...numbers: readonly number[]): void {
    if (!numbers.every(Number.isFinite))
      throw new Error('a coordinate of the drawing is not a finite number');
  }

  function count(more: number): void {
    edges += more;
    if (edges > MOST_EDGES)
      throw new Refusal(
        'too-large',
        `the pattern has more than ${MOST_EDGES} edges; draw it larger or simpler`,
      );
  }

  function current(): Drawn {
    const last = drawn.at(-1);
    if (!last) throw new Error('a piece must be named before it is drawn');
    return last;
  }

  /** A step too small to draw leaves the pen where it was, so that the chain stays closed. */
  function go(x: number, y: number, along: readonly Edge[]): void {
    if (!open) throw new Error('a path must start with move');
    count(along.length);
    path.push(...along);
    if (along.length > 0) at = [x, y];
  }

  /** A straight edge, none for a step too small to have a direction. */
  function straight(x: number, y: number): Edge[] {
    return Math.abs(x - at[0]) + Math.abs(y - at[1]) < SAME_POINT ? [] : [line(at[0], at[1], x, y)];
  }

  function finished(): void {
    if (open) throw new Error('a path was left open');
  }

  return {
    piece(name) {
      finished();
      drawn.push({ name, contours: [], regions: [] });
    },
    move(x, y) {
      check(x, y);
      finished();
      current();
      open = true;
      start = at = [x, y];
    },
    line(x, y) {
      check(x, y);
      go(x, y, straight(x, y));
    },
    arc(x, y, bulge) {
      check(x, y, bulge);
      const step = straight(x, y);
      const curved = step.length > 0 && bulge !== 0;
      go(x, y, curved ? splitArc(bulged(at[0], at[1], x, y, bulge), 4 * atan(Math.abs(bulge))) : step);
    },
    quadratic(cx, cy, x, y) {
      check(cx, cy, x, y);
      go(x, y, quadraticArcs(at, [cx, cy], [x, y]));
    },
    cubic(c1x, c1y, c2x, c2y, x, y) {
      check(c1x, c1y, c2x, c2y, x, y);
      go(x, y, cubicArcs(at, [c1x, c1y], [c2x, c2y], [x, y]));
    },
    region(region) {
      finished();
      for (const c of region.contours) {
        count(c.length);
        for (const e of c) check(e.x0, e.y0, e.cx, e.cy, e.r);
      }
      if (region.contours.length > 0) current().regions.push(region);
    },
    close() {
      go(start[0], start[1], straight(start[0], start[1]));
      open = false;
      // Ends that differ by less than a point are made one: the chain must be closed to the last bit.
      const last = path[path.length - 1];
      if (last) path[path.length - 1] = withEnds(last, last.x0, last.y0, start[0], start[1]);
      if (path.length > 1) current().contours.push(path);
      path = [];
    },
    remark(remark) {
      remarks.push(remark);
    },
    artwork() {
      finished();
      return { pieces: drawn.flatMap(resolved), remarks };
    },
  };
}

/** A piece as drawn: paths by the pen, and regions given whole. */
interface Drawn {
  readonly name: string;
  readonly contours: Contour[];
  readonly regions: Region[];
}

/** The piece as a sound region; none when it encloses nothing. */
function resolved({ name, contours, regions }: Drawn): Piece[] {
  const region = whole(contours, regions);
  return region.contours.length > 0 ? [{ name, region }] : [];
}

function whole(contours: Contour[], regions: readonly Region[]): Region {
  if (contours.length === 0 && regions.length === 1) return regions[0]!;
  if (contours.length === 1 && regions.length === 0)
    return convex(contours[0]!) ?? resolve(contours, 'nonzero');
  return resolve([...contours, ...regions.flatMap((r) => r.contours)], 'nonzero');
}

/**
 * The contour as a region, counter-clockwise, if it turns one way only and just once round: then it cannot cross
 * itself. Null when that cannot be told so cheaply.
 */
function convex(contour: Contour): Region | null {
  const c = contourArea(contour) < 0 ? reversedContour(contour) : contour;
  let turned = 0;
  for (let i = 0; i < c.length; i++) {
    const e = c[i]!;
    if (e.r < 0) return null;
    const [ax, ay] = endTangent(e);
    const [bx, by] = startTangent(c[(i + 1) % c.length]!);
    const cross = ax * by - ay * bx;
    const dot = ax * bx + ay * by;
    if (cross < -1e-12 || dot <= -0.999) return null;
    // tan(turn / 2), good below half a turn.
    turned += sweep(e) + 2 * atan(cross / (1 + dot));
  }
  return turned < 2.5 * Math.PI ? { contours: [c] } : null;
}

import { type Edge, edgeLength, tangentAt } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import {
  type Box,
  bounds,
  type Contour,
  distanceToEdge,
  parts,
  reversedContour,
  windingNumber,
} from '../geometry/region.js';
import { pointAlong } from './along.js';

/** One connected part of a region: its outer contour and the holes in it. */
export interface Body {
  readonly contours: readonly Contour[];
  readonly box: Box;
}

/** Which bodies of one drawing are the same wood as which of another. */
export interface Kin {
  /** For each body before, the bodies after that hold some of it, and the other way round. */
  readonly after: readonly ReadonlySet<number>[];
  readonly before: readonly ReadonlySet<number>[];
}

/** Points an edge is asked at: one, and one more for each 2r of its length, up to this many. */
const MOST_POINTS = 8;

/** A point this much nearer to the boundary than r, as a share of r, still has a whole disc about it. */
const NEARLY = 1e-5;

export function bodiesOf(contours: readonly Contour[]): Body[] {
  return parts({ contours }).map((own) => ({ contours: own, box: bounds(own) }));
}

/**
 * The connected parts of everything outside a region, inside a frame round it: its holes, and the plane about it,
 * which is the body whose first contour is the frame itself.
 */
export function gapsOf(contours: readonly Contour[], frame: Contour): Body[] {
  return bodiesOf([frame, ...contours.map(reversedContour)]);
}

/**
 * Matches the bodies of a drawing before the cutter with those after it, by place: a body is the same as another when
 * the middle of a disc of radius r that fits in one lies in the other. All discs touching the boundary from inside are
 * tried, on both sides; a body `after` has reach r, so every point of its boundary has one.
 */
export function kinOf(before: readonly Body[], after: readonly Body[], r: number): Kin {
  const kin = { after: before.map(() => new Set<number>()), before: after.map(() => new Set<number>()) };
  const meet = (i: number, j: number): void => {
    kin.after[i]!.add(j);
    kin.before[j]!.add(i);
  };
  after.forEach((b, j) => {
    for (const [x, y] of discs(b, r)) for (const i of holders(before, x, y)) meet(i, j);
  });
  before.forEach((b, i) => {
    for (const [x, y] of fitting(b, discs(b, r), r)) for (const j of holders(after, x, y)) meet(i, j);
  });
  return kin;
}

function holders(bodies: readonly Body[], x: number, y: number): number[] {
  const out: number[] = [];
  bodies.forEach(({ box, contours }, i) => {
    if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) return;
    if (windingNumber(contours, x, y) > 0) out.push(i);
  });
  return out;
}

/** Middles of discs of radius r that touch the boundary from inside, whether or not they fit. */
function discs({ contours }: Body, r: number): [number, number][] {
  return contours.flatMap((c) =>
    c.flatMap((e) => {
      const n = Math.min(MOST_POINTS, 1 + Math.floor(edgeLength(e) / (2 * r)));
      return Array.from({ length: n }, (_, k) => inward(e, (k + 0.5) / n, r));
    }),
  );
}

function inward(e: Edge, share: number, r: number): [number, number] {
  const [x, y] = pointAlong(e, share);
  const [tx, ty] = tangentAt(e, x, y);
  return [x - ty * r, y + tx * r];
}

function fitting({ contours }: Body, points: readonly [number, number][], r: number): [number, number][] {
  const edges = contours.flat();
  const index = new EdgesIndex(edges);
  const least = r * (1 - NEARLY);
  return points.filter(([x, y]) =>
    index
      .near({ minX: x, minY: y, maxX: x, maxY: y }, r)
      .every((k) => distanceToEdge(edges[k]!, x, y) >= least),
  );
}

import { bounds, type Contour, parts, windingNumber } from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import { deepestPoint } from './deepest-point.js';
import type { Pair } from './pair.js';

/** One part of the plug and the part of the pocket it goes into, of one number. */
export interface Island {
  /** From 1, as one reads: rows from the top, each from left to right. The same in pocket and plug. */
  readonly number: number;
  readonly pocket: readonly Contour[];
  /** As drawn: mirrored when the pair is. */
  readonly plug: readonly Contour[];
  /** Place of the part in `parts(pair.plug)`, which is its place in the plug's drawings, from 0. */
  readonly index: number;
  /** A place well inside both parts, on the pocket's drawing, mm; on a mirrored plug x is -x. */
  readonly at: readonly [number, number];
  /** Radius of the circle about that place that lies within the plug, mm. */
  readonly room: number;
}

/** Numbers are drawn from this many parts on: one part needs none. */
export const FEWEST_NUMBERED = 2;
/** And up to this many: more are not told apart by numbers that small. */
export const MOST_NUMBERED = 400;

/** Does a pair of so many parts get numbers? */
export function isNumbered(count: number): boolean {
  return count >= FEWEST_NUMBERED && count <= MOST_NUMBERED;
}

/** Places are compared to this, mm, so that two machines' last digits cannot swap two numbers. */
const GRID = 0.01;

/**
 * The parts of a pair, numbered. A plug part belongs to the pocket part that it lies in (the plug turned back over first
 * when it is mirrored). Throws Error for a plug part that lies in no pocket part: then the pair is unsound.
 */
export function islandsOf(pair: Pair): readonly Island[] {
  const known = numbered.get(pair);
  if (known) return known;
  const islands = numberedIslands(pair);
  numbered.set(pair, islands);
  return islands;
}

/** Findings, drawings and layouts of one pair all ask. */
const numbered = new WeakMap<Pair, readonly Island[]>();

function numberedIslands(pair: Pair): Island[] {
  const plugs = parts(pair.plug);
  const pockets = parts(pair.pocket).map((contours) => ({ contours, box: bounds(contours.slice(0, 1)) }));
  const found = plugs.map((plug, index) => {
    const asSet = pair.mirrored ? mirrorX({ contours: plug }).contours : plug;
    const { at, room } = deepestPoint(asSet);
    const [x, y] = at;
    // The splitter keeps the order of contours, so the part of the same place is tried first.
    const home = [pockets[index], ...pockets].find(
      (p) =>
        p &&
        x > p.box.minX &&
        x < p.box.maxX &&
        y > p.box.minY &&
        y < p.box.maxY &&
        windingNumber(p.contours, x, y) > 0,
    );
    if (!home) throw new Error(`plug part ${index + 1} lies in no pocket part`);
    const box = bounds(asSet.slice(0, 1));
    return { plug, index, at, room, pocket: home.contours, box };
  });
  return readingOrder(found.map((f) => f.box)).map((k, i) => {
    const { pocket, plug, index, at, room } = found[k]!;
    return { number: i + 1, pocket, plug, index, at, room };
  });
}

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * The order in which one reads boxes: rows from the top, left to right within a row. A row is what has its middle less
 * than half a usual (median) height below the middle of the row's highest box.
 */
export function readingOrder(boxes: readonly Box[]): number[] {
  const snap = (v: number): number => Math.round(v / GRID);
  const places = boxes.map((b, k) => ({
    k,
    x: snap((b.minX + b.maxX) / 2),
    y: snap((b.minY + b.maxY) / 2),
  }));
  const heights = boxes.map((b) => snap(b.maxY - b.minY)).sort((a, b) => a - b);
  const row = (heights[Math.floor(heights.length / 2)] ?? 0) / 2;
  places.sort((a, b) => b.y - a.y || a.x - b.x || a.k - b.k);
  const rows: (typeof places)[] = [];
  for (const p of places) {
    const last = rows.at(-1);
    if (last && last[0]!.y - p.y < row) last.push(p);
    else rows.push([p]);
  }
  return rows.flatMap((r) => r.sort((a, b) => a.x - b.x || b.y - a.y || a.k - b.k).map((p) => p.k));
}

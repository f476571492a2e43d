import type { Piece } from '../../geometry/artwork.js';
import type { Vector } from '../../geometry/bezier.js';
import { intersect, overlay, resolve, union } from '../../geometry/boolean.js';
import { edgeLength, midpoint, tangentAt } from '../../geometry/edge.js';
import { type Box, bounds, type Contour, contains, parts, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import { allApart } from './apart.js';
import { strokeRegion } from './band.js';
import type { Clip, ClipShape, Display, Painted } from './display.js';
import { type Matrix, multiply } from './matrix.js';
import { MM_PER_PIXEL } from './numbers.js';
import { placeText } from './outlines/chains.js';
import type { ReadAs } from './outlines/options.js';
import { withoutSpecks } from './outlines/outlines.js';
import { refitted } from './outlines/refit.js';
import type { Repairs } from './outlines/repair.js';
import { elementName, linesApart, originOf, outlinePieces } from './svg-lines.js';
import { refuseTangle } from './tangle.js';
import { closedContour } from './trace.js';

/** Edges after curves became arcs; and how often a drawing may go over from figure to white and back. */
const MOST_EDGES = 200_000;
const MOST_COATS = 400;

/** How far inside its edge a part is looked at for the element that drew it, mm. */
const PROBE = 1e-4;

interface Shown {
  readonly name: string;
  readonly region: Region;
  readonly box: Box;
  readonly white: boolean;
}

/**
 * What one sees of a drawing where it is not white, mm, y up: each connected part is a piece, named after the element on
 * top of it. `scale` is on top of the drawing's own size; `middle`, pixels of the page, comes to (0, 0).
 */
export function figuresOf(
  display: Display,
  scale: number,
  middle: Vector,
  as: ReadAs,
  repairs: Repairs,
  source: string,
): Piece[] {
  const pixel = MM_PER_PIXEL * scale;
  const toMm: Matrix = [pixel, 0, 0, -pixel, -pixel * middle[0], pixel * middle[1]];
  const clips = new Map<Clip, Region>();
  const shown: Shown[] = [];
  let edges = 0;
  let list = display.painted;
  if (as.lines === 'outlines') {
    const { fills, lines } = linesApart(display.painted);
    list = fills;
    const telling = {
      source,
      place: (x: number, y: number) =>
        placeText(x / scale + middle[0] * MM_PER_PIXEL, middle[1] * MM_PER_PIXEL - y / scale),
    };
    for (const { name, region } of outlinePieces(lines, toMm, as.tolerances, repairs, telling))
      shown.push({ name, region, box: bounds(region.contours), white: false });
  }
  for (const p of list) {
    // White first of all has nothing under it to take away.
    if (p.white && shown.length === 0) continue;
    const region = clipped(seen(p, toMm, pixel, as.tolerances.refit, repairs), p.clips, clips, toMm);
    if (region.contours.length === 0) continue;
    for (const c of region.contours) edges += c.length;
    if (edges > MOST_EDGES)
      throw new Refusal(
        'too-large',
        `the drawing has more than ${MOST_EDGES} edges; make it smaller or simpler`,
      );
    shown.push({ name: elementName(p.element), region, box: bounds(region.contours), white: p.white });
  }
  return named(parts(withoutSpecks(painted(shown), as.tolerances.speck, repairs)), shown);
}

function seen(
  { path, matrix, stroke, rule, element }: Painted,
  toMm: Matrix,
  pixel: number,
  refit: number,
  repairs: Repairs,
): Region {
  if (stroke) return strokeRegion(path, stroke, multiply(toMm, matrix), pixel);
  const origin = originOf(element);
  // Curves of an SVG are exact; what is made of many short straight steps is not.
  const mend = (c: Contour): Contour =>
    refitted(
      c.map((edge) => ({ edge, origin, curve: edge.r !== 0 })),
      refit,
      repairs,
    ).map((s) => s.edge);
  return filled({ path, matrix, rule }, toMm, mend);
}

function filled(
  { path, matrix, rule }: ClipShape,
  toMm: Matrix,
  mend: (c: Contour) => Contour = (c) => c,
): Region {
  const m = multiply(toMm, matrix);
  const contours = path.map((run) => closedContour(run, m)).filter((c) => c !== null);
  refuseTangle(contours);
  return resolve(contours.map(mend), rule);
}

/** What of a region lies within every clip. Each clip is made once, however many elements it cuts. */
function clipped(region: Region, clips: readonly Clip[], made: Map<Clip, Region>, toMm: Matrix): Region {
  let left = region;
  for (const clip of clips) {
    if (left.contours.length === 0) return left;
    let room = made.get(clip);
    if (!room) {
      room = union(clip.map((shape) => filled(shape, toMm)));
      made.set(clip, room);
    }
    if (!covers(room, bounds(left.contours))) left = intersect(left, room);
  }
  return left;
}

/** Is the region a rectangle, as most clips are, that holds all of the box? */
function covers(region: Region, box: Box): boolean {
  const [only, ...more] = region.contours;
  if (!only || more.length > 0 || only.length !== 4) return false;
  if (!only.every((e) => e.r === 0 && (e.x0 === e.x1 || e.y0 === e.y1))) return false;
  const room = bounds([only]);
  return room.minX <= box.minX && room.minY <= box.minY && room.maxX >= box.maxX && room.maxY >= box.maxY;
}

/** Coat upon coat: a place belongs to the figure if the last coat over it is no white one. */
function painted(shown: readonly Shown[]): Region {
  const coats: { white: boolean; contours: Contour[] }[] = [];
  for (const { white, region } of shown) {
    const last = coats[coats.length - 1];
    if (last?.white === white) last.contours.push(...region.contours);
    else coats.push({ white, contours: [...region.contours] });
  }
  if (coats.length > MOST_COATS)
    throw new Refusal(
      'too-large',
      `the drawing goes over from figure to white and back more than ${MOST_COATS} times; paint all white last`,
    );
  const sets = coats.map((c) => c.contours);
  // Each is a region by itself; where none meets another nothing is left to be worked out.
  if (coats.length === 1 && allApart(shown.map((s) => s.box))) return { contours: sets[0]! };
  refuseTangle(sets.flat());
  return overlay(sets, (windings) => {
    for (let k = coats.length - 1; k >= 0; k--) if (windings[k]! > 0) return !coats[k]!.white;
    return false;
  });
}

function named(figures: readonly Contour[][], shown: readonly Shown[]): Piece[] {
  const count = new Map<string, number>();
  return figures.map((contours) => {
    const name = nameAt(contours[0]!, shown) ?? 'figure';
    const n = (count.get(name) ?? 0) + 1;
    count.set(name, n);
    return { name: n === 1 ? name : `${name}, part ${n}`, region: { contours } };
  });
}

/** The name of the topmost element just inside the longest edge of a part. */
function nameAt(outer: Contour, shown: readonly Shown[]): string | null {
  const edge = outer.reduce((best, e) => (edgeLength(e) > edgeLength(best) ? e : best));
  const [mx, my] = midpoint(edge);
  const [tx, ty] = tangentAt(edge, mx, my);
  const x = mx - ty * PROBE;
  const y = my + tx * PROBE;
  for (let k = shown.length - 1; k >= 0; k--) {
    const { white, box, region, name } = shown[k]!;
    if (white || x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) continue;
    if (contains(region, x, y)) return name;
  }
  return null;
}

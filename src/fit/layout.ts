import { arc } from '../geometry/edge.js';
import { type Box, bounds, type Contour, contourArea, type Region } from '../geometry/region.js';
import { cos, sin } from '../geometry/trig.js';
import type { Board } from '../recipe/recipe.js';
import { type Packing, pack } from './pack.js';
import type { Turn } from './shape.js';

/** Something to lay out, before it is turned: contours to cut, and what must have the room. mm. */
export interface LayItem {
  /** What it is called in messages: "part 7". */
  readonly name: string;
  /** Number that a maker knows it by. */
  readonly number: number;
  /** Its place among the parts of the drawing it comes from, from 0. */
  readonly index: number;
  readonly contours: readonly Contour[];
  /** Contours whose box keeps its distance; the cut ones themselves for a plug part, the face for a piece. */
  readonly around: readonly Contour[];
}

/** A thing laid: turned about (0, 0), then moved, mm. */
export interface Laid {
  readonly item: LayItem;
  readonly turn: Turn;
  readonly dx: number;
  readonly dy: number;
  readonly contours: readonly Contour[];
  readonly around: readonly Contour[];
  readonly box: Box;
}

/** Parts on a board, mm; the board's middle at (0, 0), its length and grain along x. */
export interface Layout {
  readonly board: Board;
  /** Was the board's size asked for? If not it is as small as the parts allow. */
  readonly asked: boolean;
  /** Between neighbours, and from each to the board's edge. */
  readonly spacing: number;
  readonly laid: readonly Laid[];
  /** Length of the board that is taken up, from the datum's end. */
  readonly used: number;
  /** The clean rest at the other end, as wide as the board; null when there is none. */
  readonly offcut: Board | null;
  /** Area of the parts in percent of the board's. */
  readonly yield: number;
}

/** Why a board does not do, in numbers. */
export interface TooSmall {
  /** Things that find room. */
  readonly fits: number;
  readonly of: number;
  /** The least width on which the widest thing lies, mm, and what that is. */
  readonly width: number;
  readonly widest: string;
  /** Length that all of them need on a board of that width, or of the board's own when that is wider, mm. */
  readonly length: number;
}

/**
 * The turn that brings a grain direction (radians from x) along the board: by a right angle at most, since wood looks and
 * moves the same turned end for end.
 */
export function alongBoard(grain: number): Turn {
  const turns = -grain / Math.PI;
  const turn = (turns - Math.round(turns)) * Math.PI;
  // Cosines and sines of right angles come out a hair off 0.
  const clean = (v: number): number =>
    Math.abs(v) < 1e-12 ? 0 : Math.abs(Math.abs(v) - 1) < 1e-12 ? Math.sign(v) : v;
  return { c: clean(cos(turn)), s: clean(sin(turn)) };
}

/** Lays things out on a board, all turned by the same turn; or says why they do not fit. */
export function layOut(
  items: readonly LayItem[],
  board: Board,
  spacing: number,
  turn: Turn,
  asked = true,
): Layout | TooSmall {
  const turned = items.map((item) => {
    const around = moved(item.around, turn, 0, 0);
    return { item, around, box: bounds(around) };
  });
  const room = { width: board.width - spacing, length: board.length - spacing };
  const boxes = turned.map(({ box }) => ({
    along: box.maxX - box.minX + spacing,
    across: box.maxY - box.minY + spacing,
  }));
  const found = pack(boxes, room.width, room.length);
  if (found.count < items.length) return tooSmall(items, boxes, found, board, spacing);
  const laid = turned.map(({ item, box }, k): Laid => {
    const place = found.places[k]!;
    const dx = place.x + spacing - board.length / 2 - box.minX;
    const dy = place.y + spacing - board.width / 2 - box.minY;
    const around = moved(item.around, turn, dx, dy);
    return {
      item,
      turn,
      dx,
      dy,
      around,
      contours: item.contours === item.around ? around : moved(item.contours, turn, dx, dy),
      box: bounds(around),
    };
  });
  const used = Math.min(found.used + spacing, board.length);
  let cut = 0;
  for (const l of laid) for (const c of l.contours) cut += contourArea(c);
  const rest = board.length - used;
  return {
    board,
    asked,
    spacing,
    laid,
    used,
    offcut: rest > 0 ? { length: rest, width: board.width } : null,
    yield: (100 * cut) / (board.length * board.width),
  };
}

function tooSmall(
  items: readonly LayItem[],
  boxes: readonly { along: number; across: number }[],
  found: Packing,
  board: Board,
  spacing: number,
): TooSmall {
  let widest = 0;
  boxes.forEach((b, k) => {
    if (b.across > boxes[widest]!.across) widest = k;
  });
  const width = Math.max(board.width, boxes[widest]!.across + spacing);
  return {
    fits: found.count,
    of: items.length,
    width,
    widest: items[widest]!.name,
    length: pack(boxes, width - spacing).used + spacing,
  };
}

/** Widths tried for a board that nobody asked for: that many steps from the widest part to all of them in one row. */
const WIDTHS = 24;

/** A board as small as the things allow, its sides whole steps (mm). */
export function leastBoard(items: readonly LayItem[], spacing: number, turn: Turn, step: number): Board {
  const boxes = items.map((item) => {
    const b = bounds(moved(item.around, turn, 0, 0));
    return { along: b.maxX - b.minX + spacing, across: b.maxY - b.minY + spacing };
  });
  const whole = (v: number): number => Math.ceil(v / step - 1e-9) * step;
  const least = Math.max(...boxes.map((b) => b.across));
  const most = boxes.reduce((sum, b) => sum + b.across, 0);
  let best: Board | null = null;
  for (let k = 0; k < WIDTHS; k++) {
    const width = whole(least + ((most - least) * k) / (WIDTHS - 1) + spacing);
    const length = whole(pack(boxes, width - spacing).used + spacing);
    if (!best || width * length < best.width * best.length - 1e-6) best = { length, width };
  }
  return best!;
}

/** Contours turned about (0, 0), then moved. */
export function moved(contours: readonly Contour[], { c, s }: Turn, dx: number, dy: number): Contour[] {
  const x = (px: number, py: number): number => px * c - py * s + dx;
  const y = (px: number, py: number): number => px * s + py * c + dy;
  return contours.map((contour) =>
    contour.map((e) => {
      const [cx, cy] = e.r === 0 ? [0, 0] : [x(e.cx, e.cy), y(e.cx, e.cy)];
      return arc(x(e.x0, e.y0), y(e.x0, e.y0), x(e.x1, e.y1), y(e.x1, e.y1), cx, cy, e.r);
    }),
  );
}

/** Everything that is cut, as one region. */
export function layoutRegion(layout: Layout): Region {
  return { contours: layout.laid.flatMap((l) => l.contours) };
}

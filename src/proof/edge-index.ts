import Flatbush from 'flatbush';
import type { Edges } from './edges.js';

/**
 * A piece is a straight or circular edge written out as twelve numbers in a flat array, so that the inner loops
 * allocate nothing. For an arc, U0 and U1 are unit vectors from the centre to its ends, ordered so that the arc
 * runs counter-clockwise from U0 to U1 whichever way the chain travels. For a straight piece, R is -1 and U0 is
 * its unit direction. X0..Y1 are its ends in the order of travel.
 */
export const X0 = 0;
export const Y0 = 1;
export const X1 = 2;
export const Y1 = 3;
export const CX = 4;
export const CY = 5;
export const R = 6;
export const U0X = 7;
export const U0Y = 8;
export const U1X = 9;
export const U1Y = 10;
export const WIDE = 11;
export const STRIDE = 12;

/** Edges a block: consecutive edges lie close together, so one search serves them all. */
const BLOCK = 8;

export interface Index {
  /** STRIDE numbers an edge. */
  readonly pieces: Float64Array;
  /** minX, minY, maxX, maxY an edge. */
  readonly boxes: Float64Array;
  /** First edge of every block, and one past the last edge. No block spans two contours. */
  readonly blocks: Int32Array;
  /** minX, minY, maxX, maxY a block. */
  readonly blockBoxes: Float64Array;
  /** Finds blocks by box; null when there are no edges. */
  readonly tree: Flatbush | null;
  readonly contourOf: Int32Array;
  readonly next: Int32Array;
  readonly diagonal: number;
}

/** Does the direction (x, y) point at the arc of the piece at `o`? The direction need not be a unit vector. */
export function onArc(p: Float64Array, o: number, x: number, y: number): boolean {
  const from0 = p[o + U0X]! * y - p[o + U0Y]! * x;
  const to1 = x * p[o + U1Y]! - y * p[o + U1X]!;
  return p[o + WIDE] === 1 ? !(from0 < 0 && to1 < 0) : from0 >= 0 && to1 >= 0;
}

/** Writes the box of the piece at `o` into `box` at `b`. */
export function pieceBox(p: Float64Array, o: number, box: Float64Array, b: number): void {
  const x0 = p[o + X0]!;
  const y0 = p[o + Y0]!;
  const x1 = p[o + X1]!;
  const y1 = p[o + Y1]!;
  box[b] = Math.min(x0, x1);
  box[b + 1] = Math.min(y0, y1);
  box[b + 2] = Math.max(x0, x1);
  box[b + 3] = Math.max(y0, y1);
  const r = p[o + R]!;
  if (r < 0) return;
  const cx = p[o + CX]!;
  const cy = p[o + CY]!;
  if (cx - r < box[b]! && onArc(p, o, -1, 0)) box[b] = cx - r;
  if (cy - r < box[b + 1]! && onArc(p, o, 0, -1)) box[b + 1] = cy - r;
  if (cx + r > box[b + 2]! && onArc(p, o, 1, 0)) box[b + 2] = cx + r;
  if (cy + r > box[b + 3]! && onArc(p, o, 0, 1)) box[b + 3] = cy + r;
}

function writePiece(e: Edges, i: number, p: Float64Array, o: number): void {
  const x0 = (p[o + X0] = e.x0[i]!);
  const y0 = (p[o + Y0] = e.y0[i]!);
  const x1 = (p[o + X1] = e.x1[i]!);
  const y1 = (p[o + Y1] = e.y1[i]!);
  const r = e.r[i]!;
  if (r === 0) {
    const l = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
    p[o + R] = -1;
    p[o + U0X] = (x1 - x0) / l;
    p[o + U0Y] = (y1 - y0) / l;
    return;
  }
  const cx = (p[o + CX] = e.cx[i]!);
  const cy = (p[o + CY] = e.cy[i]!);
  const radius = r > 0 ? r : -r;
  const [a, b] = r > 0 ? [U0X, U1X] : [U1X, U0X];
  p[o + R] = radius;
  p[o + a] = (x0 - cx) / radius;
  p[o + a + 1] = (y0 - cy) / radius;
  p[o + b] = (x1 - cx) / radius;
  p[o + b + 1] = (y1 - cy) / radius;
  p[o + WIDE] = e.wide[i]!;
}

export function indexEdges(e: Edges, starts: Int32Array): Index {
  const n = e.count;
  const pieces = new Float64Array(n * STRIDE);
  const boxes = new Float64Array(n * 4);
  const contourOf = new Int32Array(n);
  const next = new Int32Array(n);
  const blocks: number[] = [];
  for (let k = 0; k + 1 < starts.length; k++) {
    const from = starts[k]!;
    const to = starts[k + 1]!;
    const parts = Math.ceil((to - from) / BLOCK);
    for (let j = 0; j < parts; j++) blocks.push(from + Math.floor(((to - from) * j) / parts));
    for (let i = from; i < to; i++) {
      contourOf[i] = k;
      next[i] = i + 1 < to ? i + 1 : from;
      writePiece(e, i, pieces, i * STRIDE);
      pieceBox(pieces, i * STRIDE, boxes, i * 4);
    }
  }
  const count = blocks.length;
  blocks.push(n);
  const blockBoxes = new Float64Array(count * 4);
  const tree = count > 0 ? new Flatbush(count) : null;
  for (let k = 0; k < count; k++) {
    unite(boxes, blocks[k]!, blocks[k + 1]!, blockBoxes, 4 * k);
    tree!.add(blockBoxes[4 * k]!, blockBoxes[4 * k + 1]!, blockBoxes[4 * k + 2]!, blockBoxes[4 * k + 3]!);
  }
  tree?.finish();
  const [w, h] = tree ? [tree.maxX - tree.minX, tree.maxY - tree.minY] : [0, 0];
  const diagonal = Math.sqrt(w * w + h * h);
  return { pieces, boxes, blocks: Int32Array.from(blocks), blockBoxes, tree, contourOf, next, diagonal };
}

/** The box around boxes `from` up to `to`, written into `out` at `o`. */
function unite(boxes: Float64Array, from: number, to: number, out: Float64Array, o: number): void {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 4 * from; i < 4 * to; i += 4) {
    if (boxes[i]! < x0) x0 = boxes[i]!;
    if (boxes[i + 1]! < y0) y0 = boxes[i + 1]!;
    if (boxes[i + 2]! > x1) x1 = boxes[i + 2]!;
    if (boxes[i + 3]! > y1) y1 = boxes[i + 3]!;
  }
  out[o] = x0;
  out[o + 1] = y0;
  out[o + 2] = x1;
  out[o + 3] = y1;
}

import { pieceToPiece2 } from './distance.js';
import type { Drawing } from './drawing.js';
import { CX, CY, onArc, R, STRIDE, U0X, U0Y, X0, X1, Y0, Y1 } from './edge-index.js';

/** Edges that are not neighbours touch when nearer than this, mm: over the rounding of a file in inches. */
const TOUCH = 1e-4;

/** Neighbours may meet again only within this of their joint, mm: rounding lets tangent edges cross twice there. */
const AT_JOINT = 0.001;

/** A point where the drawing's boundary crosses or touches itself, or null when it never does. */
export function crossing(drawing: Drawing): [number, number] | null {
  const { index, edges } = drawing;
  const { blocks, blockBoxes, boxes, pieces, tree, next } = index;
  if (tree === null) return null;
  for (let k = 0; k + 1 < blocks.length; k++) {
    const b = 4 * k;
    const near = tree.search(
      blockBoxes[b]! - TOUCH,
      blockBoxes[b + 1]! - TOUCH,
      blockBoxes[b + 2]! + TOUCH,
      blockBoxes[b + 3]! + TOUCH,
    );
    for (let i = blocks[k]!; i < blocks[k + 1]!; i++) {
      for (const other of near) {
        const to = blocks[other + 1]!;
        for (let j = Math.max(i + 1, blocks[other]!); j < to; j++) {
          if (!meet(boxes, 4 * i, 4 * j)) continue;
          const crossed =
            next[i] === j || next[j] === i
              ? meetAgain(drawing, i, j)
              : pieceToPiece2(pieces, i * STRIDE, pieces, j * STRIDE, TOUCH * TOUCH) < TOUCH * TOUCH;
          if (crossed) return [edges.x0[j]!, edges.y0[j]!];
        }
      }
    }
  }
  return null;
}

/** Do two boxes come within TOUCH of each other? */
function meet(boxes: Float64Array, a: number, b: number): boolean {
  return (
    boxes[a]! - TOUCH <= boxes[b + 2]! &&
    boxes[a + 2]! + TOUCH >= boxes[b]! &&
    boxes[a + 1]! - TOUCH <= boxes[b + 3]! &&
    boxes[a + 3]! + TOUCH >= boxes[b + 1]!
  );
}

/** Do two neighbours meet anywhere but at their joint (or joints, in a contour of two edges)? */
function meetAgain(drawing: Drawing, i: number, j: number): boolean {
  const { edges, index } = drawing;
  const joints: [number, number][] = [];
  if (index.next[i] === j) joints.push([edges.x1[i]!, edges.y1[i]!]);
  if (index.next[j] === i) joints.push([edges.x0[i]!, edges.y0[i]!]);
  return meetings(index.pieces, i * STRIDE, j * STRIDE).some(([x, y]) =>
    joints.every(([a, b]) => (x - a) * (x - a) + (y - b) * (y - b) > AT_JOINT * AT_JOINT),
  );
}

/** Points common to two pieces. Two segments with a common end, and two arcs of one circle, are left to the joints. */
function meetings(p: Float64Array, i: number, j: number): [number, number][] {
  if (p[i + R]! < 0) return p[j + R]! < 0 ? [] : lineArc(p, i, j);
  return p[j + R]! < 0 ? lineArc(p, j, i) : arcArc(p, i, j);
}

function lineArc(p: Float64Array, i: number, j: number): [number, number][] {
  const ux = p[i + U0X]!;
  const uy = p[i + U0Y]!;
  const dx = p[j + CX]! - p[i + X0]!;
  const dy = p[j + CY]! - p[i + Y0]!;
  const along = dx * ux + dy * uy;
  const off = dx * uy - dy * ux;
  const h2 = p[j + R]! * p[j + R]! - off * off;
  if (h2 < 0) return [];
  const length = (p[i + X1]! - p[i + X0]!) * ux + (p[i + Y1]! - p[i + Y0]!) * uy;
  const out: [number, number][] = [];
  for (const s of [along - Math.sqrt(h2), along + Math.sqrt(h2)]) {
    if (s < 0 || s > length || !onArc(p, j, s * ux - dx, s * uy - dy)) continue;
    out.push([p[i + X0]! + s * ux, p[i + Y0]! + s * uy]);
  }
  return out;
}

function arcArc(p: Float64Array, i: number, j: number): [number, number][] {
  const dx = p[j + CX]! - p[i + CX]!;
  const dy = p[j + CY]! - p[i + CY]!;
  const c2 = dx * dx + dy * dy;
  const [a, b] = [p[i + R]!, p[j + R]!];
  if (c2 < 1e-12) return [];
  const x = (c2 + a * a - b * b) / 2 / c2;
  const h2 = (a * a) / c2 - x * x;
  if (h2 < 0) return [];
  const out: [number, number][] = [];
  for (const h of [-Math.sqrt(h2), Math.sqrt(h2)]) {
    const vx = x * dx - h * dy;
    const vy = x * dy + h * dx;
    if (onArc(p, i, vx, vy) && onArc(p, j, vx - dx, vy - dy)) out.push([p[i + CX]! + vx, p[i + CY]! + vy]);
  }
  return out;
}

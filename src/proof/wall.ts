import { tangentX, tangentY } from './ball.js';
import { pointToPiece2 } from './distance.js';
import type { Drawing } from './drawing.js';
import { CX, CY, onArc, R, STRIDE, U0X, U0Y, X0, X1, Y0, Y1 } from './edge-index.js';
import { carrierMost, pastEnd, pastStart, pointMost } from './facing.js';

/** How far, mm, a piece may reach past the normal at an edge's end and still count as facing it. */
const PAST = 1e-4;

/** Cosine of the greatest turn (0.8 degree) at which two edges' normals still count as one. */
const SMOOTH = 0.9999;

/** A drawing's boundary as something to keep away from, and the edges of it that are near the edge in hand. */
export class Wall {
  /** Edges that may be the nearest to anything in the box given to `look`; the first `count` entries count. */
  readonly near: Int32Array;
  count = 0;
  /** Edges farther than this from that box have been left out, mm. */
  range = 0;
  #blocks: number[] = [];
  #box: Float64Array = new Float64Array(4);
  #at = 0;
  /** 1 where an edge goes on smoothly into the next. */
  readonly #smooth: Uint8Array;
  readonly #whole: number;

  constructor(
    readonly drawing: Drawing,
    /** +1: distances are positive inside the region; -1: outside. */
    readonly side: 1 | -1,
    other: Drawing,
  ) {
    const { index, edges } = drawing;
    const [s, t] = [index.tree!, other.index.tree!];
    const w = Math.max(s.maxX, t.maxX) - Math.min(s.minX, t.minX);
    const h = Math.max(s.maxY, t.maxY) - Math.min(s.minY, t.minY);
    this.#whole = w + h;
    this.near = new Int32Array(edges.count);
    this.#smooth = new Uint8Array(edges.count);
    const p = index.pieces;
    for (let i = 0; i < edges.count; i++) {
      const j = index.next[i]!;
      const x = tangentX(p, i * STRIDE, edges.r[i]!, 1) * tangentX(p, j * STRIDE, edges.r[j]!, 0);
      const y = tangentY(p, i * STRIDE, edges.r[i]!, 1) * tangentY(p, j * STRIDE, edges.r[j]!, 0);
      this.#smooth[i] = x + y > SMOOTH ? 1 : 0;
    }
  }

  /** Finds the blocks of edges within `range` of the box at `b`. */
  approach(box: Float64Array, b: number, range: number): void {
    this.range = range;
    this.#blocks = this.drawing.index.tree!.search(
      box[b]! - range,
      box[b + 1]! - range,
      box[b + 2]! + range,
      box[b + 3]! + range,
    );
  }

  /** Gathers, from the blocks approached, the edges within range of a smaller box, the one at `b`. */
  look(box: Float64Array, b: number): void {
    this.#box = box;
    this.#at = b;
    const { blocks, boxes } = this.drawing.index;
    const x0 = box[b]! - this.range;
    const y0 = box[b + 1]! - this.range;
    const x1 = box[b + 2]! + this.range;
    const y1 = box[b + 3]! + this.range;
    this.count = 0;
    for (const k of this.#blocks) {
      for (let j = blocks[k]!; j < blocks[k + 1]!; j++) {
        const c = 4 * j;
        if (boxes[c]! > x1 || boxes[c + 1]! > y1 || boxes[c + 2]! < x0 || boxes[c + 3]! < y0) continue;
        this.near[this.count++] = j;
      }
    }
  }

  /** Looks twice as far around the same box; false when all has been seen. */
  farther(): boolean {
    if (this.range >= this.#whole) return false;
    this.approach(this.#box, this.#at, 2 * this.range);
    this.look(this.#box, this.#at);
    return true;
  }

  /**
   * Is all of the piece at `o` of `p` known to be within `limit` of this wall: of one edge it faces, of two that follow
   * each other smoothly and that it faces in turn, or of one vertex? False does not mean that it is not.
   */
  within(p: Float64Array, o: number, limit: number): boolean {
    const { pieces: q, next } = this.drawing.index;
    const { r, wide } = this.drawing.edges;
    for (let k = 0; k < this.count; k++) {
      const i = this.near[k]!;
      const a = i * STRIDE;
      const most = carrierMost(p, o, q, a);
      if (most <= limit) {
        const past = this.#past(p, o, i);
        // A step of `past` brings the piece between the normals and changes either distance by no more than its length.
        if (past >= 0 || (past >= -PAST && most - 2 * past <= limit)) return true;
      }
      if (most <= limit && this.#smooth[i] === 1 && wide[i] === 0) {
        const j = next[i]!;
        if (
          wide[j] === 0 &&
          pastStart(p, o, q, a, r[i]!) >= 0 &&
          pastEnd(p, o, q, j * STRIDE, r[j]!) >= 0 &&
          carrierMost(p, o, q, j * STRIDE) <= limit
        )
          return true;
      }
      if (pointMost(p, o, q[a + X0]!, q[a + Y0]!) <= limit) return true;
    }
    return false;
  }

  /** Signed distance of a point in the box: positive on this wall's side, negative beyond it. */
  signed(x: number, y: number): number {
    const { pieces } = this.drawing.index;
    for (;;) {
      let least = Infinity;
      let edge = -1;
      for (let k = 0; k < this.count; k++) {
        const d = pointToPiece2(x, y, pieces, this.near[k]! * STRIDE);
        if (d < least) {
          least = d;
          edge = this.near[k]!;
        }
      }
      const d = Math.sqrt(least);
      if (edge >= 0 && (d <= this.range || !this.farther())) return this.#left(edge, x, y) ? d : -d;
      if (edge < 0) this.farther();
    }
  }

  /** How far the piece stays between the normals at edge i's ends; negative when it reaches past one. */
  #past(p: Float64Array, o: number, i: number): number {
    const q = this.drawing.index.pieces;
    const r = this.drawing.edges.r[i]!;
    const start = pastStart(p, o, q, i * STRIDE, r);
    const wide = this.drawing.edges.wide[i] === 1;
    if (start < -PAST && !wide) return start;
    const end = pastEnd(p, o, q, i * STRIDE, r);
    // The sector of an arc over 180 degrees is two half-planes, and one of them is enough.
    return wide ? Math.max(start, end) : Math.min(start, end);
  }

  /** Is the point, whose nearest edge is known, on this wall's side? At a vertex the two edges' normals decide together. */
  #left(edge: number, x: number, y: number): boolean {
    const { index, edges, nesting, starts } = this.drawing;
    const p = index.pieces;
    const o = edge * STRIDE;
    const contour = index.contourOf[edge]!;
    const side = this.side * nesting.insideLeft[contour]!;
    const r = edges.r[edge]!;
    const ax = x - p[o + X0]!;
    const ay = y - p[o + Y0]!;
    const bx = x - p[o + X1]!;
    const by = y - p[o + Y1]!;
    if (p[o + R]! < 0) {
      const ux = p[o + U0X]!;
      const uy = p[o + U0Y]!;
      if (ax * ux + ay * uy > 0 && bx * ux + by * uy < 0) return (ux * ay - uy * ax) * side >= 0;
    } else {
      const vx = x - p[o + CX]!;
      const vy = y - p[o + CY]!;
      if (onArc(p, o, vx, vy)) return (r * r - vx * vx - vy * vy) * r * side >= 0;
    }
    const atStart = ax * ax + ay * ay < bx * bx + by * by;
    const before = edge > starts[contour]! ? edge - 1 : starts[contour + 1]! - 1;
    const [i, j] = atStart ? [before, edge] : [edge, index.next[edge]!];
    const tx = tangentX(p, i * STRIDE, edges.r[i]!, 1) + tangentX(p, j * STRIDE, edges.r[j]!, 0);
    const ty = tangentY(p, i * STRIDE, edges.r[i]!, 1) + tangentY(p, j * STRIDE, edges.r[j]!, 0);
    const [vx, vy] = atStart ? [ax, ay] : [bx, by];
    return (tx * vy - ty * vx) * side >= 0;
  }
}

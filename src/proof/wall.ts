import { tangentX, tangentY } from './ball.js';
import { pointToPiece2 } from './distance.js';
import type { Drawing } from './drawing.js';
import { CX, CY, onArc, R, STRIDE, U0X, U0Y, X0, X1, Y0, Y1 } from './edge-index.js';

/** A drawing's boundary as something to keep away from, and the edges of it that are near the place in hand. */
export class Wall {
  /** Edges that may be the nearest to anything in the box given to `look`; first `count` entries count. */
  near: Int32Array = new Int32Array(64);
  count = 0;
  /** Edges farther than this from that box have been left out, mm. */
  range = 0;
  #box: readonly number[] = [];
  readonly #whole: number;

  constructor(
    readonly drawing: Drawing,
    /** +1: distances are positive inside the region; -1: outside. */
    readonly side: 1 | -1,
    other: Drawing,
  ) {
    const [s, t] = [drawing.index.tree!, other.index.tree!];
    const w = Math.max(s.maxX, t.maxX) - Math.min(s.minX, t.minX);
    const h = Math.max(s.maxY, t.maxY) - Math.min(s.minY, t.minY);
    this.#whole = w + h;
  }

  /** Gathers the edges within `range` of a box. */
  look(box: readonly number[], range: number): void {
    this.#box = box;
    this.range = range;
    const { tree, blocks, boxes } = this.drawing.index;
    const x0 = box[0]! - range;
    const y0 = box[1]! - range;
    const x1 = box[2]! + range;
    const y1 = box[3]! + range;
    this.count = 0;
    for (const k of tree!.search(x0, y0, x1, y1)) {
      for (let j = blocks[k]!; j < blocks[k + 1]!; j++) {
        const b = 4 * j;
        if (boxes[b]! > x1 || boxes[b + 1]! > y1 || boxes[b + 2]! < x0 || boxes[b + 3]! < y0) continue;
        if (this.count === this.near.length) {
          const more = new Int32Array(2 * this.count);
          more.set(this.near);
          this.near = more;
        }
        this.near[this.count++] = j;
      }
    }
  }

  /** Looks farther around the same box; false when all has been seen. */
  farther(): boolean {
    if (this.range >= this.#whole) return false;
    this.look(this.#box, 2 * this.range);
    return true;
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

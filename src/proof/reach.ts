import { rollBall, tangentX, tangentY } from './ball.js';
import { nearestOn, pieceToPiece2, pointAlong } from './distance.js';
import type { Drawing } from './drawing.js';
import { CX, CY, pieceBox, R, STRIDE, U0X, U1X, WIDE, X0, X1, Y0, Y1 } from './edge-index.js';
import { halfChord } from './nesting.js';

/** A ball may press this far into the boundary, mm: what the kinks of a written file need (design: reach). */
export const PRESS = 0.0005;

/** Reach is found to this, mm, from below. */
const FINE = 1e-7;

/** Rounding allowed in a distance, mm: so that equal places tie instead of each setting a new least. */
const TIE = 1e-9;

/** Sine of the least turn that gets a ball of its own: 0.05 degree, half of what the proof allows a joint. */
const CORNER = 8.7e-4;

export interface Reach {
  /** mm. When `capped`, the reach is at least this. */
  readonly reach: number;
  /** A point of the boundary where it is taken on, mm, y up; null when capped. */
  readonly at: readonly [number, number] | null;
  readonly capped: boolean;
}

/**
 * The reach of a drawing's boundary seen from inside or outside its region: the largest rho for which every ball
 * of radius rho that rolls along that side, its centre p + rho n, stays rho - 0.0005 mm or more from the boundary.
 *
 * For a pair p, q with d = q - p and t = 0.0005 this says rho <= (d.d - t t) / (2 (d.n - t)) wherever d.n > t; so
 * each pair of edges sets one upper bound and the reach is the least of them. Centres over a straight edge lie on a
 * parallel segment, over an arc on a concentric arc, about a corner on an arc of radius rho. Whether a pair allows
 * a given rho is then the distance of two pieces, in closed form, and only a pair that does not allow the least
 * bound so far is bisected (error 1e-7 mm, from below).
 *
 * Only what meets the balls' boxes is looked at, so the work grows with the cap: `cap` (mm) stops there, and larger
 * reaches are reported as the cap. Without it the balls start at the mean spacing of edges and grow fourfold up to
 * the drawing's diagonal, beyond which a reach is called capped too. An empty drawing has reach 0.
 */
export function reach(drawing: Drawing, side: 'inside' | 'outside', cap = Infinity): Reach {
  const index = drawing.index;
  if (index.tree === null) return { reach: 0, at: null, capped: false };
  const search = new Search(drawing, side, cap < Infinity ? cap : index.diagonal);
  search.curvature();
  let rho = cap < Infinity ? cap : index.diagonal / Math.sqrt(drawing.edges.count + 1);
  while (!search.below(rho)) rho *= 4;
  return { reach: search.bound, at: search.place(), capped: search.capped };
}

class Search {
  /** Least upper bound so far. */
  bound: number;
  capped = true;
  #limit = 0;
  /** The pair that set the bound: a corner has its edge's number plus the number of edges. */
  #path = -1;
  #against = -1;
  readonly #left: number;
  readonly #corner = new Float64Array(STRIDE);
  readonly #centres = new Float64Array(STRIDE);
  readonly #box = new Float64Array(4);

  constructor(
    readonly drawing: Drawing,
    side: 'inside' | 'outside',
    top: number,
  ) {
    this.bound = top;
    this.#left = side === 'inside' ? 1 : -1;
  }

  /** +1 or -1: on which side of edge i, left or right, the ball rolls. */
  #sideOf(i: number): number {
    return this.#left * this.drawing.nesting.insideLeft[this.drawing.index.contourOf[i]!]!;
  }

  /** Every arc that turns about the ball bounds it by itself: d.d = 2 R d.n, and d.n is greatest end to end. */
  curvature(): void {
    const e = this.drawing.edges;
    for (let i = 0; i < e.count; i++) {
      const r = e.r[i]! * this.#sideOf(i);
      if (r <= 0) continue;
      const half = halfChord(e, i);
      const deep = e.wide[i] === 1 ? 2 * r : (2 * half * half) / r;
      if (deep <= PRESS) continue;
      const bound = (2 * r * deep - PRESS * PRESS) / (2 * (deep - PRESS));
      if (bound < this.bound) this.#set(bound, i, i);
    }
  }

  #set(bound: number, path: number, against: number): void {
    this.bound = bound;
    this.capped = false;
    this.#path = path;
    this.#against = against;
  }

  /** Looks for bounds below rho; true when the least bound is now known: found below rho, or rho was all asked. */
  below(rho: number): boolean {
    const before = this.bound;
    this.#limit = Math.min(rho, before);
    const { index, edges } = this.drawing;
    const blocks = index.blocks;
    for (let k = 0; k + 1 < blocks.length; k++) this.#block(blocks[k]!, blocks[k + 1]!);
    for (let i = 0; i < edges.count; i++) {
      if (this.#makeCorner(i)) this.#testCorner(i + edges.count);
    }
    return this.bound < before || rho >= before;
  }

  #block(from: number, to: number): void {
    const { index } = this.drawing;
    const p = index.pieces;
    const box = this.#box;
    const rho = Math.min(this.#limit, this.bound);
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = from; i < to; i++) {
      rollBall(p, i * STRIDE, this.#turn(i), rho, this.#centres);
      pieceBox(this.#centres, 0, box, 0);
      if (box[0]! < x0) x0 = box[0]!;
      if (box[1]! < y0) y0 = box[1]!;
      if (box[2]! > x1) x1 = box[2]!;
      if (box[3]! > y1) y1 = box[3]!;
    }
    const near = index.tree!.search(x0 - rho, y0 - rho, x1 + rho, y1 + rho);
    for (let i = from; i < to; i++) this.#test(i, p, i * STRIDE, this.#turn(i), i, near);
  }

  /** `turn` of edge i as `rollBall` takes it. */
  #turn(i: number): number {
    const r = this.drawing.edges.r[i]!;
    return r < 0 ? -this.#sideOf(i) : this.#sideOf(i);
  }

  /** A corner's balls against all that is near. */
  #testCorner(path: number): void {
    const rho = Math.min(this.#limit, this.bound);
    const x = this.#corner[CX]!;
    const y = this.#corner[CY]!;
    const near = this.drawing.index.tree!.search(x - 2 * rho, y - 2 * rho, x + 2 * rho, y + 2 * rho);
    this.#test(path, this.#corner, 0, -1, -1, near);
  }

  /** One path's balls against the edges of the blocks `near`, leaving out edge `skip`. */
  #test(path: number, p: Float64Array, o: number, turn: number, skip: number, near: readonly number[]): void {
    const { boxes, blocks, pieces } = this.drawing.index;
    const c = this.#centres;
    let rho = Math.min(this.#limit, this.bound);
    rollBall(p, o, turn, rho, c);
    pieceBox(c, 0, this.#box, 0);
    const x0 = this.#box[0]! - rho;
    const y0 = this.#box[1]! - rho;
    const x1 = this.#box[2]! + rho;
    const y1 = this.#box[3]! + rho;
    let clear = (rho - PRESS - TIE) * (rho - PRESS - TIE);
    for (let k = 0; k < near.length; k++) {
      const to = blocks[near[k]! + 1]!;
      for (let j = blocks[near[k]!]!; j < to; j++) {
        const b = 4 * j;
        if (boxes[b]! > x1 || boxes[b + 2]! < x0 || boxes[b + 1]! > y1 || boxes[b + 3]! < y0) continue;
        if (j === skip || pieceToPiece2(c, 0, pieces, j * STRIDE, clear) >= clear) continue;
        rho = this.#bisect(p, o, turn, j, rho);
        this.#set(rho, path, j);
        rollBall(p, o, turn, rho, c);
        clear = (rho - PRESS - TIE) * (rho - PRESS - TIE);
      }
    }
  }

  /** The largest rho, below `high`, that the path's balls may have as far as edge j is concerned. */
  #bisect(p: Float64Array, o: number, turn: number, j: number, high: number): number {
    const { pieces } = this.drawing.index;
    const c = this.#centres;
    let low = 0;
    while (high - low > FINE) {
      const rho = (low + high) / 2;
      const clear = rho > PRESS + TIE ? (rho - PRESS - TIE) * (rho - PRESS - TIE) : 0;
      rollBall(p, o, turn, rho, c);
      if (pieceToPiece2(c, 0, pieces, j * STRIDE, clear) >= clear) low = rho;
      else high = rho;
    }
    return low;
  }

  /** If edge i ends in a corner that turns away from the side, makes the path about it: an arc of no radius. */
  #makeCorner(i: number): boolean {
    const { edges, index } = this.drawing;
    const p = index.pieces;
    const j = index.next[i]!;
    const ax = tangentX(p, i * STRIDE, edges.r[i]!, 1);
    const ay = tangentY(p, i * STRIDE, edges.r[i]!, 1);
    const bx = tangentX(p, j * STRIDE, edges.r[j]!, 0);
    const by = tangentY(p, j * STRIDE, edges.r[j]!, 0);
    const side = this.#sideOf(i);
    if ((ax * by - ay * bx) * side > -CORNER) return false;
    const c = this.#corner;
    c[X0] = c[X1] = c[CX] = edges.x1[i]!;
    c[Y0] = c[Y1] = c[CY] = edges.y1[i]!;
    c[R] = 0;
    c[WIDE] = 0;
    // The normal swings from one edge's to the next one's; counter-clockwise order as pieces have it.
    const [first, last] = side > 0 ? [U1X, U0X] : [U0X, U1X];
    c[first] = -ay * side;
    c[first + 1] = ax * side;
    c[last] = -by * side;
    c[last + 1] = bx * side;
    return true;
  }

  /** The point of the boundary that the limiting ball touches, other than where it rolls. */
  place(): [number, number] | null {
    if (this.#path < 0) return null;
    const { index, edges } = this.drawing;
    const c = this.#centres;
    if (this.#path === this.#against) {
      return pointAlong(index.pieces, this.#path * STRIDE, 0.5);
    }
    const corner = this.#path >= edges.count;
    if (corner) this.#makeCorner(this.#path - edges.count);
    const turn = corner ? -1 : this.#turn(this.#path);
    rollBall(corner ? this.#corner : index.pieces, corner ? 0 : this.#path * STRIDE, turn, this.bound, c);
    return nearestOn(index.pieces, this.#against * STRIDE, c, 0);
  }
}

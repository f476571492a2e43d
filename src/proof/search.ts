import { rollBall, tangentX, tangentY } from './ball.js';
import { nearestOn, pieceToPiece2, pointAlong } from './distance.js';
import type { Drawing } from './drawing.js';
import { CX, CY, pieceBox, R, STRIDE, U0X, U1X, WIDE, X0, X1, Y0, Y1 } from './edge-index.js';
import { allowed, CORNER } from './facing-pairs.js';
import { halfChord } from './nesting.js';
import { PRESS } from './press.js';

/** Reach is found to this, mm, from below. */
const FINE = 1e-7;

/** Rounding allowed in a distance, mm: so that equal places tie instead of each setting a new least. */
const TIE = 1e-9;

/** What `reach` does: see there. */
export class Search {
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
    for (let i = 0; i < this.drawing.edges.count; i++) this.#curve(i);
  }

  #curve(i: number): void {
    const e = this.drawing.edges;
    const r = e.r[i]! * this.#sideOf(i);
    if (r <= 0) return;
    const bound = allowed(r, halfChord(e, i), e.wide[i] === 1);
    if (bound < this.bound) this.#set(bound, i, i);
  }

  /**
   * Calls `see` for every edge and corner whose balls may not be as large as `limit`, with the bound and what sets it. An
   * edge is told of up to three times: what its own bend and edges farther off allow, and what each neighbour does, or
   * a corner at its one end would hide all else along it.
   */
  each(limit: number, see: (path: number, against: number, bound: number) => void): void {
    const { index, edges } = this.drawing;
    const { blocks } = index;
    const take = (work: () => void): void => {
      this.bound = limit;
      this.#path = -1;
      work();
      if (this.#path >= 0) see(this.#path, this.#against, this.bound);
    };
    this.#limit = limit;
    for (let k = 0; k + 1 < blocks.length; k++) {
      this.bound = limit;
      const near = this.#near(blocks[k]!, blocks[k + 1]!);
      for (let i = blocks[k]!; i < blocks[k + 1]!; i++) {
        take(() => {
          this.#curve(i);
          this.#test(i, index.pieces, i * STRIDE, this.#turn(i), i, near, true);
        });
        const next = index.next[i]!;
        take(() => this.#pair(i, next));
        take(() => this.#pair(next, i));
      }
    }
    for (let i = 0; i < edges.count; i++) {
      this.bound = limit;
      if (this.#makeCorner(i)) take(() => this.#testCorner(i + edges.count));
    }
  }

  /** The balls on edge i against edge j alone. */
  #pair(i: number, j: number): void {
    const { pieces } = this.drawing.index;
    rollBall(pieces, i * STRIDE, this.#turn(i), this.bound, this.#centres);
    const clear = (this.bound - PRESS - TIE) * (this.bound - PRESS - TIE);
    if (pieceToPiece2(this.#centres, 0, pieces, j * STRIDE, clear) >= clear) return;
    this.#set(this.#bisect(pieces, i * STRIDE, this.#turn(i), j, this.bound), i, j);
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
    const { blocks } = this.drawing.index;
    for (let k = 0; k + 1 < blocks.length; k++) this.#block(blocks[k]!, blocks[k + 1]!);
    this.#corners();
    return this.bound < before || rho >= before;
  }

  /** As `curvature` and `below` for the cap: only pairs that can set a lower bound are looked at. */
  belowCap(cap: number): void {
    const { edges, index } = this.drawing;
    const { first, list, corners, own } = this.drawing.facing(cap);
    for (let i = 0; i < edges.count; i++)
      if (own[i]! < this.bound && edges.r[i]! * this.#sideOf(i) > 0) this.#set(own[i]!, i, i);
    this.#limit = this.bound;
    const c = this.#centres;
    for (let i = 0; i < edges.count; i++) {
      if (first[i] === first[i + 1]) continue;
      const turn = this.#turn(i);
      const o = i * STRIDE;
      let rho = this.bound;
      rollBall(index.pieces, o, turn, rho, c);
      let clear = (rho - PRESS - TIE) * (rho - PRESS - TIE);
      for (let k = first[i]!; k < first[i + 1]!; k++) {
        const j = list[k]!;
        if (pieceToPiece2(c, 0, index.pieces, j * STRIDE, clear) >= clear) continue;
        rho = this.#bisect(index.pieces, o, turn, j, rho);
        this.#set(rho, i, j);
        rollBall(index.pieces, o, turn, rho, c);
        clear = (rho - PRESS - TIE) * (rho - PRESS - TIE);
      }
    }
    for (const i of corners) if (this.#makeCorner(i)) this.#testCorner(i + edges.count);
  }

  #corners(): void {
    const { count } = this.drawing.edges;
    for (let i = 0; i < count; i++) if (this.#makeCorner(i)) this.#testCorner(i + count);
  }

  #block(from: number, to: number): void {
    const near = this.#near(from, to);
    for (let i = from; i < to; i++) this.#edge(i, near);
  }

  #edge(i: number, near: readonly number[]): void {
    this.#test(i, this.drawing.index.pieces, i * STRIDE, this.#turn(i), i, near);
  }

  /** The blocks that balls rolling along edges `from` up to `to` may meet. */
  #near(from: number, to: number): number[] {
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
    return index.tree!.search(x0 - rho, y0 - rho, x1 + rho, y1 + rho);
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

  /** One path's balls against the edges of the blocks `near`, leaving out edge `skip`, and its neighbours too if `apart`. */
  #test(
    path: number,
    p: Float64Array,
    o: number,
    turn: number,
    skip: number,
    near: readonly number[],
    apart = false,
  ): void {
    const { boxes, blocks, pieces, next } = this.drawing.index;
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
        if (apart && (next[j] === skip || next[skip] === j)) continue;
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
    const turn = (ax * by - ay * bx) * side;
    // Straight back is away from both sides, as nearly as can be told.
    if (turn > (ax * bx + ay * by > 0 ? -CORNER : CORNER)) return false;
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
    const { index } = this.drawing;
    if (this.#path === this.#against) return pointAlong(index.pieces, this.#path * STRIDE, 0.5);
    this.#roll(this.#path, this.bound);
    return nearestOn(index.pieces, this.#against * STRIDE, this.#centres, 0);
  }

  /** The centre of the ball of radius rho that rolls on a path and touches edge `against`, as nearly as it can. */
  centre(path: number, against: number, rho: number): [number, number] {
    const { edges, index } = this.drawing;
    this.#roll(path, rho);
    if (path !== against) return nearestOn(this.#centres, 0, index.pieces, against * STRIDE);
    return edges.r[path] === 0 ? [edges.x0[path]!, edges.y0[path]!] : pointAlong(this.#centres, 0, 0.5);
  }

  #roll(path: number, rho: number): void {
    const { index, edges } = this.drawing;
    const corner = path >= edges.count;
    if (corner) this.#makeCorner(path - edges.count);
    const turn = corner ? -1 : this.#turn(path);
    rollBall(corner ? this.#corner : index.pieces, corner ? 0 : path * STRIDE, turn, rho, this.#centres);
  }
}

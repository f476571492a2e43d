import { nearestOn, pieceToPiece2, pointAlong } from './distance.js';
import type { Drawing } from './drawing.js';
import { STRIDE, X0, X1, Y0, Y1 } from './edge-index.js';
import { halve } from './facing.js';
import { Wall } from './wall.js';

/** The greatest gap and the deepest overlap are found to this, mm, or to the last SHORT of an edge. */
const FINE = 2e-5;
const SHORT = 1e-4;

/** Nearer than this, mm, boundaries count as meeting. */
const MEET = 1e-9;

/** First look round a block of edges, mm: a usual clearance; a look that finds nothing doubles. */
const FIRST_LOOK = 0.25;

/** Halvings of an edge: 2^-40 of any edge is far under SHORT. */
const LEVELS = 40;

export interface Gap {
  readonly least: number;
  readonly most: number;
  readonly leastAt: readonly [number, number];
  readonly mostAt: readonly [number, number];
}

/**
 * The gap between a pocket and the plug lying in it, mm, over every point of either boundary: its distance to the
 * other boundary, negative where the plug is outside the pocket (or the pocket's edge inside the plug). Both ways,
 * so a part missing from either shows as a large `most` or `least`. A positive `least` is exact (closed form);
 * `most` and a negative `least` err by 0.0001 mm at most. With an empty drawing nothing is known: -Infinity, Infinity.
 */
export function gap(pocket: Drawing, plug: Drawing): Gap {
  if (pocket.index.tree === null || plug.index.tree === null) {
    return { least: -Infinity, most: Infinity, leastAt: [0, 0], mostAt: [0, 0] };
  }
  const a = new Walk(plug, new Wall(pocket, 1, plug));
  const b = new Walk(pocket, new Wall(plug, -1, pocket));
  a.go();
  b.go();
  let most = a.most.value > b.most.value ? a.most : b.most;
  let least = a.least();
  // No gap anywhere: the greatest one is then where the two boundaries come nearest.
  if (most.value === 0) most = { value: -least.value, at: least.at };
  if (a.overlaps || b.overlaps || least.value < MEET) {
    a.goDeep();
    b.goDeep();
    least = a.deepest.value > b.deepest.value ? a.deepest : b.deepest;
    least = { value: -least.value, at: least.at };
  }
  return { least: least.value, most: most.value, leastAt: least.at, mostAt: most.at };
}

interface Found {
  value: number;
  at: [number, number];
}

/** Walks one boundary and measures its distance to the other, a block of edges at a time. */
class Walk {
  /** Only what is over 0 is sought, so that every piece on the other side can be left as soon as it is known to be. */
  readonly most: Found = { value: 0, at: [0, 0] };
  readonly deepest: Found = { value: 0, at: [0, 0] };
  overlaps = false;
  #least2 = Infinity;
  #pair: readonly [number, number] = [0, 0];
  readonly #stack = new Float64Array((2 * LEVELS + 2) * STRIDE);

  constructor(
    readonly drawing: Drawing,
    readonly wall: Wall,
  ) {}

  go(): void {
    const { starts, index } = this.drawing;
    this.#eachEdge((i) => {
      if (this.wall.side > 0) this.#nearest(i);
      this.#worst(i, 1, this.most);
      if (starts[index.contourOf[i]!] === i) {
        const [x, y] = pointAlong(index.pieces, i * STRIDE, 0.5);
        if (this.wall.signed(x, y) < 0) this.overlaps = true;
      }
    });
  }

  goDeep(): void {
    this.#eachEdge((i) => this.#worst(i, -1, this.deepest));
  }

  #eachEdge(measure: (edge: number) => void): void {
    const { blocks, blockBoxes, boxes } = this.drawing.index;
    for (let k = 0; k + 1 < blocks.length; k++) {
      this.wall.approach(blockBoxes, 4 * k, FIRST_LOOK);
      for (let i = blocks[k]!; i < blocks[k + 1]!; i++) {
        this.wall.look(boxes, 4 * i);
        measure(i);
        // Looking farther has narrowed the search to edge i alone.
        if (this.wall.range !== FIRST_LOOK) this.wall.approach(blockBoxes, 4 * k, FIRST_LOOK);
      }
    }
  }

  /** Least distance of edge i, pair by pair. */
  #nearest(i: number): void {
    const p = this.drawing.index.pieces;
    const q = this.wall.drawing.index.pieces;
    for (;;) {
      let least = this.#least2;
      for (let k = 0; k < this.wall.count; k++) {
        const j = this.wall.near[k]!;
        const d = pieceToPiece2(p, i * STRIDE, q, j * STRIDE, 0);
        if (d < least) {
          least = this.#least2 = d;
          this.#pair = [i, j];
        }
      }
      // What was left out is farther than the range, so it matters only if nothing so near is known.
      if (this.wall.range * this.wall.range >= least || !this.wall.farther()) return;
    }
  }

  /** The least distance of all; 0 when the boundaries cross. */
  least(): Found {
    const [i, j] = this.#pair;
    const at = nearestOn(this.drawing.index.pieces, i * STRIDE, this.wall.drawing.index.pieces, j * STRIDE);
    return { value: Math.sqrt(this.#least2), at };
  }

  /** Raises `found` to the greatest value, along edge i, of the signed distance (`sign` 1) or the overlap (-1). */
  #worst(i: number, sign: 1 | -1, found: Found): void {
    const stack = this.#stack;
    stack.set(this.drawing.index.pieces.subarray(i * STRIDE, (i + 1) * STRIDE), 0);
    if (this.wall.within(stack, 0, found.value + FINE)) return;
    this.#see(stack[X0]!, stack[Y0]!, sign, found);
    this.#see(stack[X1]!, stack[Y1]!, sign, found);
    let depth = 1;
    while (depth > 0) {
      const o = --depth * STRIDE;
      if (this.wall.within(stack, o, found.value + FINE)) continue;
      const [x, y] = pointAlong(stack, o, 0.5);
      const d = this.#see(x, y, sign, found);
      const dx = x - stack[o + X0]!;
      const dy = y - stack[o + Y0]!;
      const half = Math.sqrt(dx * dx + dy * dy);
      // All on the other side, unless it crosses over. And a distance changes no faster than one moves.
      if (d <= 0 && !this.#meets(o)) continue;
      if (d + half <= found.value + FINE || half <= SHORT || depth + 3 > 2 * LEVELS) continue;
      halve(stack, o, o + STRIDE, o + 2 * STRIDE);
      stack.copyWithin(o, o + 2 * STRIDE, o + 3 * STRIDE);
      depth += 2;
    }
  }

  #see(x: number, y: number, sign: 1 | -1, found: Found): number {
    const d = sign * this.wall.signed(x, y);
    if (d > found.value) {
      found.value = d;
      found.at = [x, y];
    }
    return d;
  }

  /** Does the piece meet the wall? */
  #meets(o: number): boolean {
    const q = this.wall.drawing.index.pieces;
    for (let k = 0; k < this.wall.count; k++) {
      if (pieceToPiece2(this.#stack, o, q, this.wall.near[k]! * STRIDE, MEET * MEET) < MEET * MEET)
        return true;
    }
    return false;
  }
}

import { turnCosine, turnSine } from './ball.js';
import { CX, CY, type Index, R, STRIDE, U0X, U0Y, U1X, U1Y, X0, X1, Y0, Y1 } from './edge-index.js';
import type { Edges } from './edges.js';
import { halfChord } from './nesting.js';
import { PRESS } from './press.js';

/** How much a tangent may turn at a joint, radians: a direction this far beside an arc may still be a normal there. */
const TURN = 2e-3;

/** A turn, radians, that no ball of a cutter's size notices: at radius R it presses in by R R k k / 2 PRESS less than this. */
const NO_TURN = 1e-6;

/** Sine of the least turn that gets a ball of its own: 0.05 degree, half of what the proof allows a joint. */
export const CORNER = 8.7e-4;

/** Once round a ball, in its radii, and some: the way between two of its points along a bend that is not facing itself. */
const ROUND = 8;

/** A ball is held by what comes before a deep arc and after it: that far apart at most, in its radii. */
const BESIDE = 2;

/** What is found of a reach is sure to this, mm. */
const FINE = 1e-7;

/** Arcs up to this share gentler than the bound so far may yet hold a ball together with others. */
const MORE = 1.01;

/** For every edge the edges that its balls are to be held against: those of edge i are list[first[i]] up to list[first[i + 1]]. */
export interface FacingPairs {
  /** Balls of a radius up to this, mm, were asked for. */
  readonly cap: number;
  readonly first: Int32Array;
  readonly list: Int32Array;
  /** Edges that end in a turn of CORNER or more, to either side or back, in order. */
  readonly corners: readonly number[];
  /** What each arc allows by its own bend, mm; infinite for straight edges. */
  readonly own: Float64Array;
}

/**
 * The pairs of edges that can hold a ball of radius `cap` or less, beyond what each arc allows by its own bend. What sets
 * the reach of a smooth boundary is a curvature, or two points whose line is normal to both (Federer 1959; Aamari et al.
 * 2019, theorem 3.4). So of edges in smooth company only those matter that can face each other so, that may cross, or
 * that lie along one contour about a bend of which it is not known what it allows: a ball may press in by PRESS, so a
 * bend of several arcs allows less than each. Every pair with a corner or a wide arc in it matters as it lies near.
 */
export function facingPairs(
  edges: Edges,
  starts: Int32Array,
  index: Index,
  insideLeft: Int8Array,
  cap: number,
): FacingPairs {
  const found = new Pairs(edges, starts, index, insideLeft, cap);
  found.go();
  return found.sorted();
}

/** What an arc allows by its own bend, mm: a ball of that radius presses in by PRESS from one end to the other. */
export function allowed(radius: number, half: number, wide: boolean): number {
  const deep = wide ? 2 * radius : (2 * half * half) / radius;
  return deep <= PRESS ? Infinity : (2 * radius * deep - PRESS * PRESS) / (2 * (deep - PRESS));
}

class Pairs {
  readonly #pairs: number[] = [];
  readonly #corners: number[] = [];
  readonly #own: Float64Array;
  readonly #rough: Uint8Array;
  /** +1 or -1 where an arc bends left or right by no more than the balls on that side. */
  readonly #tight: Int8Array;
  /** How many arcs before each edge may allow less, with their neighbours, than is known of their side. */
  readonly #doubts: Int32Array;
  /** Sine of the turn at the start of each edge. */
  readonly #kink: Float64Array;
  readonly #chord: Float64Array;
  /** Chords from the contour's start to the edge's. */
  readonly #along: Float64Array;
  readonly #round: Float64Array;
  /** The largest ball that matters on either side. */
  #rho: number;

  constructor(
    readonly edges: Edges,
    readonly starts: Int32Array,
    readonly index: Index,
    readonly insideLeft: Int8Array,
    readonly cap: number,
  ) {
    const { count } = edges;
    this.#rough = new Uint8Array(count);
    this.#own = new Float64Array(count).fill(Infinity);
    this.#tight = new Int8Array(count);
    this.#doubts = new Int32Array(count + 1);
    this.#kink = new Float64Array(count);
    this.#chord = new Float64Array(count);
    this.#along = new Float64Array(count);
    this.#round = new Float64Array(starts.length - 1);
    this.#rho = cap;
  }

  go(): void {
    this.#look();
    const { blocks, blockBoxes, boxes, tree } = this.index;
    const d = 2 * this.#rho;
    for (let k = 0; k + 1 < blocks.length; k++) {
      const b = 4 * k;
      const near = tree!.search(
        blockBoxes[b]! - d,
        blockBoxes[b + 1]! - d,
        blockBoxes[b + 2]! + d,
        blockBoxes[b + 3]! + d,
      );
      for (let i = blocks[k]!; i < blocks[k + 1]!; i++) {
        const x0 = boxes[4 * i]!;
        const y0 = boxes[4 * i + 1]!;
        const x1 = boxes[4 * i + 2]!;
        const y1 = boxes[4 * i + 3]!;
        for (let m = 0; m < near.length; m++) {
          if (!meets(blockBoxes, 4 * near[m]!, x0 - d, y0 - d, x1 + d, y1 + d)) continue;
          const to = blocks[near[m]! + 1]!;
          for (let j = Math.max(i + 1, blocks[near[m]!]!); j < to; j++) {
            const c = 4 * j;
            if (!meets(boxes, c, x0 - d, y0 - d, x1 + d, y1 + d)) continue;
            if (this.#matters(i, j, meets(boxes, c, x0, y0, x1, y1))) this.#pairs.push(i, j);
          }
        }
      }
    }
  }

  /** Both ways, by edge. */
  sorted(): FacingPairs {
    const { count } = this.edges;
    const pairs = this.#pairs;
    const first = new Int32Array(count + 1);
    for (let k = 0; k < pairs.length; k++) first[pairs[k]! + 1]!++;
    for (let i = 0; i < count; i++) first[i + 1]! += first[i]!;
    const list = new Int32Array(pairs.length);
    const at = first.slice();
    for (let k = 0; k < pairs.length; k += 2) {
      const [i, j] = [pairs[k]!, pairs[k + 1]!];
      list[at[i]!++] = j;
      list[at[j]!++] = i;
    }
    return { cap: this.cap, first, list, corners: this.#corners, own: this.#own };
  }

  #look(): void {
    const { edges, index, starts, insideLeft } = this;
    for (let k = 0; k + 1 < starts.length; k++) {
      let along = 0;
      for (let i = starts[k]!; i < starts[k + 1]!; i++) {
        if (edges.wide[i] === 1) this.#rough[i] = 1;
        const next = index.next[i]!;
        const turn = this.#turn(i, next);
        this.#kink[next] = turn;
        if (!(turn < CORNER)) this.#corners.push(i);
        if (!(turn <= TURN)) this.#rough[i] = this.#rough[next] = 1;
        this.#along[i] = along;
        along += this.#chord[i] = 2 * halfChord(edges, i);
      }
      this.#round[k] = along;
    }
    const { count } = edges;
    const own = this.#own;
    // What arcs allow inside and outside.
    const least = [this.cap, this.cap];
    const sideOf = (i: number): 0 | 1 => (edges.r[i]! * insideLeft[index.contourOf[i]!]! > 0 ? 0 : 1);
    for (let i = 0; i < count; i++) {
      const r = Math.abs(edges.r[i]!);
      if (r === 0) continue;
      own[i] = allowed(r, this.#chord[i]! / 2, edges.wide[i] === 1);
      const side = sideOf(i);
      if (own[i]! < least[side]!) least[side] = own[i]!;
    }
    this.#rho = Math.max(least[0]!, least[1]!);
    for (let i = 0; i < count; i++) {
      const r = Math.abs(edges.r[i]!);
      const bound = least[sideOf(i)]!;
      let doubt = 0;
      if (r !== 0 && r < MORE * bound) {
        this.#tight[i] = edges.r[i]! > 0 ? 1 : -1;
        const hair = this.#hair(i, own[i]! - r, bound);
        if (!(own[i]! - hair > bound - FINE)) doubt = 1;
      }
      this.#doubts[i + 1] = this.#doubts[i]! + doubt;
    }
  }

  /**
   * By how much less than by itself an arc that a ball overhangs by `over` allows, at most, for what comes before and
   * after it: a line or a bend the other way, long enough to keep the ball from what lies beyond, or a bend the same way
   * that is gentler by more than MORE; and for kinks there.
   */
  #hair(i: number, over: number, bound: number): number {
    // Of a shallow arc nothing is known.
    if (!(over < (MORE - 1) * bound)) return Infinity;
    const { r } = this.edges;
    const { next, contourOf } = this.index;
    const k = contourOf[i]!;
    const before = i > this.starts[k]! ? i - 1 : this.starts[k + 1]! - 1;
    const plain = (j: number): boolean => r[j]! * r[i]! <= 0 && this.#chord[j]! > 2 * over;
    const gentler = plain(next[i]!) && plain(before) ? 1 : MORE - 1;
    return (over * over) / (2 * gentler * bound) + 4 * (this.#kink[i]! + this.#kink[next[i]!]!) * bound;
  }

  /** Sine of the turn from the end of edge i to the start of edge j; more than any where it turns back. */
  #turn(i: number, j: number): number {
    const { pieces } = this.index;
    const [a, b] = [i * STRIDE, j * STRIDE];
    const [ri, rj] = [this.edges.r[i]!, this.edges.r[j]!];
    return turnCosine(pieces, a, ri, b, rj) > 0 ? Math.abs(turnSine(pieces, a, ri, b, rj)) : Infinity;
  }

  #matters(i: number, j: number, overlap: boolean): boolean {
    if (this.#rough[i] === 1 || this.#rough[j] === 1) return true;
    const { index } = this;
    if (this.#roundOneBall(i, j)) return true;
    const after = index.next[i] === j;
    if (after || index.next[j] === i) {
      if (after && index.next[j] === i) return true;
      return this.#kink[after ? j : i]! > NO_TURN;
    }
    const p = index.pieces;
    const [a, b] = [i * STRIDE, j * STRIDE];
    if (overlap && (p[a + R]! >= 0 || p[b + R]! >= 0 || cross(p, a, b))) return true;
    return mayFace(p, a, b, 2 * this.#rho);
  }

  /** Whether a ball may be held by edges i < j, less than once round it apart, about a bend of which that is not known. */
  #roundOneBall(i: number, j: number): boolean {
    const { contourOf } = this.index;
    const k = contourOf[i]!;
    if (contourOf[j] !== k) return false;
    const forward = this.#along[j]! - this.#along[i]! - this.#chord[i]!;
    const back = this.#round[k]! - this.#along[j]! + this.#along[i]! - this.#chord[j]!;
    if (this.#tight[i] !== 0 && this.#tight[i] === this.#tight[j])
      return Math.min(forward, back) < this.#rho * ROUND;
    const near = this.#rho * BESIDE;
    return (forward < near && this.#between(i, j) > 0) || (back < near && this.#outside(i, j, k) > 0);
  }

  /** How many doubtful arcs there are from i on to j, both counted. */
  #between(i: number, j: number): number {
    return this.#doubts[j + 1]! - this.#doubts[i]!;
  }

  /** From j on to i, past the end of contour k. */
  #outside(i: number, j: number, k: number): number {
    return this.#between(j, this.starts[k + 1]! - 1) + this.#between(this.starts[k]!, i);
  }
}

/** Does the box at `o` overlap or touch another? */
function meets(boxes: Float64Array, o: number, x0: number, y0: number, x1: number, y1: number): boolean {
  return boxes[o]! <= x1 && boxes[o + 2]! >= x0 && boxes[o + 1]! <= y1 && boxes[o + 3]! >= y0;
}

/** Do two straight pieces cross? */
function cross(p: Float64Array, a: number, b: number): boolean {
  const side = (o: number, q: number, end: number): number =>
    p[o + U0X]! * (p[q + end + 1]! - p[o + Y0]!) - p[o + U0Y]! * (p[q + end]! - p[o + X0]!);
  return side(a, b, X0) * side(a, b, X1) <= 0 && side(b, a, X0) * side(b, a, X1) <= 0;
}

/** Whether two pieces may have a common normal on which they are less than d apart. Errs on the side of yes. */
function mayFace(p: Float64Array, a: number, b: number, d: number): boolean {
  if (p[a + R]! >= 0) return p[b + R]! >= 0 ? arcFacesArc(p, a, b, d) : lineFacesArc(p, b, a, d);
  if (p[b + R]! >= 0) return lineFacesArc(p, a, b, d);
  return Math.abs(p[a + U0X]! * p[b + U0Y]! - p[a + U0Y]! * p[b + U0X]!) <= 2 * TURN;
}

/** On the perpendicular through the arc's centre. */
function lineFacesArc(p: Float64Array, l: number, a: number, d: number): boolean {
  const ux = p[l + U0X]!;
  const uy = p[l + U0Y]!;
  const dx = p[a + CX]! - p[l + X0]!;
  const dy = p[a + CY]! - p[l + Y0]!;
  const r = p[a + R]!;
  const spare = TURN * (r + d);
  const along = dx * ux + dy * uy;
  const length = (p[l + X1]! - p[l + X0]!) * ux + (p[l + Y1]! - p[l + Y0]!) * uy;
  if (along < -spare || along > length + spare) return false;
  const away = ux * dy - uy * dx;
  return (
    (Math.abs(away - r) < d && pointsAt(p, a, uy, -ux, 1, TURN)) ||
    (Math.abs(away + r) < d && pointsAt(p, a, -uy, ux, 1, TURN))
  );
}

/** On the line of centres. */
function arcFacesArc(p: Float64Array, a: number, b: number, d: number): boolean {
  const dx = p[b + CX]! - p[a + CX]!;
  const dy = p[b + CY]! - p[a + CY]!;
  const c = Math.sqrt(dx * dx + dy * dy);
  const r = p[a + R]!;
  const s = p[b + R]!;
  // Arcs about nearly one centre face each other everywhere.
  const turn = (TURN * (c + r + s)) / c;
  if (!(turn < 0.5)) return true;
  const ahead = pointsAt(p, a, dx, dy, c, turn);
  const behind = pointsAt(p, a, -dx, -dy, c, turn);
  if (!ahead && !behind) return false;
  const near = pointsAt(p, b, -dx, -dy, c, turn);
  const far = pointsAt(p, b, dx, dy, c, turn);
  return (
    (ahead && near && Math.abs(c - s - r) < d) ||
    (ahead && far && Math.abs(c + s - r) < d) ||
    (behind && near && Math.abs(c - s + r) < d) ||
    (behind && far && c + s + r < d)
  );
}

/** Does a direction of the given length point at an arc, or past its ends by no more than `turn`? */
function pointsAt(p: Float64Array, a: number, x: number, y: number, length: number, turn: number): boolean {
  const spare = -turn * length;
  return p[a + U0X]! * y - p[a + U0Y]! * x >= spare && x * p[a + U1Y]! - y * p[a + U1X]! >= spare;
}

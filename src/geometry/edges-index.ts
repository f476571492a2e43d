import Flatbush from 'flatbush';
import type { Edge } from './edge.js';
import { type Box, writeBox } from './region.js';

/** Below this many edges a plain walk over the boxes beats building a tree. */
const FEW = 48;

/** Past every drawing, mm. */
const FAR = 1e9;

/** The box that is asked about: numbers handed from call to call would be put on the heap. */
const asked = { minX: 0.5, minY: 0.5, maxX: 0.5, maxY: 0.5 };
const own = [0.5, 0.5, 0.5, 0.5];

/** Asks about a box that stands in a list, made wider by `reach` on every side. */
function ask(boxes: readonly number[], k: number, reach: number): void {
  asked.minX = boxes[k]! - reach;
  asked.minY = boxes[k + 1]! - reach;
  asked.maxX = boxes[k + 2]! + reach;
  asked.maxY = boxes[k + 3]! + reach;
}

/** Finds edges near a box. Built once over a fixed list; ids are positions in that list, returned in rising order. */
export class EdgesIndex {
  /** minX, minY, maxX, maxY an edge. A plain array: small typed ones cost more to make than to use. */
  readonly #boxes: number[];
  readonly #tree: Flatbush | null;
  readonly #found: number[] = [];

  constructor(edges: readonly Edge[]) {
    const n = edges.length;
    this.#tree = n > FEW ? new Flatbush(n) : null;
    const boxes = new Array<number>(4 * n);
    for (let i = 0, k = 0; i < n; i++, k += 4) {
      writeBox(edges[i]!, boxes, k);
      this.#tree?.add(boxes[k]!, boxes[k + 1]!, boxes[k + 2]!, boxes[k + 3]!);
    }
    this.#tree?.finish();
    this.#boxes = boxes;
  }

  /** Ids of the edges whose boxes come within `reach` of the box. The array is reused by the next call. */
  near(box: Box, reach: number): readonly number[] {
    asked.minX = box.minX - reach;
    asked.minY = box.minY - reach;
    asked.maxX = box.maxX + reach;
    asked.maxY = box.maxY + reach;
    return this.#search();
  }

  /** Ids of the edges whose boxes come within `reach` of the box of any edge. The array is reused by the next call. */
  around(e: Edge, reach: number): readonly number[] {
    writeBox(e, own, 0);
    ask(own, 0, reach);
    return this.#search();
  }

  /** Ids of the edges whose boxes come within `reach` of the box of edge i of this or another list. The array is reused. */
  nearEdge(i: number, reach: number, of: EdgesIndex = this): readonly number[] {
    ask(of.#boxes, 4 * i, reach);
    return this.#search();
  }

  /** Of those near edge i, the ones after it in the list. The array is reused. */
  nearAfter(i: number, reach: number): readonly number[] {
    ask(this.#boxes, 4 * i, reach);
    if (!this.#tree) return this.#walked(i + 1);
    return sorted(this.#tree.search(asked.minX, asked.minY, asked.maxX, asked.maxY, (j) => j > i));
  }

  /** Whether the box of edge i comes within `reach` of a box. */
  isNear(i: number, box: Box, reach: number): boolean {
    const b = this.#boxes;
    const k = 4 * i;
    return (
      b[k]! <= box.maxX + reach &&
      b[k + 1]! <= box.maxY + reach &&
      b[k + 2]! >= box.minX - reach &&
      b[k + 3]! >= box.minY - reach
    );
  }

  /** Whether the boxes of two edges overlap or touch. */
  overlap(i: number, j: number): boolean {
    const b = this.#boxes;
    const [k, l] = [4 * i, 4 * j];
    return b[k]! <= b[l + 2]! && b[l]! <= b[k + 2]! && b[k + 1]! <= b[l + 3]! && b[l + 1]! <= b[k + 3]!;
  }

  /** Ids of the edges whose boxes a ray from (x, y) towards +x comes to, in any order. The array is reused. */
  alongRay(x: number, y: number): readonly number[] {
    if (this.#tree) return this.#tree.search(x, y, FAR, y);
    asked.minX = x;
    asked.minY = y;
    asked.maxX = FAR;
    asked.maxY = y;
    return this.#walked(0);
  }

  #search(): readonly number[] {
    if (this.#tree) return sorted(this.#tree.search(asked.minX, asked.minY, asked.maxX, asked.maxY));
    return this.#walked(0);
  }

  /** From edge `first` on. */
  #walked(first: number): readonly number[] {
    const { minX, minY, maxX, maxY } = asked;
    const found = this.#found;
    const b = this.#boxes;
    let n = 0;
    for (let i = first, k = 4 * first; k < b.length; i++, k += 4) {
      if (!(b[k]! <= maxX && b[k + 1]! <= maxY && b[k + 2]! >= minX && b[k + 3]! >= minY)) continue;
      if (n < found.length) found[n] = i;
      else found.push(i);
      n++;
    }
    // A list cut to no length gives its room back, and would be given new room each time.
    while (found.length > n) found.pop();
    return found;
  }
}

/** Lists this short are sorted by hand: most are, and the call costs more than the work. */
const SHORT = 12;

function sorted(found: number[]): number[] {
  if (found.length > SHORT) return found.sort((a, b) => a - b);
  for (let i = 1; i < found.length; i++) {
    const v = found[i]!;
    let k = i;
    for (; k > 0 && found[k - 1]! > v; k--) found[k] = found[k - 1]!;
    found[k] = v;
  }
  return found;
}

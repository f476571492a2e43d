import Flatbush from 'flatbush';
import type { Edge } from './edge.js';
import { type Box, edgeBox } from './region.js';

/** Below this many edges a plain walk over the boxes beats building a tree. */
const FEW = 48;

/** Finds edges near a box. Built once over a fixed list; ids are positions in that list, returned in rising order. */
export class EdgesIndex {
  /** minX, minY, maxX, maxY an edge. A plain array: small typed ones cost more to make than to use. */
  readonly #boxes: number[] = [];
  readonly #tree: Flatbush | null;
  readonly #found: number[] = [];

  constructor(edges: readonly Edge[]) {
    const n = edges.length;
    this.#tree = n > FEW ? new Flatbush(n) : null;
    for (let i = 0; i < n; i++) {
      const b = edgeBox(edges[i]!);
      this.#boxes.push(b.minX, b.minY, b.maxX, b.maxY);
      this.#tree?.add(b.minX, b.minY, b.maxX, b.maxY);
    }
    this.#tree?.finish();
  }

  /** Ids of the edges whose boxes come within `reach` of the box. The array is reused by the next call. */
  near(box: Box, reach: number): readonly number[] {
    return this.#search(box.minX - reach, box.minY - reach, box.maxX + reach, box.maxY + reach);
  }

  /** Ids of the edges whose boxes come within `reach` of edge i's box, i among them. The array is reused. */
  nearEdge(i: number, reach: number): readonly number[] {
    const b = this.#boxes;
    const k = 4 * i;
    return this.#search(b[k]! - reach, b[k + 1]! - reach, b[k + 2]! + reach, b[k + 3]! + reach);
  }

  #search(minX: number, minY: number, maxX: number, maxY: number): readonly number[] {
    if (this.#tree) return this.#tree.search(minX, minY, maxX, maxY).sort((a, b) => a - b);
    const found = this.#found;
    found.length = 0;
    const b = this.#boxes;
    for (let i = 0, k = 0; k < b.length; i++, k += 4)
      if (b[k]! <= maxX && b[k + 1]! <= maxY && b[k + 2]! >= minX && b[k + 3]! >= minY) found.push(i);
    return found;
  }
}

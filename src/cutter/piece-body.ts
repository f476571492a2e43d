import type { Edge } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import { type Box, bounds, type Contour } from '../geometry/region.js';

/** A piece made ready to be asked what comes near it; what takes work is done when it is first asked. */
export class PieceBody {
  readonly contours: readonly Contour[];
  readonly box: Box;
  #edges: readonly Edge[] | undefined;
  #index: EdgesIndex | undefined;

  constructor(contours: readonly Contour[]) {
    this.contours = contours;
    this.box = bounds(contours);
  }

  get edges(): readonly Edge[] {
    this.#edges ??= this.contours.flat();
    return this.#edges;
  }

  /** Over `edges`, by position. */
  get index(): EdgesIndex {
    this.#index ??= new EdgesIndex(this.edges);
    return this.#index;
  }
}

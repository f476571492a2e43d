import { type Index, indexEdges } from './edge-index.js';
import type { Edges } from './edges.js';
import { type FacingPairs, facingPairs } from './facing-pairs.js';
import { type Nesting, nest } from './nesting.js';

export type Unit = 'mm' | 'in';

export const MM_PER: Readonly<Record<Unit, number>> = { mm: 1, in: 25.4 };

/**
 * One written drawing as read back: closed chains of straight edges and circular arcs.
 * The edges of contour k are starts[k] up to, not including, starts[k + 1].
 */
export class Drawing {
  #index: Index | undefined;
  #nesting: Nesting | undefined;
  #facing: FacingPairs | undefined;

  constructor(
    readonly unit: Unit,
    /** Size of the sheet, mm; null in a DXF, which has none. */
    readonly width: number | null,
    readonly height: number | null,
    /** Which cut group or layer it came from, lower case. */
    readonly name: 'pocket' | 'plug',
    readonly edges: Edges,
    readonly starts: Int32Array,
  ) {}

  get contours(): number {
    return this.starts.length - 1;
  }

  /** Boxes, unit vectors and the search tree; made when first asked for. */
  get index(): Index {
    return (this.#index ??= indexEdges(this.edges, this.starts));
  }

  /** What lies inside what, by the even-odd rule; made when first asked for. */
  get nesting(): Nesting {
    return (this.#nesting ??= nest(this.edges, this.starts, this.index));
  }

  /** Pairs of edges that can hold a ball of radius `cap`, mm, or less, on either side; kept for the cap asked last. */
  facing(cap: number): FacingPairs {
    if (this.#facing?.cap !== cap)
      this.#facing = facingPairs(this.edges, this.starts, this.index, this.nesting.insideLeft, cap);
    return this.#facing;
  }
}

/** The drawing turned over left for right: x becomes width - x. */
export function mirrored(drawing: Drawing, width: number): Drawing {
  const e = drawing.edges;
  const flip = (v: Float64Array) => v.map((x) => width - x);
  const edges: Edges = {
    ...e,
    x0: flip(e.x0),
    x1: flip(e.x1),
    cx: flip(e.cx),
    r: e.r.map((r) => (r === 0 ? 0 : -r)),
  };
  return new Drawing(drawing.unit, drawing.width, drawing.height, drawing.name, edges, drawing.starts);
}

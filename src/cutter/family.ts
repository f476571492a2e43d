import type { Piece } from '../geometry/artwork.js';
import type { Contour } from '../geometry/region.js';
import type { Body } from './kin.js';

/** Something of the drawing that the cutter did not leave as it was drawn, beyond rounding corners. */
export interface Loss {
  /**
   * vanished: a part is gone; split: one part became several; filled: a hole is gone; opened: the wall round a hole was
   * cut through; closed: the mouth of a gap closed, so that it is a hole; divided: one hole became several; merged:
   * parts that were drawn apart became one; limb: an end was cut off; gap: a gap was filled from its end.
   */
  readonly kind:
    | 'vanished'
    | 'split'
    | 'filled'
    | 'opened'
    | 'closed'
    | 'divided'
    | 'merged'
    | 'limb'
    | 'gap';
  /** Name of the piece; of pieces that became one, "a / b". */
  readonly piece: string;
  /** The drawn pieces it happened to. */
  readonly of: readonly Piece[];
  /** Place on the piece, mm. */
  readonly at: readonly [number, number];
  /** Largest extent of what was lost, mm. */
  readonly size: number;
  /** Parts that one became, or that became one; 1 for other losses. */
  readonly parts: number;
}

/** A piece as drawn, or several that lie on one another: they were one wood from the start. */
export interface Drawn {
  readonly name: string;
  readonly pieces: readonly Piece[];
  readonly contours: readonly Contour[];
}

/** Drawn pieces and what is left of them: one and one mostly; several where they became one. */
export interface Family {
  readonly drawn: readonly Drawn[];
  readonly before: readonly { readonly body: Body; readonly of: Drawn }[];
  readonly after: readonly Body[];
  /** For each body before, the bodies after that hold some of it. */
  readonly kin: readonly ReadonlySet<number>[];
  /** A contour round all of them. */
  readonly frame: Contour;
}

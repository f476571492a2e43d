import type { Piece } from '../geometry/artwork.js';
import type { Region } from '../geometry/region.js';

/** Something the cutter pass had to change beyond rounding corners. */
export interface Change {
  /**
   * vanished: a piece or part of it was too thin to cut; split: one part became several; filled: a gap or hole inside a piece
   * was too tight and is now solid; parted: a gap between pieces was opened to the cutter's width; joined: bridged or filled;
   * shortened: a narrow end was lost; merged: several parts became one; widened: a stroke thinner than the cutter was grown to its width; opened: a
   * gap inside a piece was opened to the cutter's width.
   */
  readonly kind:
    | 'vanished'
    | 'split'
    | 'filled'
    | 'parted'
    | 'joined'
    | 'shortened'
    | 'merged'
    | 'widened'
    | 'opened';
  /** Name of the piece (or of two pieces, "a / b") it happened to. */
  readonly piece: string;
  /** Place on the piece, mm. */
  readonly at: readonly [number, number];
  /** Largest extent of what changed, mm. */
  readonly size: number;
  /** How wide the place is now, mm, where more was asked than the cutter needs. */
  readonly to?: number;
}

/** A place that is narrower than the rule asks, and could not be made wider. */
export interface Tight {
  /** Between pockets, or of the pattern itself. */
  readonly kind: 'gap' | 'limb';
  /** Where it is narrowest, mm. */
  readonly at: readonly [number, number];
  /** Least width, length, and width asked, mm: of the pattern, before the clearance is split. */
  readonly width: number;
  readonly length: number;
  readonly asked: number;
  /** Name of the piece, or of the pieces on both sides. */
  readonly piece: string;
}

/** A region whose every corner, inside and out, has at least the corner radius. */
export interface Safe {
  readonly region: Region;
  /** The same region by piece; pieces that were joined share a name "a / b". */
  readonly pieces: readonly Piece[];
  readonly changes: readonly Change[];
  /** Left out where no more is asked than the cutter needs. */
  readonly tight?: readonly Tight[];
}

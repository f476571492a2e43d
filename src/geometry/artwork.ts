import type { Region } from './region.js';

/** One thing a generator names as separate: a letter, a tile, a strap field. Gaps between pieces follow `touch`. */
export interface Piece {
  readonly name: string;
  readonly region: Region;
}

/** Something the user should know about how a pattern was drawn: what was done, and what to do to have it otherwise. */
export interface Remark {
  readonly code: string;
  /** A note unless it says otherwise. */
  readonly severity?: 'warn' | 'note';
  /** Place on the piece, mm, or null when it is about the whole pattern. */
  readonly at: readonly [number, number] | null;
  readonly numbers: Readonly<Record<string, number>>;
  readonly text: string;
}

/** What a generator draws, before any cutter: may be too sharp or too thin to cut. */
export interface Artwork {
  readonly pieces: readonly Piece[];
  readonly remarks?: readonly Remark[];
}

import type { Region } from './region.js';

/** One thing a generator names as separate: a letter, a tile, a strap field. Gaps between pieces follow `touch`. */
export interface Piece {
  readonly name: string;
  readonly region: Region;
}

/** What a generator draws, before any cutter: may be too sharp or too thin to cut. */
export interface Artwork {
  readonly pieces: readonly Piece[];
}

import type { Safe } from '../cutter/safe.js';
import type { Artwork } from '../geometry/artwork.js';
import type { Pair } from './pair.js';

/** One plug wood let in: a pocket and a plug of its own. */
export interface Inlay {
  readonly wood: string;
  /** "inlay 1", in the order they are glued in. */
  readonly name: string;
  /** What it is cut from: the wood's own pieces, and those of later woods that it runs under. */
  readonly artwork: Artwork;
  readonly safe: Safe;
  readonly pair: Pair;
  /** Places in the list of the earlier inlays that it touches: they are glued in and planed before its pocket is cut. */
  readonly into: readonly number[];
}

/** What the files of the k-th inlay are called, before their ending: `pocket`, then `pocket-2`. */
export function fileStem(part: 'pocket' | 'plug', k: number): string {
  return k === 0 ? part : `${part}-${k + 1}`;
}

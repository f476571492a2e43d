import type { Region } from '../geometry/region.js';

/** Pocket and plug on one sheet, mm, y up, the sheet's middle at (0, 0). */
export interface Pair {
  readonly pocket: Region;
  /** Mirrored (x -> -x) already when the plug goes in face down. */
  readonly plug: Region;
  readonly mirrored: boolean;
}

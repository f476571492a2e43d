import type { Rule } from '../../cutter/rule.js';
import type { Safe } from '../../cutter/safe.js';
import { type Box, bounds } from '../../geometry/region.js';
import { grown } from './box.js';
import { smallestCover } from './cover.js';
import { makePatch, type Patch, type Thinness } from './patch.js';
import type { Size } from './slicing.js';
import type { Spot } from './spot.js';

/**
 * Room round a place in its window, in corner radii: tried in turn until the window's own corners leave it alone. The
 * first gives parts that a hand can hold.
 */
const ROOMS = [2, 2.5, 3, 4, 5.5] as const;

/** A window of the pattern that holds some of its hard spots. */
export class Window {
  /** The places it was chosen for. */
  readonly box: Box;
  readonly #r: number;
  #patch: Patch | null = null;

  /** @param r corner radius, mm */
  constructor(
    readonly spots: readonly Spot[],
    r: number,
  ) {
    this.#r = r;
    this.box = smallestCover(spots, ROOMS[0] * r);
  }

  get isCut(): boolean {
    return this.#patch !== null;
  }

  get patch(): Patch {
    if (!this.#patch) throw new Error('the window is not cut yet');
    return this.#patch;
  }

  /** The box round what was cut out; before that, of the least that can be. */
  get extent(): Box {
    return this.#patch ? bounds(this.#patch.region.contours) : grown(this.box, ROOMS[0] * this.#r);
  }

  get size(): Size {
    const b = this.extent;
    return [b.maxX - b.minX, b.maxY - b.minY];
  }

  /** Cuts the window out of the pattern, once, with as much room as it needs. */
  cut(safe: Safe, rule: Rule, pattern: Thinness): void {
    if (this.#patch) return;
    let kept: Patch | null = null;
    for (const room of ROOMS) {
      const patch = makePatch(safe.pieces, grown(this.box, room * this.#r), [this.box], rule, pattern);
      if (patch.kept && !patch.harder) {
        this.#patch = patch;
        return;
      }
      // Failing that, the first that keeps the places; failing that too, the last, with the most room.
      if (!kept?.kept) kept = patch;
    }
    this.#patch = kept;
  }
}

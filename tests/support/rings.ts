import { type Contour, flatten } from '../../src/geometry/region.js';
import type { Ring } from './reference.js';

/** Contours as rings for the reference libraries, arcs in chords that stray by at most `chord` mm. */
export function ringsOf(contours: readonly Contour[], chord: number): Ring[] {
  return contours.map((c) => flatten(c, chord));
}

import type { Contour } from '../../src/geometry/region.js';
import type { Hard } from './hard-shapes.js';
import { boundaryDistance, openingClosing, polygonArea, type Ring } from './reference.js';
import { ringsOf } from './rings.js';

/** Chords that stray by half a micron, and, where a ball rests so flatly that these decide (an error of sqrt(2 chord r)), finer. */
const CHORDS = [0.0005, 0.00005, 0.000005];

/** Every piece opened and closed by an independent engine, crumbs left out. */
export function openedClosed({ pieces, rule }: Hard, chord: number): Ring[] {
  return pieces
    .flatMap((p) => openingClosing('clipper', ringsOf(p.region.contours, chord), rule.r, chord))
    .filter((ring) => Math.abs(polygonArea([ring])) > 1e-3);
}

/** Whether contours are the opened and closed outline, as an engine has it: as many, 1e-4 of the area, 0.003 mm. */
export function isOpenedClosed(contours: readonly Contour[], hard: Hard): boolean {
  return CHORDS.some((chord) => {
    const theirs = openedClosed(hard, chord);
    const ours = ringsOf(contours, chord);
    if (theirs.length !== ours.length) return false;
    const size = polygonArea(theirs);
    if (Math.abs(polygonArea(ours) - size) > 1e-4 * size) return false;
    return ours.length === 0 || boundaryDistance(ours, theirs, 0.05).distance <= 0.003;
  });
}

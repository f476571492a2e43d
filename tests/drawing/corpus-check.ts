import { expect } from 'vitest';
import { area, flatten } from '../../src/geometry/region.js';
import { judged } from '../support/engines/jsts-judge.mjs';
import { builtAndProven } from './support.js';

/** How far a chord may lie from its arc, mm. */
const CHORD = 0.0005;

/** Drawings that are refused, each with the words that say why. */
export const REFUSED: Readonly<Record<string, RegExp>> = {
  'oc-crop-marks.svg': /nothing of the pattern is 3\.775 mm wide/,
  'oc-slovenia.svg': /nothing of the pattern is 3\.775 mm wide/,
  'oc-iceland.svg': /has only lines, 0\.19 mm wide at the most/,
  'oc-star.svg': /has only lines, 0\.18 mm wide at the most/,
  'oc-meatgrinder.svg': /has stroke-dasharray=/,
  'oc-hourglass.svg': /declares entities in its DOCTYPE/,
};

/** Left to the long run: its thousands of small parts take a third of the time of all. */
export const SLOW = 'oc-rooster.svg';

/** Expects an SVG of the corpus to be made safe and proven, and to be the region it was, or to be refused for its reason. */
export function expectMadeOrRefused(file: string): void {
  const end = builtAndProven(file);
  const reason = REFUSED[file];
  if (typeof end === 'string') {
    expect(end).toMatch(reason ?? /^no refusal is expected$/);
    return;
  }
  expect(reason, 'a drawing that was to be refused is read').toBeUndefined();
  // JSTS, which the product does not use: no ring crosses itself or another, and all enclose the same area but for
  // the slivers between arcs and chords.
  for (const { name, region } of end.artwork.pieces) {
    const judgedAt = (chord: number) => judged(region.contours.map((c) => flatten(c, chord)));
    const rough = judgedAt(CHORD);
    // Chords cross where a sliver is as thin as they are off.
    const theirs = rough.fault ? judgedAt(CHORD / 100) : rough;
    expect(theirs.fault, name).toBeNull();
    expect(Math.abs(theirs.area - area(region)), name).toBeLessThan(1e-6 + CHORD * theirs.length);
  }
}

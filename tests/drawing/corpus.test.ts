import { describe, expect, it } from 'vitest';
import { area, flatten } from '../../src/geometry/region.js';
import { judged } from '../support/engines/jsts-judge.mjs';
import { builtAndProven, corpusFiles } from './support.js';

const files = corpusFiles('svg');

/** How far a chord may lie from its arc, mm. */
const CHORD = 0.0005;

/** Drawings that are refused, each with the words that say why. */
const REFUSED: Readonly<Record<string, RegExp>> = {
  'oc-crop-marks.svg': /nothing of the pattern is 3\.775 mm wide/,
  'oc-slovenia.svg': /nothing of the pattern is 3\.775 mm wide/,
  'oc-iceland.svg': /has only lines, 0\.19 mm wide at the most/,
  'oc-star.svg': /has only lines, 0\.18 mm wide at the most/,
  'oc-meatgrinder.svg': /has stroke-dasharray=/,
  'oc-hourglass.svg': /declares entities in its DOCTYPE/,
};

describe('SVG files made by other software', () => {
  it('are forty or more, and every refusal expected is of one of them', () => {
    expect(files.length).toBeGreaterThanOrEqual(40);
    expect(Object.keys(REFUSED).filter((f) => !files.includes(f))).toEqual([]);
    expect(Object.keys(REFUSED).length).toBeLessThan(files.length / 4);
  });

  it.each(files)('%s is made safe and proven, or refused for the reason that is known', (file) => {
    const end = builtAndProven(file);
    const reason = REFUSED[file];
    if (typeof end === 'string') return expect(end).toMatch(reason ?? /^no refusal is expected$/);
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
  });
});

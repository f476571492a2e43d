import { describe, expect, it } from 'vitest';
import { opened } from '../../../src/generators/bands/band.js';
import { area, bounds, parts } from '../../../src/geometry/region.js';
import { drawn, hits, NAMES, outline } from './helper.js';

/** A stave that leans by 40 mm over 160: its joints meet 220 mm below the middle, at 1 in 4 to either side. */
const LEANING = outline('stave', { bottom: 70, top: 150, height: 160, margin: 6 });
const LONG = Math.hypot(1, 0.25);

describe.each([40, 80, 100, 120])('level across a strongly leaning stave at %i mm', (level) => {
  it.each(NAMES)('%s meets both joints alike', (name) => {
    const region = drawn(name, LEANING, { run: 'level', level });
    const [left, right] = [-1, 1].map((side) => hits(region, [0, -220], [(side * 0.25) / LONG, 1 / LONG]));
    // Bands of blocks and faces have a gap on the joint.
    if (name !== 'dentil' && name !== 'ribbon') expect(left!.length).toBeGreaterThan(1);
    expect(right!.length).toBe(left!.length);
    left!.forEach((h, i) => {
      expect(Math.abs(h.out - right![i]!.out)).toBeLessThan(0.001);
    });
  });

  it.each(['scroll', 'wave'])('%s is one whole strap from joint to joint', (name) => {
    const region = drawn(name, LEANING, { run: 'level', level });
    const widths = parts(region).map((p) => {
      const { minX, maxX } = bounds(p);
      return maxX - minX;
    });
    // The joints lie 55 + (level - 80) / 4 mm off the middle; the strap runs on past both.
    expect(Math.max(...widths)).toBeGreaterThan(2 * (55 + (level - 80) / 4));
  });

  it.each([
    ['scroll', 0.99],
    // The crests of a wave end in a point.
    ['wave', 0.8],
  ])('%s keeps the width of its strap', (name, share) => {
    const region = drawn(name, LEANING, { run: 'level', level, strap: 5 });
    // A disc of the strap's width passes everywhere: only corners are lost to it.
    expect(area(opened(region, 2.45)) / area(region)).toBeGreaterThan(share);
  });
});

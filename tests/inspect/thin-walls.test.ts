import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { area, type Contour } from '../../src/geometry/region.js';
import type { Finding } from '../../src/inspect/finding.js';
import type { Setup } from '../../src/inspect/setup.js';
import { thinLimbs } from '../../src/inspect/thin-limbs.js';
import { thinWalls } from '../../src/inspect/thin-walls.js';
import { readRecipe } from '../../src/recipe/read.js';
import { box, face, type Given, pairOf, recipeOf } from './wall-shapes.js';

describe('findings of thin walls and limbs', () => {
  const setup = (contours: readonly Contour[], given: Given): Setup => ({
    recipe: recipeOf(given),
    outline: face,
    artwork: { pieces: [] },
    safe: { region: { contours: [] }, pieces: [], changes: [] },
    pair: pairOf(contours),
  });
  const field = (contours: readonly Contour[], given: Given): Finding[] => thinWalls(setup(contours, given));
  const plug = (contours: readonly Contour[], given: Given): Finding[] => thinLimbs(setup(contours, given));
  const slots = [box(-10, -9, 10, -1), box(-10, 1, 10, 9)];

  it('name the worst wall, its zone, and figures with which it would not be found', () => {
    const [found, ...more] = field(slots, { depth: 12, grain: 90 });
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'thin-walls', severity: 'warn' });
    expect(found!.numbers).toMatchObject({ count: 1, height: 12 });
    expect(found!.numbers.width).toBeCloseTo(2, 9);
    expect(found!.numbers.angle).toBeCloseTo(90, 6);
    expect(area(found!.zone!.areas!)).toBeGreaterThan(38);
    expect(found!.do).toMatch(
      /^1 wall of field between pockets is slender: it is 2 mm wide and 12 mm high, 6 times, and runs across the grain, where 4 times is usual \(common practice\)\. A side load of 0\.36 N a mm .*\(estimate, only to compare walls\)\. Set walls\.least to 3 mm, turn the grain \(woods\.fieldGrain at 45 degrees: none would be over\), or cut no deeper than 8 mm\.$/,
    );
    // What it says to do, done: each by itself ends it.
    expect(field([box(-10, -9, 10, -1.5), box(-10, 1.5, 10, 9)], { depth: 12, grain: 90 })).toEqual([]);
    expect(field(slots, { depth: 12, grain: 45 })).toEqual([]);
    expect(field(slots, { depth: 8, grain: 90 })).toEqual([]);
  });
  it('say what a skin would hold, and do not offer what has been done', () => {
    expect(field(slots, { depth: 12, grain: 90, floor: 0 })[0]!.do).toContain(
      'Leave a skin of 1.5 mm to 2 mm under the pocket to hold it (common practice)',
    );
    expect(field(slots, { depth: 12, grain: 90 })[0]!.do).not.toContain('skin');
    expect(field(slots, { depth: 12, grain: 90, changes: { walls: { least: 3 } } })[0]!.do).not.toContain(
      'walls.least',
    );
    expect(field(slots, { depth: 17, grain: 0 })[0]!.do).not.toContain('turn the grain');
  });
  it('say that a load is not known, and tell lengths in the units of the recipe', () => {
    const maple = field(slots, { depth: 12, grain: 90, changes: { 'woods.field': 'sugar maple' } })[0]!;
    expect(maple.numbers).not.toHaveProperty('breaks');
    expect(maple.do).toContain('What load would break it is not known for this wood.');
    const text = JSON.parse(readFileSync('patterns/hexagon-coaster.json', 'utf8'));
    const inches = {
      ...recipeOf({ depth: 12, grain: 90 }),
      units: readRecipe(JSON.stringify(text), 'x').units,
    };
    expect(thinWalls({ ...setup(slots, {}), recipe: inches })[0]!.do).toMatch(
      /0\.079 in wide and 0\.4724 in high.*Set walls\.least to 0\.12 in/,
    );
  });
  it('keep walls at the edge apart, and limbs by what holds them', () => {
    const edge = field([...slots, box(42, -10, 46, 10)], { depth: 12 });
    expect(edge.map((f) => f.do.slice(0, 48))).toEqual(['1 wall of field between pocket and edge is slend']);
    const bars = plug([box(-15, -1.5, 15, 1.5), box(-15, 5, 15, 8)], { depth: 15, grain: 90 });
    expect(bars).toHaveLength(1);
    expect(bars[0]!.do).toMatch(
      /^2 bars or rings by themselves of the plug are slender: the worst is 3 mm wide .*Set walls\.limbs to 3\.8 mm, .*or cut the plug on a carrier/,
    );
    expect(bars[0]!.numbers.count).toBe(2);
  });
  it('are none for walls that are usual', () => {
    expect(field(slots, { depth: 7.9, grain: 90 })).toEqual([]);
    expect(plug([box(-15, -2, 15, 2)], { depth: 15, grain: 90 })).toEqual([]);
  });
});

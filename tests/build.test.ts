import { describe, expect, it } from 'vitest';
import { build } from '../src/build.js';
import { readRecipe } from '../src/recipe/read.js';
import { BadInput, Refusal } from '../src/schema/fault.js';
import { exampleText } from './recipe/example.js';

const job = (changes: Record<string, unknown> = {}) =>
  build(readRecipe(exampleText(changes), 'x.json'), { fonts: new Map(), drawings: new Map() });

describe('build', () => {
  it('gives the same job for the same recipe', () => {
    expect(job()).toEqual(job());
  });

  it('counts and measures what it drew', () => {
    const { numbers, recipe, sheet } = job();
    expect(numbers).toMatchObject({ cutterRadius: 1.595, cornerRadius: 1.895 });
    expect(numbers.pocketParts).toBe(numbers.pocketContours - numbers.pocketHoles);
    expect(numbers.pocketVolume).toBeCloseTo(numbers.pocketArea * recipe.depth, 9);
    // Steiner's formula (Minkowski sum with a disc, 1840): moving a boundary in by c takes its length times c,
    // and gives pi c^2 back for each contour, outer ones counted +1 and holes -1.
    const { pocketArea, plugArea, pocketPerimeter, pocketParts, pocketHoles } = numbers;
    const c = recipe.fit.clearance;
    expect(pocketArea - plugArea).toBeCloseTo(
      pocketPerimeter * c - Math.PI * c * c * (pocketParts - pocketHoles),
      6,
    );
    expect(sheet.width).toBeCloseTo(96 + 2 * sheet.border, 9);
  });

  it('refuses a pattern that the cutter leaves nothing of, saying how wide it would have to be', () => {
    expect(() => job({ cutter: { diameter: 25 }, roughing: undefined })).toThrow(Refusal);
    expect(() => job({ cutter: { diameter: 25 }, roughing: undefined })).toThrow(
      /nothing of the pattern is 30 mm wide/,
    );
  });

  it('passes on what the outline refuses', () => {
    expect(() => job({ 'outline.margin': 60 })).toThrow(BadInput);
  });
});

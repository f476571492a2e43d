import { describe, expect, it } from 'vitest';
import { generators } from '../../src/generators/index.js';
import { layerParameters, withinParameters } from '../../src/generators/layer.js';
import { outlineShapes } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { exampleText } from './example.js';

const read = (pattern: unknown, settings: string[] = []) =>
  readRecipe(exampleText({ pattern }), 'x.json', settings).pattern;

describe('a pattern of layers', () => {
  it('fills in what is left out', () => {
    const [first, second] = read([
      { generator: 'rosette' },
      { generator: 'rosette', clear: '1/8in', within: { shape: 'circle', diameter: 30, x: -4 } },
    ]) as readonly { within: unknown }[];
    expect(first).toMatchObject({
      combine: 'union',
      clear: 0,
      within: { shape: null, inset: 0, x: 0, y: 0 },
    });
    expect(second).toMatchObject({ clear: 3.175 });
    expect(second.within).toEqual({
      shape: { shape: 'circle', values: { diameter: 30, margin: 0 } },
      inset: 0,
      x: -4,
      y: 0,
    });
  });

  it('is set by place, counted from 0', () => {
    const two = [{ generator: 'rosette' }, { generator: 'rosette' }];
    expect(read(two, ['pattern.1.points=7'])).toMatchObject([
      { values: { points: 12 } },
      { values: { points: 7 } },
    ]);
    expect(read(two, ['pattern.2={"generator":"rosette","points":9}'])).toMatchObject([
      {},
      {},
      { values: { points: 9 } },
    ]);
    expect(() => read(two, ['pattern.4.points=7'])).toThrow(
      /pattern\.4\.points: "4" is no place in a list of 2/,
    );
    expect(() => read(two, ['pattern.points=7'])).toThrow(
      /"points" is no place in a list of 2; name the place first, counted from 0: pattern\.0\.points/,
    );
    expect(() => read({ generator: 'rosette' }, ['pattern.0.points=7'])).toThrow(
      /"0" is the place of an item, and there is no list: leave it out/,
    );
  });

  it('takes a choice that is a number without quotes', () => {
    for (const points of [16, '16'])
      expect(read({ generator: 'compass-rose', points })).toMatchObject({ values: { points: '16' } });
    expect(read({ generator: 'compass-rose' }, ['pattern.points=32'])).toMatchObject({
      values: { points: '32' },
    });
    expect(() => read({ generator: 'compass-rose', points: 12 })).toThrow(
      /12 is not known: one of 4, 8, 16, 32/,
    );
  });

  it('is refused with its path and line', () => {
    expect(() => read([])).toThrow(/^x\.json:\d+: pattern: is a list of 0 layers: give 1 to 12/);
    expect(() => read(Array(13).fill({ generator: 'rosette' }))).toThrow(/is a list of 13 layers/);
    expect(() => read([{ generator: 'rosette', points: 99 }])).toThrow(
      /x\.json:\d+: pattern\.0\.points: 99 is out of range/,
    );
    expect(() => read([{ generator: 'rosette' }, 5])).toThrow(/pattern\.1: must be an object in braces/);
    expect(() => read([{ generator: 'rosette', combine: 'subtract' }])).toThrow(
      /pattern\.0\.combine: .* first layer is always "union"/,
    );
    expect(() => read([{ generator: 'rosette', within: { x: 3 } }])).toThrow(
      /pattern\.0\.within\.x: is not a known key/,
    );
    expect(() => read([{ generator: 'rosette', within: { shape: 'circle', width: 3 } }])).toThrow(
      /pattern\.0\.within\.width: is not a known key/,
    );
    expect(() => read([{ generator: 'rosette', witin: {} }])).toThrow(/did you mean "within"/);
  });

  it("has keys that are none of any generator's or shape's", () => {
    const own = new Set(['generator', 'within', ...layerParameters.map((p) => p.name)]);
    for (const g of generators)
      for (const p of g.parameters) expect(own.has(p.name), `${g.name}.${p.name}`).toBe(false);
    const placed = new Set(['shape', ...withinParameters.map((p) => p.name)]);
    for (const s of outlineShapes) for (const p of s.parameters) expect(placed.has(p.name)).toBe(false);
  });
});

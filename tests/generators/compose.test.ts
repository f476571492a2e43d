import { describe, expect, it } from 'vitest';
import { compose } from '../../src/generators/compose.js';
import { type Layer, WHOLE } from '../../src/generators/layer.js';
import type { Artwork } from '../../src/geometry/artwork.js';
import { union } from '../../src/geometry/boolean.js';
import { area, bounds } from '../../src/geometry/region.js';
import { readRecipe } from '../../src/recipe/read.js';
import { assets, CUT } from '../support/artwork.js';

const total = (a: Artwork): number => area(union(a.pieces.map((p) => p.region)));

/** Layers over a circle of 100 with no margin, read as a recipe reads them. */
function layers(pattern: unknown): Artwork {
  const recipe = readRecipe(
    JSON.stringify({
      name: 'layers',
      outline: { shape: 'circle', diameter: 100, margin: 0 },
      pattern,
      cutter: { diameter: 3 },
      depth: 6,
    }),
    'layers.json',
  );
  return compose(recipe.pattern, recipe.outline, assets, CUT);
}

const disc = (diameter: number, more: object = {}): object => ({
  generator: 'panel',
  within: { shape: 'circle', diameter, ...more },
});
const circleArea = (d: number): number => (Math.PI * d * d) / 4;

describe('layers', () => {
  it('of one are the same as no list', () => {
    const one = { generator: 'panel' };
    expect(total(layers([one]))).toBeCloseTo(total(layers(one)), 9);
    expect(layers([one]).pieces[0].name).toBe('layer 0, panel');
  });

  it('join, take away and keep what both have', () => {
    const both = [disc(60, { x: -10 }), { ...disc(60, { x: 10 }), combine: 'intersect' }];
    // Lens of two circles of radius R, centres d apart: 2 R^2 acos(d / 2R) - d / 2 sqrt(4 R^2 - d^2) (MathWorld,
    // Circle-Circle Intersection).
    const lens = 2 * 900 * Math.acos(20 / 60) - 10 * Math.sqrt(3600 - 400);
    expect(total(layers(both))).toBeCloseTo(lens, 6);
    const apart = [both[0], { ...disc(60, { x: 10 }), combine: 'subtract' }];
    expect(total(layers(apart))).toBeCloseTo(circleArea(60) - lens, 6);
    const one = [both[0], disc(60, { x: 10 })];
    expect(total(layers(one))).toBeCloseTo(2 * circleArea(60) - lens, 6);
    expect(layers(one).pieces).toHaveLength(2);
  });

  it('keep wood clear round themselves', () => {
    const ringed = layers([{ generator: 'panel' }, { ...disc(40), clear: 5 }]);
    expect(total(ringed)).toBeCloseTo(circleArea(100) - circleArea(50) + circleArea(40), 6);
    const cut = layers([{ generator: 'panel' }, { ...disc(40), combine: 'subtract', clear: 5 }]);
    expect(total(cut)).toBeCloseTo(circleArea(100) - circleArea(50), 6);
    const kept = layers([{ generator: 'panel' }, { ...disc(40), combine: 'intersect', clear: 5 }]);
    expect(total(kept)).toBeCloseTo(circleArea(30), 6);
  });

  it('leave out whole figures that come near, if asked to', () => {
    const dots = { generator: 'dots', size: 8, gap: 6 };
    const cut = layers([dots, { ...disc(31), clear: 3 }]);
    const left = layers([dots, { ...disc(31), clear: 3, nearby: 'drop' }]);
    const areas = new Set(left.pieces.slice(0, -1).map((p) => area(p.region).toFixed(6)));
    expect(areas).toEqual(new Set([((Math.PI * 64) / 4).toFixed(6)]));
    expect(left.pieces.length).toBeLessThan(cut.pieces.length);
    // Every dot that is gone was cut in the other pattern, or gone there too.
    const whole = cut.pieces.filter((p) => Math.abs(area(p.region) - Math.PI * 16) < 1e-6);
    expect(left.pieces.slice(0, -1).map((p) => p.name)).toEqual(whole.map((p) => p.name));
    expect(() =>
      layers([{ generator: 'panel' }, { ...disc(31), combine: 'subtract', nearby: 'drop' }]),
    ).toThrow(/^pattern\.1\.combine: subtract leaves nothing/);
  });

  it('are drawn further in, or in a shape of their own where it lies', () => {
    expect(total(layers([{ generator: 'panel', within: { inset: 10 } }]))).toBeCloseTo(circleArea(80), 6);
    const placed = layers([
      { generator: 'panel', within: { shape: 'rectangle', width: 20, height: 10, x: 12, y: -7 } },
    ]);
    expect(bounds(placed.pieces[0].region.contours)).toEqual({ minX: 2, maxX: 22, minY: -12, maxY: -2 });
  });

  it('name the layer in every refusal', () => {
    const first = { generator: 'panel' };
    expect(() => layers([first, { generator: 'rosette', size: 500 }])).toThrow(
      /^pattern\.1\.size: .* too large/,
    );
    expect(() => layers([first, disc(80, { x: 20 })])).toThrow(/^pattern\.1\.within: reaches outside/);
    expect(() => layers([first, disc(30, { inset: 20 })])).toThrow(
      /^pattern\.1\.within\.margin: .* leaves nothing/,
    );
    expect(() => layers([first, { generator: 'panel', within: { inset: 60 } }])).toThrow(
      /^pattern\.1\.within\.inset: 60 mm leaves nothing of the outline inside its margin; use 49.49 mm at most/,
    );
    expect(() => layers([first, { generator: 'panel', within: { inset: 49.49 } }])).not.toThrow();
    expect(() => layers([disc(20, { x: -30 }), { ...disc(20, { x: 30 }), combine: 'intersect' }])).toThrow(
      /^pattern\.1\.combine: intersect leaves nothing/,
    );
    expect(() => layers([first, { generator: 'lettering', height: 300 }])).toThrow(
      /^pattern\.1\.height: .* too large/,
    );
  });

  it('may be taken away over the edge', () => {
    const cut = layers([{ generator: 'panel' }, { ...disc(60, { x: 50 }), combine: 'subtract' }]);
    expect(total(cut)).toBeLessThan(circleArea(100));
  });

  it('refuse a generator that is not there', () => {
    const layer: Layer = {
      generator: 'none',
      values: {},
      combine: 'union',
      clear: 0,
      nearby: 'cut',
      within: WHOLE,
    };
    expect(() =>
      compose(layer, { shape: 'circle', values: { diameter: 50, margin: 5 } }, assets, CUT),
    ).toThrow(/no generator is called none/);
  });
});

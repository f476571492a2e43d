import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { enforce } from '../src/cutter/enforce.js';
import { losses } from '../src/cutter/loss.js';
import { loadAssets } from '../src/disk/load.js';
import { compose } from '../src/generators/compose.js';
import { placedRegion } from '../src/geometry/transform.js';
import { type CutterLimit, limits } from '../src/limits.js';
import { readRecipe } from '../src/recipe/read.js';
import { cornerRadius, type Recipe } from '../src/recipe/recipe.js';
import { exampleText } from './recipe/example.js';

const none = { drawings: new Map(), fonts: new Map() };

function recipeWith(changes: Record<string, unknown>): Recipe {
  return readRecipe(exampleText({ roughing: undefined, ...changes }), 'x.json');
}

const CUTTER = { cutter: { diameter: 3, flute: 22 } };
const row = (rows: readonly CutterLimit[], name: string): CutterLimit =>
  rows.find((r) => r.cutter.name === name)!;

describe('limits', () => {
  it('of a frame 5 mm wide are corner radii of 2.5 mm, whatever the cutter', () => {
    const recipe = recipeWith({ ...CUTTER, pattern: { generator: 'panel', width: 5 } });
    const { rows, largest, always } = limits(recipe, none);
    expect(rows.map((r) => r.cutter.name)).toEqual([
      '1/32in',
      '1mm',
      '1.5mm',
      '1/16in',
      '2mm',
      '3/32in',
      '3mm',
      '1/8in',
      '4mm',
      '3/16in',
      '6mm',
      '1/4in',
    ]);
    for (const r of rows) {
      // Half a diameter and a tenth of it as ease; a strap w wide stays up to r = w / 2 (Serra 1982).
      expect(r.cornerRadius).toBeCloseTo(r.cutter.diameter * 0.6, 9);
      expect(r.scale! / (r.cornerRadius / 2.5)).toBeGreaterThan(1 - 1e-3);
      expect(r.scale! / (r.cornerRadius / 2.5)).toBeLessThan(1.01);
      expect(r.lost!.map((l) => l.kind)).toEqual(r.cornerRadius <= 2.5 ? [] : ['vanished']);
    }
    expect(largest!.name).toBe('4mm');
    expect(always).toBe(null);
  });

  it("keep the recipe's ease in proportion", () => {
    const eased = recipeWith({
      cutter: { diameter: 3, ease: 0.6, flute: 22 },
      pattern: { generator: 'panel', width: 5 },
    });
    const { rows, largest } = limits(eased, none);
    expect(row(rows, '6mm').cornerRadius).toBeCloseTo(3 + 1.2, 9);
    expect(largest!.name).toBe('1/8in');
  });

  const scaled = (s: number, recipe: Recipe, r: number): number => {
    const { thin, touch } = recipe.cutter;
    const drawn = compose(recipe.pattern, recipe.outline, none, {
      r: cornerRadius(recipe.cutter),
      widen: false,
    });
    const pieces = drawn.pieces.map((p) => ({ ...p, region: placedRegion(p.region, 0, 0, 0, s) }));
    return losses({ pieces }, enforce({ pieces }, { r, thin, touch }), r, true).length;
  };

  it.each(['tea-box-rosette', 'star-trivet', 'keepsake-box-lid'])(
    'of %s hold at the scale they state and not 2 % below, with another cutter than the one searched with',
    (name) => {
      const file = new URL(`../patterns/${name}.json`, import.meta.url);
      const recipe = readRecipe(readFileSync(file, 'utf8'), name);
      const { rows, largest } = limits(recipe, none);
      for (const cutter of ['1.5mm', '6mm']) {
        const { scale, cornerRadius: r } = row(rows, cutter);
        expect(scaled(scale!, recipe, r)).toBe(0);
        expect(scaled(scale! * 0.98, recipe, r)).toBeGreaterThan(0);
      }
      // They ship losing nothing, with a 1/8 in or a 3 mm cutter.
      expect(largest!.diameter).toBeGreaterThanOrEqual(3);
      expect(row(rows, '1/4in').lost!.length).toBeGreaterThan(0);
    },
    60_000,
  );

  it('of letters are those of the recipe written anew at that size', () => {
    const at = (s: number): Recipe =>
      recipeWith({
        ...CUTTER,
        outline: { shape: 'rectangle', width: 300 * s, height: 90 * s, margin: 6 * s },
        pattern: { generator: 'lettering', text: 'eat', height: 40 * s, tracking: s },
      });
    const recipe = at(1);
    const assets = loadAssets(recipe, 'x.json');
    const { rows } = limits(recipe, assets);
    const { scale } = row(rows, '3mm');
    const lost = (s: number): number => {
      const { pattern, outline, cutter } = at(s);
      const r = cornerRadius(cutter);
      const artwork = compose(pattern, outline, assets, { r, widen: false });
      return losses(artwork, enforce(artwork, { r, thin: 'drop', touch: 'part' }), r, true).length;
    };
    expect(lost(scale!)).toBe(0);
    expect(lost(scale! * 0.98)).toBeGreaterThan(0);
    expect(scale).toBeLessThan(1.1);
  }, 60_000);

  it('end with what is lost when every size loses something', () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 40"><rect id="plate" width="60" height="30"/><rect id="hair" y="39.9" width="60" height="0.01"/></svg>';
    const recipe = recipeWith({
      ...CUTTER,
      pattern: { generator: 'drawing', file: 'd.svg', width: 60, speck: 0, refit: 0 },
    });
    const { rows, always, largest } = limits(recipe, { ...none, drawings: new Map([['d.svg', svg]]) });
    expect(rows.map((r) => r.scale)).toEqual(rows.map(() => null));
    expect(always!.map((l) => l.kind)).toEqual(['vanished']);
    expect(largest).toBe(null);
  });
});

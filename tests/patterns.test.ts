import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { enforce } from '../src/cutter/enforce.js';
import { compose } from '../src/generators/compose.js';
import { bounds, polygon } from '../src/geometry/region.js';
import { makeOutline } from '../src/outline/index.js';
import { readRecipe } from '../src/recipe/read.js';
import { cornerRadius } from '../src/recipe/recipe.js';
import { assets, expectSound, pokesOut } from './support/artwork.js';

const folder = new URL('../patterns/', import.meta.url);
const files = readdirSync(folder).filter((f) => f.endsWith('.json'));

describe('the recipes that ship', () => {
  it('are two dozen or more', () => expect(files.length).toBeGreaterThanOrEqual(24));

  for (const file of files)
    it(`${file} draws inside its outline and loses nothing to its cutter`, () => {
      const recipe = readRecipe(readFileSync(new URL(file, folder), 'utf8'), file);
      expect(`${recipe.name}.json`).toBe(file);
      const outline = makeOutline(recipe.outline.shape, recipe.outline.values);
      const artwork = compose(recipe.pattern, recipe.outline, assets, {
        r: cornerRadius(recipe.cutter),
        widen: recipe.cutter.thin === 'widen',
      });
      // Bands across a stave run on past its joints, and past nothing else.
      const { minX, minY, maxX, maxY } = bounds(outline.inner.contours);
      const beyond: [number, number][] = [
        [minX - 25, minY],
        [maxX + 25, minY],
        [maxX + 25, maxY],
        [minX - 25, maxY],
      ];
      const room = recipe.outline.shape === 'stave' ? { contours: [polygon(beyond)] } : outline.inner;
      for (const p of artwork.pieces) {
        expectSound(p.region);
        expect(pokesOut(p.region, room)).toBeLessThan(1e-5);
      }
      const { thin, touch } = recipe.cutter;
      const safe = enforce(artwork, { r: cornerRadius(recipe.cutter), thin, touch });
      expect(safe.changes.filter((c) => c.kind !== 'filled' && c.kind !== 'parted')).toEqual([]);
    });
});

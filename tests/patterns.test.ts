import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { enforce } from '../src/cutter/enforce.js';
import { compose } from '../src/generators/compose.js';
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
      const artwork = compose(recipe.pattern, recipe.outline, assets);
      for (const p of artwork.pieces) {
        expectSound(p.region);
        expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-5);
      }
      const { thin, touch } = recipe.cutter;
      const safe = enforce(artwork, { r: cornerRadius(recipe.cutter), thin, touch });
      expect(safe.changes.filter((c) => c.kind !== 'filled' && c.kind !== 'parted')).toEqual([]);
    });
});

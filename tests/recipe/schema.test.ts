import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { generators } from '../../src/generators/index.js';
import { outlineShapes } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { recipeSchema } from '../../src/recipe/schema.js';

const root = new URL('../../', import.meta.url);

describe('the JSON Schema file', () => {
  it('is what the descriptions give (run scripts/schema.mjs after a change)', () => {
    expect(readFileSync(new URL('recipe.schema.json', root), 'utf8')).toBe(
      `${JSON.stringify(recipeSchema(), null, 2)}\n`,
    );
  });

  it('has a branch for every shape and generator, with every parameter and no other key', () => {
    const { properties, $defs } = recipeSchema() as unknown as Record<
      string,
      Record<string, { allOf: Branch[] }>
    >;
    for (const [branches, key, registry, more] of [
      [properties.outline.allOf, 'shape', outlineShapes, []],
      [$defs.layer.allOf, 'generator', generators, ['combine', 'clear', 'nearby', 'within']],
    ] as const) {
      // One more branch is an outline's that only says its margin, for a bowl.
      const chosen = branches.filter((b) => 'properties' in b.if);
      expect(chosen.map((b) => b.if.properties[key].const)).toEqual(registry.map((r) => r.name));
      registry.forEach((r, i) => {
        const names = [key, ...r.parameters.map((p) => p.name), ...more];
        expect(Object.keys(chosen[i].then.properties)).toEqual(names);
        expect(chosen[i].then.additionalProperties).toBe(false);
      });
    }
  });

  it('length texts that the schema lets pass are the ones the reader takes', () => {
    const { $defs } = recipeSchema() as unknown as { $defs: { length: { anyOf: { pattern: string }[] } } };
    const { pattern } = $defs.length.anyOf[1];
    for (const text of ['1/8in', '1 1/16in', '0.125in', '3mm'])
      expect(text).toMatch(new RegExp(pattern, 'u'));
    for (const text of ['3', '3 cm', '', 'NaN', '1/8']) expect(text).not.toMatch(new RegExp(pattern, 'u'));
  });
});

interface Branch {
  if: { properties: Record<string, { const: string }> };
  then: { properties: Record<string, unknown>; additionalProperties: boolean };
}

describe('shipped recipes', () => {
  const files = readdirSync(new URL('patterns/', root)).filter((f) => f.endsWith('.json'));

  it('are there', () => expect(files.length).toBeGreaterThanOrEqual(3));

  it.each(files)('%s is read, and is named as its file', (file) => {
    const recipe = readRecipe(readFileSync(new URL(`patterns/${file}`, root), 'utf8'), file);
    expect(`${recipe.name}.json`).toBe(file);
  });
});

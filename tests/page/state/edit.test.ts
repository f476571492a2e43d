import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { writtenAt as at, read, withValue } from '../../../src/page/state/edit.js';
import { readRecipe } from '../../../src/recipe/read.js';

const patterns = new URL('../../../patterns/', import.meta.url);
const recipes = readdirSync(patterns).filter((f) => f.endsWith('.json'));

const writtenAt = (text: string, path: (string | number)[]) => at(read(text), path);

test('there are recipes to try', () => expect(recipes.length).toBeGreaterThan(30));

test.each(recipes)('%s: a changed value changes nothing else of the text', (name) => {
  const text = readFileSync(new URL(name, patterns), 'utf8');
  const next = withValue(text, ['depth'], 7.25);
  expect(writtenAt(next, ['depth'])).toBe(7.25);
  expect(withValue(next, ['depth'], writtenAt(text, ['depth']))).toBe(text);
  const named = withValue(text, ['name'], 'another');
  expect(readRecipe(named, name)).toEqual({ ...readRecipe(text, name), name: 'another' });
});

test('a new key goes in with its parents, and out again', () => {
  const text = '{\n  "name": "a",\n  "depth": 8\n}\n';
  const next = withValue(text, ['table', 'onionSkin'], 0.4);
  expect(next).toContain('\n  "table": {\n    "onionSkin": 0.4\n  }\n');
  expect(JSON.parse(next)).toEqual({ name: 'a', depth: 8, table: { onionSkin: 0.4 } });
  expect(JSON.parse(withValue(next, ['table', 'onionSkin'], undefined))).toEqual({
    name: 'a',
    depth: 8,
    table: {},
  });
});

test('what a text does not say is undefined, even of a text that is no JSON', () => {
  expect(writtenAt('{"a":{"b":[1,2]}}', ['a', 'b', 1])).toBe(2);
  expect(writtenAt('{"a":null}', ['a', 'b'])).toBeUndefined();
  expect(writtenAt('', ['a'])).toBeUndefined();
  expect(writtenAt('{"a": 3, oops', ['a'])).toBe(3);
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { itemsOf, layerPaths, paragraphsOf } from '../../../src/page/card/items.js';
import { heldOf } from '../../../src/page/card/values.js';
import { read, type Written, withValue, writtenAt } from '../../../src/page/state/edit.js';
import { bookOf } from '../../../src/page/worker/book.js';
import { readRecipe } from '../../../src/recipe/read.js';

const patterns = new URL('../../../patterns/', import.meta.url);
const recipes = readdirSync(patterns).filter((f) => f.endsWith('.json'));
const book = bookOf();
const textOf = (name: string): string => readFileSync(new URL(name, patterns), 'utf8');

/** Keys of a recipe that are no single values, and so stand elsewhere on the card or not at all. */
const NO_VALUE =
  /^(\$schema|cutters|woods\.own|bowl\.(inlaid|outside\.points|inside\.points))\b|(^|\.)(shape|generator)$/;

function leaves(value: unknown, path: string): string[] {
  if (value === null || typeof value !== 'object') return [path];
  return Object.entries(value).flatMap(([k, v]) => leaves(v, path === '' ? k : `${path}.${k}`));
}

describe('the card', () => {
  it.each(recipes)('has a place for every value that %s gives', (name) => {
    const tree = read(textOf(name));
    const keys = new Set(itemsOf(paragraphsOf(book, tree)).map((i) => i.key));
    const missing = leaves(tree, '').filter(
      (k) => !NO_VALUE.test(k) && !k.startsWith('cutters') && !keys.has(k),
    );
    expect(missing).toEqual([]);
  });

  it.each(recipes)('shows what %s was read as', (name) => {
    const text = textOf(name);
    const recipe = readRecipe(text, name);
    for (const item of itemsOf(paragraphsOf(book, read(text)))) {
      const written = writtenAt(read(text), item.path);
      if (written === undefined || written === null) continue;
      const held = heldOf(item.parameter, written, recipe.units);
      const of = item.of(recipe);
      // A board's sides are read into a size of another form, and another name of a wood into its own.
      if (item.key.startsWith('boards.') || item.key.startsWith('woods.')) continue;
      if (typeof held === 'number') expect(of as number, item.key).toBeCloseTo(held, 6);
      else expect(of, item.key).toBe(held);
    }
  });

  it('has a place for every value a recipe may give', () => {
    const [roughing, plug] = [{ diameter: 6 }, ['loose', 'carrier']];
    const keys = plug.flatMap((of) =>
      itemsOf(paragraphsOf(book, { roughing, bowl: {}, fit: { plug: of } })).map((i) => i.key),
    );
    const all = book.sections.flatMap((s) => s.fields.map((f) => `${s.name}.${f.parameter.name}`));
    expect([...book.top.map((f) => f.parameter.name), ...all].filter((k) => !keys.includes(k))).toEqual([]);
  });

  it('names every value once', () => {
    for (const name of recipes) {
      const keys = itemsOf(paragraphsOf(book, read(textOf(name)))).map((i) => i.key);
      expect(keys.filter((k, i) => keys.indexOf(k) !== i)).toEqual([]);
    }
  });

  it('says defaults as they are read: mm and degrees', () => {
    const text = textOf('tea-box-rosette.json');
    const recipe = readRecipe(text, 'card');
    const items = itemsOf(paragraphsOf(book, read(text)));
    const of = (key: string): unknown => items.find((i) => i.key === key)!.of(recipe);
    expect(of('pattern.turn')).toBe(0);
    expect(of('woods.fieldGrain')).toBe(0);
    const turned = readRecipe(withValue(text, ['woods', 'plugGrain'], 90), 'card');
    expect(items.find((i) => i.key === 'woods.plugGrain')!.of(turned)).toBe(90);
  });
});

describe('layers', () => {
  test.each<[Written | undefined, (string | number)[][]]>([
    [{ generator: 'dots' }, [['pattern']]],
    [undefined, [['pattern']]],
    [
      [{ generator: 'dots' }, { generator: 'rosette' }],
      [
        ['pattern', 0],
        ['pattern', 1],
      ],
    ],
  ])('of %j lie at %j', (pattern, paths) => {
    expect(layerPaths(pattern)).toEqual(paths);
  });

  it('have their own keys only where there are several', () => {
    const one = itemsOf(paragraphsOf(book, { pattern: { generator: 'dots' } })).map((i) => i.key);
    const two = itemsOf(paragraphsOf(book, { pattern: [{ generator: 'dots' }, { generator: 'dots' }] })).map(
      (i) => i.key,
    );
    expect(one).toContain('pattern.gap');
    expect(one).not.toContain('pattern.combine');
    expect(two).toContain('pattern.1.combine');
    expect(two).toContain('pattern.0.gap');
  });
});

describe('what depends on others', () => {
  const keys = (tree: unknown): string[] => itemsOf(paragraphsOf(book, tree)).map((i) => i.key);

  it('is a roughing cutter: its other values stand only once it has a diameter', () => {
    expect(keys({})).toContain('roughing.diameter');
    expect(keys({})).not.toContain('roughing.flutes');
    expect(keys({ roughing: { diameter: 6 } })).toContain('roughing.flutes');
  });

  it('is the plug: saw room on a carrier, standing proud when loose', () => {
    expect(keys({})).toContain('fit.proud');
    expect(keys({})).not.toContain('fit.sawRoom');
    expect(keys({ fit: { plug: 'carrier' } })).toContain('fit.sawRoom');
    expect(keys({ fit: { plug: 'carrier' } })).not.toContain('fit.proud');
  });
});

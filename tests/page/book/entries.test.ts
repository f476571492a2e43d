import { describe, expect, it, test } from 'vitest';
import { build } from '../../../src/build.js';
import { generators } from '../../../src/generators/index.js';
import { outlineShapes } from '../../../src/outline/index.js';
import { countOf, found, patternSections, pieceSections } from '../../../src/page/book/entries.js';
import { byFamily } from '../../../src/page/book/families.js';
import { bookOf } from '../../../src/page/worker/book.js';
import { readRecipe } from '../../../src/recipe/read.js';

const book = bookOf();
const patterns = patternSections(book);
const trivet = {
  outline: { shape: 'circle', diameter: 120 },
  pattern: { generator: 'rosette' },
  woods: { field: 'teak', plug: 'padauk' },
};
const pieces = pieceSections({
  files: ['coasters/star-2.json', 'Lid.JSON'],
  shipped: ['star-trivet'],
  book,
  units: 'mm',
  tree: (key) => (key === 'shipped:star-trivet' ? trivet : undefined),
});
const titles = (sections: typeof patterns) => sections.flatMap((s) => s.entries.map((e) => e.title));

describe('families', () => {
  it('keep the order of the list, and lose nothing', () => {
    const families = byFamily(generators);
    expect(families.flatMap((f) => f.members)).toEqual(generators);
    expect(families.map((f) => f.name)).toEqual([
      'tilings',
      'symmetry',
      'radial',
      'bands',
      'knots',
      'fields',
      'lettering',
      'drawing',
    ]);
  });

  it('each say what is in them', () => {
    expect(byFamily(generators).filter((f) => f.about === '')).toEqual([]);
  });

  it('gather what does not stand together, and a new one goes by its name', () => {
    const things = ['moss-work', 'bands', 'moss-work'].map((family, k) => ({ family, k }));
    const [moss, bands] = byFamily(things);
    expect(moss).toMatchObject({ title: 'Moss work', about: '', members: [things[0], things[2]] });
    expect(bands!.members).toEqual([things[1]]);
  });
});

describe('sections of the book', () => {
  it('show the folder first, then what ships', () => {
    expect(pieces.map((s) => s.key)).toEqual(['folder', 'shipped']);
    expect(titles(pieces)).toEqual(['Star 2', 'Lid', 'Star trivet']);
  });

  it('tell a file by its path, and a piece by what its recipe says once it is read', () => {
    expect(pieces[0]!.entries.map((e) => e.lines)).toEqual([['coasters/star-2.json'], ['Lid.JSON']]);
    expect(pieces[1]!.entries[0]!.lines).toEqual(['Circle, 120\u00a0mm', 'Rosette']);
  });

  it('leave out a folder without recipes', () => {
    const none = pieceSections({ files: [], shipped: ['a'], book: null, units: 'mm', tree: () => undefined });
    expect(none.map((s) => s.key)).toEqual(['shipped']);
  });

  it('hold every pattern once, under keys that differ', () => {
    const all = [...pieces, ...patterns].flatMap((s) => s.entries.map((e) => e.key));
    expect(new Set(all).size).toBe(all.length);
    expect(countOf(patterns)).toBe(generators.length + outlineShapes.length);
  });
});

describe('looking for words', () => {
  it('finds by title, by what is said, by name and by wood', () => {
    expect(titles(found(pieces, 'triv'))).toEqual(['Star trivet']);
    expect(titles(found(pieces, 'coasters'))).toEqual(['Star 2']);
    expect(titles(found(pieces, 'padauk circle'))).toEqual(['Star trivet']);
    expect(titles(found(patterns, 'greek key'))).toEqual(['Meander band']);
    expect(titles(found(patterns, 'torus'))).toEqual(['Rosette knot']);
  });

  it('leaves out sections in which nothing fits', () => {
    expect(found(pieces, 'trivet').map((s) => s.key)).toEqual(['shipped']);
    expect(found([...pieces, ...patterns], 'zzz')).toEqual([]);
  });

  it('shows all when nothing is asked', () => expect(found(patterns, ' ')).toEqual(patterns));
});

const startOf = (key: string): string => {
  const { start } = patterns.flatMap((s) => s.entries).find((e) => e.key === key)!;
  if (start.from !== 'here') throw new Error(`${key} begins elsewhere`);
  return start.text;
};

test.each(book.generators)('$name begins with its sample, written as people write', ({ name, sample }) => {
  const text = startOf(`pattern:${name}`);
  expect(readRecipe(text, name)).toEqual(readRecipe(sample, name));
  expect(text.split('\n').length).toBeGreaterThan(8);
});

test.each(book.outlines.map((o) => o.name))(
  'a plain face, %s, is as large as usual and can be made',
  (shape) => {
    const recipe = readRecipe(startOf(`face:${shape}`), shape);
    const bare = { name: 'x', outline: { shape }, pattern: { generator: 'panel' } };
    const usual = readRecipe(
      JSON.stringify({ ...bare, cutter: { diameter: 3, flute: 16 }, depth: 10 }),
      'usual',
    );
    expect(recipe.outline).toEqual(usual.outline);
    // Its sizes are written, for their maker to change by hand too.
    const lengths = outlineShapes
      .find((o) => o.name === shape)!
      .parameters.filter((p) => p.kind === 'length');
    expect(JSON.parse(startOf(`face:${shape}`)).outline).toMatchObject(
      Object.fromEntries(lengths.map((p) => [p.name, p.default])),
    );
    const job = build(recipe, { fonts: new Map(), drawings: new Map() });
    expect(job.findings.filter((f) => f.severity === 'stop')).toEqual([]);
  },
);

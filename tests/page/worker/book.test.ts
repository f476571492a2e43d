import { describe, expect, it } from 'vitest';
import { generators } from '../../../src/generators/index.js';
import type { Book } from '../../../src/page/worker/protocol.js';
import { readRecipe } from '../../../src/recipe/read.js';
import { answerer, drawn } from './asking.js';

const book = (await answerer().answer({ ask: 'book' })) as Book;

/** What postMessage would not carry, or carries as something else. */
function odd(value: unknown, path = 'book'): string[] {
  if (value === null || ['string', 'boolean'].includes(typeof value)) return [];
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (Array.isArray(value)) return value.flatMap((v, k) => odd(v, `${path}.${k}`));
  if (typeof value !== 'object' || Object.getPrototypeOf(value) !== Object.prototype) return [path];
  return Object.entries(value).flatMap(([k, v]) => odd(v, `${path}.${k}`));
}

describe('the book', () => {
  it('is plain data, and survives being sent', () => {
    expect(odd(book)).toEqual([]);
    expect(structuredClone(book)).toEqual(book);
    expect(JSON.parse(JSON.stringify(book))).toEqual(book);
  });

  it('has every generator once, with a title, a summary and a family', () => {
    expect(book.generators.map((g) => g.name)).toEqual(generators.map((g) => g.name));
    expect(book.generators.length).toBeGreaterThan(40);
    expect(new Set(book.generators.map((g) => g.title)).size).toBe(book.generators.length);
    for (const { title, summary, family } of book.generators) {
      expect(title).toMatch(/^[A-Z]/);
      expect(summary).toMatch(/^[A-Z].*\.$/);
      expect(family).toMatch(/^[a-z]/);
    }
  });

  it('has the outlines that a recipe may name', () => {
    expect(book.outlines.map((o) => o.name)).toEqual(['circle', 'rectangle', 'polygon', 'stave', 'ring']);
    for (const { title, sample } of book.outlines) expect([title === '', sample]).toEqual([false, '']);
  });

  it('describes values whose defaults lie in their ranges, under names that differ', () => {
    const lists = [
      ...[...book.generators, ...book.outlines].map((e) => e.parameters),
      book.layer,
      book.within,
      book.top.map((f) => f.parameter),
      ...book.sections.map((s) => s.fields.map((f) => f.parameter)),
    ];
    for (const list of lists) {
      expect(new Set(list.map((p) => p.name)).size).toBe(list.length);
      for (const p of list) {
        expect(p.meaning).toMatch(/\S/);
        if (p.kind === 'choice') expect(p.options.map((o) => o.value)).toContain(p.default);
        else if ('min' in p) expect([p.min <= p.default, p.default <= p.max]).toEqual([true, true]);
      }
    }
  });

  it('has no key of a layer that some generator has too', () => {
    const own = new Set(book.layer.map((p) => p.name));
    for (const g of book.generators) expect(g.parameters.filter((p) => own.has(p.name))).toEqual([]);
  });

  it('says what is taken where a value is left out', () => {
    const fields = [...book.top, ...book.sections.flatMap((s) => s.fields)];
    expect(fields.filter((f) => f.need === 'otherwise' && !f.otherwise)).toEqual([]);
    expect(fields.filter((f) => f.need === 'required').map((f) => f.parameter.name)).toEqual(
      expect.arrayContaining(['depth', 'diameter']),
    );
  });

  it('has woods, cutters and fonts that a recipe may name', async () => {
    expect(book.woods.length).toBeGreaterThan(10);
    for (const { colour, grain } of book.woods) expect([colour, grain].join()).toMatch(/^#\w{6},#\w{6}$/);
    const sample = JSON.parse(book.generators[0].sample) as object;
    for (const { name } of book.woods)
      expect(readRecipe(JSON.stringify({ ...sample, woods: { field: name } }), 'x').woods.field).toBe(name);
    for (const diameter of book.cutters)
      expect(
        readRecipe(JSON.stringify({ ...sample, cutter: { diameter } }), 'x').cutter.diameter,
      ).toBeGreaterThan(0);
    const a = answerer();
    for (const { name } of book.fonts) {
      const pattern = { generator: 'lettering', text: 'H', height: 40, font: name };
      const { figure } = await drawn(a, JSON.stringify({ ...sample, pattern }), false);
      expect(figure.inlays[0].pocket).toMatch(/^M/);
    }
    expect(book.fonts.length).toBeGreaterThan(5);
  });
});

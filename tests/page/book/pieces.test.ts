import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { pieceLines, pieceWords } from '../../../src/page/book/piece-line.js';
import { read } from '../../../src/page/state/edit.js';
import { bookOf } from '../../../src/page/worker/book.js';

const book = bookOf();
const lines = (recipe: unknown, units: 'mm' | 'in' = 'mm'): string[] =>
  pieceLines(recipe, book, units).map((line) => line.replaceAll('\u00a0', ' '));

const slab = (outline: object, more: object = {}) => ({ outline, pattern: { generator: 'tiling' }, ...more });

describe('what is said of a piece', () => {
  it('is its shape, its size and its patterns', () => {
    expect(lines(slab({ shape: 'rectangle', width: 360, height: 220, corner: 18, margin: 15 }))).toEqual([
      'Rectangle, 360 × 220 mm',
      'Tiling',
    ]);
  });

  it('of a vessel is its staves and its height', () => {
    const of = (sides: number, height: unknown) =>
      lines({ bowl: { sides, height }, pattern: { generator: 'wave' } });
    expect(of(12, 90)).toEqual(['Vessel of 12 staves, 90 mm high', 'Wave band']);
    expect(of(1, '1in')[0]).toBe('Turned from a flat board, 25.4 mm high');
    expect(of(8, 'tall')[0]).toBe('Vessel of 8 staves');
  });

  it('names a pattern once, in the order of the layers', () => {
    const pattern = ['rope', 'dots', 'rope'].map((generator) => ({ generator }));
    expect(lines({ outline: { shape: 'circle', diameter: 120 }, pattern })).toEqual([
      'Circle, 120 mm',
      'Rope band, dots',
    ]);
  });

  // An inch is 25.4 mm exactly (international inch, 1959).
  test.each([
    [slab({ shape: 'circle', diameter: 4 }, { units: 'in' }), 'mm', 'Circle, 101.6 mm'],
    [slab({ shape: 'circle', diameter: 4 }, { units: 'in' }), 'in', 'Circle, 4 in'],
    [slab({ shape: 'circle', diameter: '3 1/2in' }), 'mm', 'Circle, 88.9 mm'],
    [slab({ shape: 'circle', diameter: '127mm' }, { units: 'in' }), 'in', 'Circle, 5 in'],
    [slab({ shape: 'circle', diameter: 100 }), 'in', 'Circle, 3.94 in'],
  ] as const)('%j in %s: %s', (recipe, units, line) => expect(lines(recipe, units)[0]).toBe(line));

  it('takes the usual size where the recipe says none, in mm whatever its units', () => {
    const circle = book.outlines.find((o) => o.name === 'circle')!;
    const usual = circle.parameters.find((p) => p.name === 'diameter')!.default;
    expect(lines(slab({ shape: 'circle' }, { units: 'in' }))[0]).toBe(`Circle, ${usual} mm`);
  });

  it('leaves out a size that cannot be read, and keeps a pattern nobody knows', () => {
    expect(lines({ outline: { shape: 'circle', diameter: 'wide' }, pattern: { generator: 'moss' } })).toEqual(
      ['Circle', 'Moss'],
    );
    expect(lines({ outline: { shape: 'circle', diameter: true } })).toEqual(['Circle']);
  });

  test.each([undefined, null, 7, 'text', {}, [], { outline: 'circle' }, { outline: { shape: 'blob' } }])(
    'is nothing for %j',
    (tree) => expect(lines(tree)).toEqual([]),
  );

  it('never breaks within the size', () => {
    expect(pieceLines(slab({ shape: 'circle', diameter: 120 }), book, 'mm')[0]).toBe('Circle, 120\u00a0mm');
  });
});

test('a piece is also found by its generators and woods', () => {
  const pattern = [{ generator: 'rope' }, { generator: 7 }, 'x'];
  expect(pieceWords({ pattern, woods: { field: 'teak', plug: 'sugar maple' } })).toBe(
    'rope teak sugar maple',
  );
  expect(pieceWords(undefined)).toBe('');
});

const patterns = new URL('../../../patterns/', import.meta.url);
const shipped = readdirSync(patterns).filter((f) => f.endsWith('.json'));

test('there are pieces to try', () => expect(shipped.length).toBeGreaterThan(30));

test.each(shipped)('%s has its size and its patterns said', (name) => {
  const said = lines(read(readFileSync(new URL(name, patterns), 'utf8')));
  expect(said).toHaveLength(2);
  expect(said[0]).toMatch(/^[A-Z][a-z ]+(\d+ staves)?, \d+(\.\d)?( × \d+(\.\d)?)* mm( high)?$/);
});

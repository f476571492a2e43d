import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import type { Piece } from '../../src/geometry/artwork.js';
import { type Contour, circle, polygon, reversedContour } from '../../src/geometry/region.js';
import type { Finding } from '../../src/inspect/finding.js';
import { inspect } from '../../src/inspect/index.js';
import { makeOutline } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { cornerRadius } from '../../src/recipe/recipe.js';
import { exampleText } from '../recipe/example.js';

/** A cutter of 4 mm with a tenth as ease: corner radius 2.4 mm, so 4.8 mm is the least width. */
const CUTTER = { cutter: { diameter: 4, flute: 22 }, roughing: undefined };

function found(pieces: readonly Piece[], changes: Record<string, unknown> = {}): Finding[] {
  const recipe = readRecipe(exampleText({ ...CUTTER, ...changes }), 'x.json');
  const artwork = { pieces };
  const { thin, touch } = recipe.cutter;
  const empty = { contours: [] };
  const setup = {
    recipe,
    outline: makeOutline(recipe.outline.shape, recipe.outline.values),
    artwork,
    safe: enforce(artwork, { r: cornerRadius(recipe.cutter), thin, touch }),
    pair: { pocket: empty, plug: empty, mirrored: false },
  };
  return inspect(setup).filter((f) => f.code.startsWith('lost-'));
}

const piece = (name: string, ...contours: Contour[]): Piece => ({ name, region: { contours } });

function bar(width: number, y = 0, x = 0): Contour {
  return polygon([
    [x - 20, y],
    [x + 20, y],
    [x + 20, y + width],
    [x - 20, y + width],
  ]);
}

const ring = (name: string, x: number, across: number): Piece =>
  piece(name, circle(x, 0, 20), reversedContour(circle(x, 0, across / 2)));

describe('a lost part', () => {
  it('is named with its place and what keeps it, and not told again by kind', () => {
    // A hole 3 mm across stays with a corner radius of 1.5 mm: 2.4 / 1.5 = 1.6 times as large, or 2.5 mm of cutter.
    const [f, ...more] = found([ring('disc 1', -30, 10), ring('disc 2', 30, 3)]);
    expect(more).toEqual([]);
    expect(f.code).toBe('lost-part');
    expect(f.severity).toBe('warn');
    expect(f.where![0]).toBeCloseTo(30, 6);
    expect(f.where![1]).toBeCloseTo(0, 6);
    expect(f.numbers.size).toBeCloseTo(3, 6);
    expect(f.numbers.scale).toBeGreaterThan(1.6 - 1e-3);
    expect(f.numbers.scale).toBeLessThan(1.6 * 1.01);
    expect(f.numbers.cutter).toBeCloseTo((3 / 32) * 25.4, 9);
    expect(f.do).toBe(
      'A hole of disc 2, 3 mm across, closed. Drawn 1.61 times as large, or with a 3/32 in cutter, it stays.',
    );
  });

  it('of a letter has a counter, and the height of its letters keeps it', () => {
    const lettering = { pattern: { generator: 'lettering', text: 'Orchard', height: 30 } };
    const [f] = found([ring("letter 5 'a' in 'Orchard'", 0, 3)], lettering);
    // 30 mm times 1.6 is 48 mm; searched to 0.5 % and rounded up to half a millimetre.
    expect(f.do).toMatch(
      /^The counter of letter 5 'a' in 'Orchard', 3 mm across, closed\. At 48\.5 mm letters, or with a 3\/32 in cutter, it stays\.$/,
    );
    const layered = { pattern: [{ generator: 'panel' }, lettering.pattern] };
    expect(found([ring("layer 1, letters 1-7 'Orchard'", 0, 3)], layered)[0].do).toMatch(
      /At 48\.5 mm letters/,
    );
  });

  it('that grew together with another is told once, and letters that are one piece in the plural', () => {
    const colon = piece('colon', bar(9), bar(9, 12));
    const told = found([colon]);
    // Twelve less nine: 3 mm apart, which a corner radius of 1.5 mm keeps.
    expect(told.map((f) => f.do)).toEqual([
      '2 parts of colon were drawn apart and became one. Drawn 1.61 times as large, or with a 3/32 in cutter, it stays whole.',
    ]);
    const word = found([piece("letters 1-2 'fi'", bar(4)), piece('bar', bar(9, 20))]);
    expect(word[0].do).toMatch(/^Letters 1-2 'fi' are thinner than the cutter and are gone\. /);
  });

  it('is told of inches in inches', () => {
    const [f] = found([ring('disc', 0, 3)], {
      units: 'in',
      outline: { shape: 'circle', diameter: '96mm' },
      stock: { field: '11mm', plug: '12mm' },
      cutter: { diameter: '4mm', flute: '22mm' },
      fit: {},
      depth: '8mm',
      skin: '1.5mm',
    });
    expect(f.do).toMatch(/^A hole of disc, 0\.1181 in across, closed\./);
  });

  it('that is too near its neighbours is told to keep its distance', () => {
    // Bars just wide enough alone; parted, each gives up half of what is missing between them.
    const bars = [piece('bar 1', bar(5, 0)), piece('bar 2', bar(5, 6)), piece('bar 3', bar(5, 12))];
    const gone = found(bars).filter((f) => f.code === 'lost-part');
    expect(gone.map((f) => f.do)).toEqual([
      'Bar 1 is thinner than the cutter and is gone; likewise 2 more like it. By itself it is kept; its neighbours are too near. Leave 4.8 mm between them, or use a smaller cutter.',
    ]);
    expect(gone[0]?.numbers.places).toBe(3);
  });

  it('that has no width anywhere says so and does not search for ever', () => {
    const hair = found([piece('hair', bar(0.02)), piece('bar', bar(9, 20))]);
    expect(hair.map((f) => f.do)).toEqual([
      'Hair is thinner than the cutter and is gone. It is lost at any size: as drawn it has no width there. Change the drawing.',
    ]);
  });

  it('is one of a dozen at most, worst first, and one more finding counts the rest', () => {
    const dots = Array.from({ length: 15 }, (_, k) => piece(`dot ${k}`, circle(12 * k, 0, 1 + k / 20)));
    const all = found([piece('bar', bar(9, 40)), ...dots]);
    expect(all.map((f) => f.code)).toEqual(Array(13).fill('lost-part'));
    expect(all[0].do).toMatch(/^Dot 14 is thinner/);
    expect(all[12].numbers).toEqual({ more: 3 });
    expect(all[12].do).toMatch(/^3 more parts or holes are lost/);
  });

  it('leaves to the findings by kind what is no part: gaps parted, ends cut off', () => {
    const comb = piece(
      'comb',
      polygon([
        [-30, 0],
        [30, 0],
        [30, 12],
        [2, 12],
        [2, 24],
        [-2, 24],
        [-2, 12],
        [-30, 12],
      ]),
    );
    expect(found([comb]).map((f) => [f.code, f.numbers.places])).toEqual([['lost-detail', 1]]);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { itemsOf, type Kind, paragraphsOf } from '../../../src/page/card/items.js';
import { restated } from '../../../src/page/card/restate.js';
import { switched } from '../../../src/page/card/switch.js';
import { read } from '../../../src/page/state/edit.js';
import { bookOf } from '../../../src/page/worker/book.js';
import { readRecipe } from '../../../src/recipe/read.js';

const patterns = new URL('../../../patterns/', import.meta.url);
const recipes = readdirSync(patterns).filter((f) => f.endsWith('.json'));
const book = bookOf();

function kindOf(text: string, key: string): Kind {
  const kinds = paragraphsOf(book, read(text)).flatMap((p) => p.sentences.flatMap((s) => s.kind ?? []));
  return kinds.find((k) => k.key === key)!;
}

describe('another unit', () => {
  it.each(recipes)('leaves %s the piece it was', (name) => {
    const text = readFileSync(new URL(name, patterns), 'utf8');
    const before = readRecipe(text, name);
    const to = before.units === 'mm' ? 'in' : 'mm';
    const next = restated(text, itemsOf(paragraphsOf(book, read(text))), before.units, to);
    const after = readRecipe(next, name);
    expect(after.units).toBe(to);
    expect({ ...after, units: before.units }).toEqual(before);
  });

  it('keeps texts with a unit as their maker wrote them', () => {
    const text = '{"units": "mm", "depth": 8, "cutter": {"diameter": "1/8in"}, "cutters": [3, "1/4in"]}';
    const items = itemsOf(paragraphsOf(book, read(text)));
    expect(read(restated(text, items, 'mm', 'in'))).toEqual({
      units: 'in',
      depth: '8mm',
      cutter: { diameter: '1/8in' },
      cutters: ['3mm', '1/4in'],
    });
    expect(restated(text, items, 'mm', 'mm')).toBe(text);
  });

  it('keeps the points of a vessel’s curve where they were', () => {
    const text = '{"bowl": {"sides": 8, "outside": {"shape": "curve", "points": [[0, "4in"], [50, 120]]}}}';
    const items = itemsOf(paragraphsOf(book, read(text)));
    expect(read(restated(text, items, 'mm', 'in'))).toMatchObject({
      bowl: {
        sides: 8,
        outside: {
          points: [
            ['0mm', '4in'],
            ['50mm', '120mm'],
          ],
        },
      },
    });
  });
});

describe('another shape or pattern', () => {
  const text = JSON.stringify({
    outline: { shape: 'circle', diameter: 96, margin: 7 },
    pattern: { generator: 'rosette', points: 9, gap: 4.4, style: 'drops', within: { inset: 3 } },
  });

  it('keeps the values it has a place for', () => {
    expect(read(switched(text, kindOf(text, 'outline.shape'), 'ring', 'mm')[0]!)).toMatchObject({
      outline: { shape: 'ring', diameter: 96, margin: 7 },
    });
    const next = read(switched(text, kindOf(text, 'outline.shape'), 'rectangle', 'mm')[0]!) as {
      outline: unknown;
    };
    expect(next.outline).toEqual({ shape: 'rectangle', margin: 7 });
  });

  it('keeps what is the layer’s, and drops what does not fit', () => {
    const next = read(switched(text, kindOf(text, 'pattern.generator'), 'dots', 'mm')[0]!) as {
      pattern: unknown;
    };
    expect(next.pattern).toEqual({ generator: 'dots', gap: 4.4, within: { inset: 3 } });
    const worded = text.replace('4.4', '"wide"');
    const dropped = read(switched(worded, kindOf(worded, 'pattern.generator'), 'dots', 'mm')[0]!) as {
      pattern: unknown;
    };
    expect(dropped.pattern).toEqual({ generator: 'dots', within: { inset: 3 } });
  });

  it('has another way with none of its values, for where those cannot be drawn', () => {
    const [, bare] = switched(text, kindOf(text, 'outline.shape'), 'ring', 'mm');
    expect((read(bare!) as { outline: object }).outline).toEqual({ shape: 'ring' });
    const [, dots] = switched(text, kindOf(text, 'pattern.generator'), 'dots', 'mm');
    expect((read(dots!) as { pattern: object }).pattern).toEqual({ generator: 'dots', within: { inset: 3 } });
  });

  it('changes nothing for one there is not', () => {
    expect(switched(text, kindOf(text, 'outline.shape'), 'heart', 'mm')).toEqual([text]);
  });
});

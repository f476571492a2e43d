import { describe, expect, it } from 'vitest';
import type { Change } from '../../src/cutter/safe.js';
import { inspect } from '../../src/inspect/index.js';
import type { Setup } from '../../src/inspect/setup.js';
import { makeOutline } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { exampleText } from '../recipe/example.js';

function findings(changes: Record<string, unknown> = {}, lost: Change[] = []) {
  const recipe = readRecipe(exampleText(changes), 'x.json');
  const empty = { contours: [] };
  const setup: Setup = {
    recipe,
    outline: makeOutline(recipe.outline.shape, recipe.outline.values),
    artwork: { pieces: [] },
    safe: { region: empty, pieces: [], changes: lost },
    pair: { pocket: empty, plug: empty, mirrored: false },
  };
  return inspect(setup);
}

const codes = (changes: Record<string, unknown>) => findings(changes).map((f) => `${f.code} ${f.severity}`);

describe('findings', () => {
  it('are none for a sound setup', () => {
    expect(findings()).toEqual([]);
  });

  it('warn of a flute that only just reaches the floor', () => {
    expect(codes({ 'cutter.flute': 8.9, 'stock.plug': 7.5 })).toEqual(['short-flute warn']);
    expect(codes({ 'cutter.flute': 9, 'stock.plug': 7.5 })).toEqual([]);
  });

  it('warn of a thin skin, and note a pocket that is cut through', () => {
    expect(codes({ skin: 0.9 })).toEqual(['thin-skin warn']);
    expect(codes({ skin: 1 })).toEqual([]);
    expect(codes({ skin: 0, 'stock.field': 8 })).toEqual(['no-skin note']);
    expect(codes({ skin: 0 })).toEqual([]);
  });

  it('warn of plug stock that does not fill the pocket, or leaves no backing on a carrier', () => {
    expect(codes({ 'stock.plug': 7.4 })).toEqual(['thin-plug warn']);
    expect(codes({ 'stock.plug': 7.5 })).toEqual([]);
    expect(codes({ 'stock.plug': 13.4, 'fit.plug': 'carrier' })).toEqual(['thin-plug warn']);
    expect(codes({ 'stock.plug': 13.5, 'fit.plug': 'carrier' })).toEqual([]);
  });

  it('gather changes by kind, placed at the largest, as lost or merely altered', () => {
    const change = (kind: Change['kind'], size: number): Change => ({
      kind,
      piece: 'tile 4',
      at: [size, 0],
      size,
    });
    const found = findings({}, [change('vanished', 1), change('parted', 3), change('vanished', 2)]);
    expect(found.map((f) => [f.severity, f.where, f.numbers])).toEqual([
      ['warn', [2, 0], { places: 2, largest: 2 }],
      ['note', [3, 0], { places: 1, largest: 3 }],
    ]);
    expect(found[0].do).toBe(
      'At 2 places the pattern is thinner than the cutter and was left out (largest: tile 4, 2 mm across). A larger pattern or a smaller cutter keeps it.',
    );
  });
});

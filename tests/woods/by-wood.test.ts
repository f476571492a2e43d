import { describe, expect, it } from 'vitest';
import { byWood, kindsOf } from '../../src/fit/by-wood.js';
import { circle } from '../../src/geometry/region.js';
import { readRecipe } from '../../src/recipe/read.js';
import { recipeSchema } from '../../src/recipe/schema.js';
import { BadInput } from '../../src/schema/fault.js';
import { woods } from '../../src/shop/woods.js';
import { blocks, jobOf } from './job.js';

const region = { contours: [circle(0, 0, 1)] };
const grouped = (names: readonly string[], plugs: Record<string, string>, plug = 'black walnut') =>
  byWood(
    { pieces: names.map((name) => ({ name, region })) },
    {
      field: 'sugar maple',
      plug,
      fieldGrain: 0,
      plugGrain: 0,
      plugs: Object.entries(plugs).map(([pieces, wood]) => ({ pieces, wood })),
    },
  ).map(({ wood, pieces }) => [wood, ...pieces.map((p) => p.name)]);

/** The lines of the BadInput that something throws. */
function faultsOf(work: () => unknown): string[] {
  try {
    work();
  } catch (e) {
    if (e instanceof BadInput) return e.message.split('\n');
    throw e;
  }
  throw new Error('nothing was thrown');
}

/** A wood by one of the known names, or one that the recipe describes itself. */
interface Either {
  anyOf: { enum?: string[]; type?: string }[];
}

describe('pieces by wood', () => {
  it('what no key names comes first, then the keys as listed', () =>
    expect(grouped(['hexagon 1', 'square 2', 'triangle 3'], { square: 'padauk', hexagon: 'teak' })).toEqual([
      ['black walnut', 'triangle 3'],
      ['padauk', 'square 2'],
      ['teak', 'hexagon 1'],
    ]));

  it('a wood named again joins its first place; woods.plug takes its place in the list when nothing is left to it', () =>
    expect(grouped(['a', 'b', 'c'], { a: 'teak', b: 'black walnut', c: 'teak' })).toEqual([
      ['teak', 'a', 'c'],
      ['black walnut', 'b'],
    ]));

  it('a key is whole words from the beginning of the name, with its layer or without', () => {
    const names = ['layer 0, letter 1', 'layer 1, letter 10', 'layer 1, letters 1', 'layer 10, straps'];
    const by = (key: string) =>
      grouped(names, { [key]: 'teak' })
        .at(-1)!
        .slice(1);
    expect(by('letter')).toEqual(['layer 0, letter 1', 'layer 1, letter 10']);
    expect(by('letter 1')).toEqual(['layer 0, letter 1']);
    expect(by('layer 1')).toEqual(['layer 1, letter 10', 'layer 1, letters 1']);
    expect(by('layer 1, letter')).toEqual(['layer 1, letter 10']);
    expect(by('straps')).toEqual(['layer 10, straps']);
  });

  it('the first of two keys has the piece', () =>
    expect(grouped(['hexagon 1', 'hexagon 2'], { 'hexagon 2': 'teak', hexagon: 'padauk' })).toEqual([
      ['teak', 'hexagon 2'],
      ['padauk', 'hexagon 1'],
    ]));

  it('kinds are names without their numbers, layers before them', () =>
    expect(
      kindsOf(
        [
          'layer 0, top face -1,2',
          'layer 0, top face 3,4',
          "layer 1, letter 3 'e' in 'Orchard'",
          'strap',
        ].map((name) => ({ name, region })),
      ),
    ).toEqual(['layer 0', 'layer 1', 'top face', 'letter', 'strap']));
});

describe('faults of woods.plugs', () => {
  it('a key that names nothing is told what there is', () =>
    expect(faultsOf(() => jobOf(blocks({ hexagon: 'padauk', sides: 'teak', 'top face': 'cherry' })))).toEqual(
      [
        'woods.plugs.hexagon: names no piece of the pattern; there are top face, left face, right face',
        'woods.plugs.sides: names no piece of the pattern; there are top face, left face, right face',
      ],
    ));

  it('a key whose pieces are taken is told by which', () =>
    expect(faultsOf(() => jobOf(blocks({ top: 'padauk', 'top face': 'teak' })))).toEqual([
      'woods.plugs.top face: names only pieces that "top" before it has taken: list it first, or leave it out',
    ]));

  it.each([
    [{ top: 'padook' }, 'woods.plugs.top: "padook" is not known; did you mean "padauk"?'],
    [
      { top: 'zzzzzzzzz' },
      `woods.plugs.top: "zzzzzzzzz" is not known; known: ${woods.map((w) => w.name).join(', ')}`,
    ],
    [{ top: 3 }, 'woods.plugs.top: must be the name of a wood, not 3: one of American beech'],
    [{ top: ['teak'] }, 'woods.plugs.top: must be the name of a wood, not a list: one of'],
    [{ ' ': 'teak' }, 'is no name of pieces: give 1 to 80 characters'],
    [['teak'], 'woods.plugs: must be an object in braces { }, not a list'],
    [
      Object.fromEntries(Array.from({ length: 25 }, (_, k) => [`letter ${k}`, 'teak'])),
      'woods.plugs: has 25 keys: give 24 at most',
    ],
  ])('%j', (plugs, message) => {
    const found = faultsOf(() => jobOf(blocks(plugs as Record<string, unknown>)));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(message);
  });

  it('other names of a wood are known, and --set adds a wood', () => {
    const text = JSON.stringify(blocks({ 'left face': 'padouk' }));
    const { plugs } = readRecipe(text, 'x.json', ['woods.plugs.top face=cherry']).woods;
    expect(plugs).toEqual([
      { pieces: 'left face', wood: 'padauk' },
      { pieces: 'top face', wood: 'black cherry' },
    ]);
  });

  it('left out, null and empty are all one', () => {
    for (const plugs of [undefined, null, {}]) {
      const recipe = { ...blocks(undefined), woods: { field: 'teak', plugs } };
      expect(readRecipe(JSON.stringify(recipe), 'x.json').woods).not.toHaveProperty('plugs');
    }
  });

  it('the JSON Schema knows the key and every wood', () => {
    const section = (recipeSchema().properties as { woods?: unknown }).woods as {
      properties: { plug: Either; plugs: { additionalProperties: Either } };
    };
    expect(section.properties.plugs.additionalProperties.anyOf).toEqual(section.properties.plug.anyOf);
    const [known, own] = section.properties.plug.anyOf;
    expect(known!.enum).toContain('padauk');
    expect(own).toEqual({ type: 'string' });
  });
});

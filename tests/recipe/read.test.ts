import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRecipe } from '../../src/recipe/read.js';
import { BadInput } from '../../src/schema/fault.js';
import { example, exampleText } from './example.js';

function read(changes: Record<string, unknown> = {}, settings: string[] = []) {
  return readRecipe(exampleText(changes), 'x.json', settings);
}

function refusal(changes: Record<string, unknown>, settings: string[] = []): string {
  try {
    read(changes, settings);
  } catch (e) {
    expect(e).toBeInstanceOf(BadInput);
    return (e as Error).message;
  }
  throw new Error('was not refused');
}

describe('a sound recipe', () => {
  it('is read in mm and radians', () => {
    const r = read();
    expect(r.cutter).toMatchObject({
      diameter: 3.175,
      cuts: 3.19,
      flute: 22,
      ease: 0.3,
      thin: 'drop',
      touch: 'part',
    });
    expect(r.outline).toEqual({ shape: 'circle', values: { diameter: 96, margin: 6 } });
    expect(r.pattern).toMatchObject({ generator: 'rosette', values: { points: 12, seed: 1 } });
    expect(r.roughing).toMatchObject({ diameter: 6.35, open: false, stickout: 3 * 6.35 });
    expect(r.woods.plugGrain).toBe(Math.PI / 2);
  });

  it('is read in inches where it says so, bare numbers only', () => {
    const r = read({
      units: 'in',
      depth: 0.25,
      stock: { field: 0.5, plug: '12mm' },
      outline: { shape: 'circle', diameter: 4 },
      'cutter.ease': 0.01,
      'cutter.cuts': null,
      'cutter.flute': 1,
      skin: '1/16in',
      fit: {},
    });
    expect(r.units).toBe('in');
    expect(r.depth).toBe(6.35);
    expect(r.stock).toEqual({ field: 12.7, plug: 12 });
    expect(r.outline.values.diameter).toBe(101.6);
    expect(r.cutter).toMatchObject({ diameter: 3.175, cuts: null, flute: 25.4 });
  });

  it('needs no more than name, outline, pattern, cutter diameter and depth', () => {
    const text =
      '{"name":"a","outline":{"shape":"circle"},"pattern":{"generator":"rosette"},"cutter":{"diameter":3},"depth":20}';
    const r = readRecipe(text, 'x.json');
    expect(r.units).toBe('mm');
    expect(r.stock).toEqual({ field: 21.5, plug: 20.5 });
    expect(r.cutter).toEqual({
      diameter: 3,
      cuts: null,
      flute: 20.5,
      ease: 0.3,
      thin: 'drop',
      touch: 'part',
      flutes: 2,
      spiral: 'up',
      material: 'carbide',
      shank: 3,
      stickout: 20.5,
      rpm: 18_000,
      feed: null,
    });
    expect(r.fit).toEqual({
      clearance: 0.08,
      from: 'plug',
      plug: 'loose',
      face: 'up',
      glueGap: 0.5,
      foot: 0.4,
      proud: 1,
      sawRoom: 4,
    });
    expect(r.machine).toEqual({
      accuracy: 0.05,
      repeatability: 0.02,
      sideForce: 10,
      acceleration: 250,
      feed: 3000,
      slowest: 10_000,
      fastest: 30_000,
      collet: 19,
      bridge: null,
      lift: null,
      shoe: null,
      shoeAbove: 10,
    });
    expect(r.passes).toEqual({
      allowance: 0.3,
      roughingStep: 3,
      finishingStep: null,
      clearing: false,
      stepover: 45,
    });
    expect(r.cutters).toBeNull();
    expect(r.walls).toEqual({ least: null, limbs: null });
    expect(r.press).toBeNull();
    expect(r.moisture).toEqual({ field: 8, plug: 8, driest: 6, dampest: 10 });
    expect(r.roughing).toBeNull();
    expect(r.woods).toEqual({ field: 'sugar maple', plug: 'black walnut', fieldGrain: 0, plugGrain: 0 });
  });

  it('takes a wood by another of its names', () => {
    expect(read({ 'woods.field': 'Ash' }).woods.field).toBe('white ash');
  });

  it('allows $schema', () => {
    expect(read({ $schema: './recipe.schema.json' }).name).toBe('test-piece');
  });
});

describe('faults name line, path, range and what to do', () => {
  it.each<[string, Record<string, unknown>, RegExp]>([
    [
      'zero',
      { 'cutter.diameter': 0 },
      /^x\.json:\d+: cutter\.diameter: 0 mm is out of range: 0\.3 mm to 25 mm$/,
    ],
    ['negative', { depth: -8 }, /depth: -8 mm is out of range: 0\.1 mm to 150 mm/],
    ['huge', { 'outline.diameter': 1e300 }, /outline\.diameter: 1e\+300 mm is out of range: 5 mm to 3000 mm/],
    ['NaN as text', { depth: 'NaN' }, /depth: "NaN" is not a length/],
    ['null', { depth: null }, /depth: must be a length .* not null/],
    ['a list', { cutter: [3] }, /cutter: must be an object in braces \{ \}, not a list/],
    ['an object for a number', { depth: {} }, /depth: must be a length .* not an object/],
    ['other unit', { depth: '3 cm' }, /depth: "3 cm" has a unit other than mm and in/],
    [
      'unknown key',
      { 'cutter.diamter': 3 },
      /cutter\.diamter: is not a known key; did you mean "diameter"\?/,
    ],
    ['unknown top key', { clearence: 3 }, /clearence: is not a known key; known: /],
    [
      'unknown generator',
      { 'pattern.generator': 'rozette' },
      /pattern\.generator: "rozette" is not known; did you mean "rosette"\?/,
    ],
    [
      'unknown shape',
      { 'outline.shape': 'cirlce' },
      /outline\.shape: "cirlce" is not known; did you mean "circle"\?/,
    ],
    [
      'unknown choice',
      { 'cutter.thin': 'keep' },
      /cutter\.thin: "keep" is not known; known: drop, widen, refuse/,
    ],
    [
      'unknown wood',
      { 'woods.field': 'white oat' },
      /woods\.field: "white oat" is not known; did you mean "white oak"\?/,
    ],
    [
      'key of another shape',
      { 'outline.bore': 3 },
      /outline\.bore: is not a known key; known: shape, diameter, margin/,
    ],
    ['not whole', { 'pattern.points': 2.5 }, /pattern\.points: must be a whole number, not 2\.5: 3 to 48/],
    [
      'missing generator',
      { pattern: { generater: 'rosette' } },
      /pattern\.generator: is missing \(did you mean "generator" by "generater"\?\)/,
    ],
    [
      'missing outline',
      { outline: undefined },
      /outline: is missing: write "outline": \{ "shape": "circle" \}/,
    ],
    [
      'missing depth',
      { depth: undefined },
      /depth: is missing: how deep the pocket is cut\. For example "depth": "8mm"/,
    ],
    [
      'empty text',
      { pattern: { generator: 'lettering', text: '' } },
      /pattern\.text: is empty: give 1 to 5000 characters/,
    ],
    ['blank text', { pattern: { generator: 'lettering', text: ' \u00a0' } }, /pattern\.text: is empty/],
    [
      'text with a tab',
      { pattern: { generator: 'lettering', text: 'a\nb\tc' } },
      /pattern\.text: holds a character that cannot be drawn.*: U\+0009, character 2 of line 2; take it out/,
    ],
    [
      'font name with a line break',
      { pattern: { generator: 'lettering', font: 'a\nb' } },
      /pattern\.font: holds a character that cannot be drawn.*: U\+000A, character 2; take it out/,
    ],
    [
      'another word than fit',
      { pattern: { generator: 'lettering', height: 'fitt' } },
      /pattern\.height: "fitt" .*, or "fit"/,
    ],
    [
      'long text',
      { pattern: { generator: 'lettering', text: 'a'.repeat(5001) } },
      /pattern\.text: is longer than 5000 characters/,
    ],
    [
      'cutter wider than its slot',
      { 'cutter.cuts': 2 },
      /cutter\.cuts: 2 mm is more than a fifth off the diameter 3\.175 mm: measure again, 2\.54 mm to 3\.81 mm/,
    ],
    [
      'ease over the diameter',
      { 'cutter.ease': 4 },
      /cutter\.ease: 4 mm is more than the cutter's diameter: 0 to 3\.175 mm/,
    ],
    [
      'short flute',
      { 'cutter.flute': 7 },
      /cutter\.flute: 7 mm does not reach the depth of 8 mm: .* at least 8 mm of flute, or a depth of at most 7 mm/,
    ],
    [
      'thin stock',
      { 'stock.field': 9 },
      /stock\.field: 9 mm is thinner than depth 8 mm and skin 1\.5 mm together: make the depth at most 7\.5 mm, or use stock of at least 9\.5 mm/,
    ],
    [
      'small roughing cutter',
      { 'roughing.diameter': 2 },
      /roughing\.diameter: 2 mm is smaller than the cutter's 3\.175 mm/,
    ],
    [
      'clearance over the corner radius',
      { 'fit.clearance': 1.895 },
      /fit\.clearance: 1\.895 mm is too much for a corner radius of 1\.895 mm/,
    ],
    [
      'clearance as wide as the smallest limb',
      // A limb of 2 r = 3.79 mm loses the clearance on both sides: 3.79 - 2.528 < 1.264.
      { 'fit.clearance': 1.264 },
      /fit\.clearance: 1\.264 mm .* a limb of 3\.79 mm would come out no wider than the clearance; less than 1\.263 mm/,
    ],
    [
      'no carrier behind the plug',
      { 'fit.plug': 'carrier', 'stock.plug': 11.5 },
      /stock\.plug: 11\.5 mm leaves no carrier behind the plug's 11\.5 mm/,
    ],
  ])('%s', (_, changes, message) => {
    const text = refusal(changes);
    expect(text).toMatch(message);
    expect(text.split('\n')).toHaveLength(1);
  });

  it('gives the line of the value', () => {
    const line =
      exampleText({ 'cutter.flute': -1 })
        .split('\n')
        .findIndex((l) => l.includes('"flute"')) + 1;
    expect(refusal({ 'cutter.flute': -1 })).toMatch(new RegExp(`^x\\.json:${line}: cutter\\.flute: `));
  });

  it('gives ranges in the unit of the recipe', () => {
    expect(refusal({ units: 'in', 'cutter.diameter': 3 })).toMatch(
      /cutter\.diameter: 3 in is out of range: 0\.0119 in to 0\.9842 in/,
    );
  });

  it('reports every fault at once, and stops counting at twenty', () => {
    expect(refusal({ depth: 0, skin: -1, 'cutter.x': 1, name: '' }).split('\n')).toHaveLength(4);
    const many = Object.fromEntries(Array.from({ length: 50 }, (_, i) => [`zzzzzzzz${i}`, 1]));
    const lines = refusal(many).split('\n');
    expect(lines).toHaveLength(21);
    expect(lines[20]).toBe('and 30 more faults');
  });

  it('takes a corner radius that leaves room for a shared clearance', () => {
    expect(read({ 'fit.clearance': 1.8, 'fit.from': 'both' }).fit.clearance).toBe(1.8);
  });

  it('takes thicknesses that add up exactly on paper', () => {
    expect(read({ depth: 8.2, skin: 0.1, 'stock.field': 8.3 }).stock.field).toBe(8.3);
  });
});

describe('names', () => {
  it.each([
    '../x',
    'a/b',
    'a\\b',
    'a.b',
    '.',
    '..',
    'con',
    'COM1',
    'nul',
    '-x',
    'x-',
    'a b',
    'é',
    '',
    ' ',
    'a\0b',
    'x'.repeat(65),
  ])('%j is refused', (name) => {
    expect(refusal({ name })).toMatch(/: name: /);
  });

  it.each(['a', 'tea-box-rosette', 'Lid2', 'console', 'x'.repeat(64)])('%s is taken', (name) => {
    expect(read({ name }).name).toBe(name);
  });

  it('suggests a name that would do', () => {
    expect(refusal({ name: 'Café au lait!' })).toContain('try "Cafe-au-lait"');
  });
});

describe('settings', () => {
  it('go over the recipe before it is checked', () => {
    const r = read({ depth: -1 }, [
      'depth=7',
      'cutter.diameter=3mm',
      'cutter.cuts=null',
      'woods.plug=cherry',
    ]);
    expect(r.depth).toBe(7);
    expect(r.cutter).toMatchObject({ diameter: 3, cuts: null });
    expect(r.woods.plug).toBe('black cherry');
  });

  it('add what is missing and take a value that looks like a number as text where text is meant', () => {
    const r = read({ roughing: undefined, pattern: { generator: 'lettering' } }, [
      'roughing.diameter=1/4in',
      'pattern.text=2026',
      'name=007',
    ]);
    expect(r.roughing).toMatchObject({ diameter: 6.35, open: false, stickout: 3 * 6.35 });
    expect(r.pattern).toMatchObject({ values: { text: '2026' } });
    expect(r.name).toBe('007');
  });

  it.each([
    ['cutter.diamter=3', /^--set: cutter\.diamter: is not a known key; did you mean "diameter"\?$/],
    ['cutter.diameter=0', /^--set: cutter\.diameter: 0 mm is out of range/],
    ['depth', /needs a key and a value/],
    ['=3', /needs a key and a value/],
    ['cutter..diameter=3', /is not a path/],
    ['name.x=3', /goes into something that holds no keys/],
    [`a${'.a'.repeat(50)}=1`, /deeper than any recipe value/],
  ])('%s is refused', (setting, message) => {
    expect(refusal({}, [setting])).toMatch(message);
  });

  it('changes nothing but what it names', () => {
    expect({ ...read({}, ['skin=2']), skin: 0 }).toEqual({ ...read(), skin: 0 });
  });
});

describe('any text at all', () => {
  const onlyBadInput = (text: string, settings: string[] = []): boolean => {
    try {
      readRecipe(text, 'x.json', settings);
    } catch (e) {
      if (!(e instanceof BadInput)) throw e;
      expect(e.faults.length).toBeGreaterThan(0);
      // Each fault is one line without anything a terminal would act on.
      for (const line of e.message.split('\n')) expect(line).not.toMatch(/[\p{Cc}]/u);
      expect(e.message.split('\n')).toHaveLength(e.faults.length);
    }
    return true;
  };

  it('a recipe with letters changed gives a recipe or bad input, nothing else', () => {
    const text = exampleText();
    const edit = fc.tuple(fc.nat(text.length), fc.nat(4), fc.string({ maxLength: 4, unit: 'binary' }));
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
        let t = text;
        for (const [at, cut, put] of edits) t = t.slice(0, at) + put + t.slice(at + cut);
        return onlyBadInput(t);
      }),
      { numRuns: 1500 },
    );
  });

  it('a recipe with values of any kind in any place gives a recipe or bad input', () => {
    const paths = [
      'name',
      'units',
      'depth',
      'skin',
      ...Object.entries(example).flatMap(([k, v]) =>
        typeof v === 'object' ? [k, ...Object.keys(v).map((n) => `${k}.${n}`)] : [],
      ),
    ];
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, value) =>
        onlyBadInput(exampleText({ [path]: value })),
      ),
      { numRuns: 1500 },
    );
  });

  it('any setting gives a recipe or bad input', () => {
    const text = exampleText();
    fc.assert(
      fc.property(
        fc.constantFrom('', 'name', 'cutter.', 'pattern.', 'a.b'),
        fc.string({ unit: 'binary' }),
        (key, rest) => onlyBadInput(text, [key + rest]),
      ),
      { numRuns: 1000 },
    );
  });
});

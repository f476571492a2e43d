import { describe, expect, it } from 'vitest';
import { Answerer } from '../../../src/page/worker/answer.js';
import type { Sources } from '../../../src/page/worker/assets.js';
import { VIEWS } from '../../../src/page/worker/protocol.js';
import { exampleText } from '../../recipe/example.js';
import { fromDisk, nowhere } from '../../support/card-sources.js';
import { answerer, drawn, measure, trouble, view } from './asking.js';

describe.each([
  ['coarsely', false],
  ['exactly', true],
] as const)('drawn %s', (_, exact) => {
  it.each([
    ['pattern.points', 'x', /whole number/],
    ['pattern.nope', 1, /not a known key/],
    ['pattern.generator', 'rosete', /did you mean "rosette"/],
    ['depth', 900, /out of range: 0\.1 mm to 150 mm/],
    ['cutter.diameter', '3 furlongs', /unit/],
    ['fit.plug', 'glued', /loose/],
    ['outline.diameter', -5, /out of range/],
  ])('a fault of %s is told about that key', async (key, value, message) => {
    const got = await trouble(answerer(), exampleText({ [key]: value }), exact);
    expect(got.recipe).toBeNull();
    expect(got.faults.map((f) => f.where)).toEqual([key]);
    expect(got.faults[0].message).toMatch(message);
    expect(got.faults[0].at).toBeNull();
  });

  it('every fault is told at once', async () => {
    const text = exampleText({ 'pattern.nope': 1, 'cutter.diameter': -3, depth: 'deep' });
    const got = await trouble(answerer(), text, exact);
    expect(got.faults.map((f) => f.where).sort()).toEqual(['cutter.diameter', 'depth', 'pattern.nope']);
  });

  it.each([
    ['', '', /^is empty/],
    ['{', '', /^line 1: not JSON: the text ends too early/],
    ['{\n  "name": "a",\n  "depth": 8,\n}', '', /^line 4: not JSON: \} is not expected/],
    ['{\n\n"name": plate}', '', /^line 3: not JSON/],
    ['[]', '', /an object in braces/],
    ['{"depth": 8,\n"depth": 9}', 'depth', /^is given twice \(first on line 1\): keep one/],
  ])('a text that is no recipe is told where it goes wrong: %j', async (text, where, message) => {
    const got = await trouble(answerer(), text, exact);
    expect(got.recipe).toBeNull();
    expect(got.faults[0].where).toBe(where);
    expect(got.faults[0].message).toMatch(message);
    expect(JSON.stringify(got.faults)).not.toMatch(/card/);
  });

  it('values at odds name their key, and the recipe is there, since it could be read', async () => {
    const got = await trouble(answerer(), exampleText({ 'outline.margin': 60 }), exact);
    expect(got.faults.map((f) => f.where)).toEqual(['outline.margin']);
    expect(got.recipe).toMatchObject({ name: 'test-piece', depth: 8 });
  });

  it('what a pattern refuses is told in its words', async () => {
    const dots = { generator: 'dots', size: 200, gap: 5 };
    const got = await trouble(answerer(), exampleText({ pattern: dots }), exact);
    expect(got.faults).toHaveLength(1);
    expect(got.faults[0].message).toMatch(/^pattern\.size: no whole dot of 200 mm fits/);
    expect(got.recipe?.name).toBe('test-piece');
  });

  it('a file that cannot be had is told about the key that names it', async () => {
    const none: Sources = {
      ...fromDisk,
      file: async (_, path) => Promise.reject(new Error(`no ${path} there`)),
    };
    const text = exampleText({ pattern: { generator: 'drawing', file: 'drawings/gone.svg' } });
    const got = await new Answerer(none, () => 0).answer({ ask: 'draw', text, origin: nowhere, exact });
    expect(got).toMatchObject({
      kind: 'trouble',
      recipe: { name: 'test-piece' },
      faults: [{ where: 'pattern.file', message: 'no drawings/gone.svg there', at: null }],
    });
  });

  it('after trouble the next text is drawn', async () => {
    const a = answerer();
    await trouble(a, '{', exact);
    await trouble(a, exampleText({ depth: 900 }), exact);
    expect((await drawn(a, exampleText(), exact)).stage).toBe(exact ? 'exact' : 'rounded');
  });
});

describe('a refusal', () => {
  const refused = exampleText({
    outline: { shape: 'rectangle', width: 100, height: 100, margin: 5 },
    pattern: { generator: 'dots', size: 5, gap: 60, centre: 'figure' },
    cutter: { diameter: 5, flute: 22, thin: 'refuse' },
    roughing: undefined,
  });

  it('has its place on the piece, y down', async () => {
    // The only dot lies in the middle, and moved by a layer's own place to the right and above it.
    const off = refused.replace(
      '"centre": "figure"',
      '"centre": "figure", "within": { "shape": "circle", "diameter": 30, "x": 20, "y": 25 }',
    );
    const got = await trouble(answerer(), off);
    expect(got.faults[0].where).toBe('');
    expect(got.faults[0].message).toMatch(/is narrower than .* use a smaller cutter/);
    expect(got.faults[0].at![0]).toBeCloseTo(20, 1);
    expect(got.faults[0].at![1]).toBeCloseTo(-25, 1);
    expect(got.recipe).not.toBeNull();
  });

  it('of the whole has none', async () => {
    const got = await trouble(answerer(), exampleText({ 'cutter.ease': 30, roughing: undefined }));
    expect(got.faults).toHaveLength(1);
    expect(got.faults[0]).toMatchObject({ at: null });
  });
});

describe('before anything is drawn exactly', () => {
  it.each(VIEWS)('there is no %s view, and nothing is wrong with that', async (name) => {
    const a = answerer();
    const nothing = { kind: 'trouble', recipe: null, faults: [] };
    expect(await a.answer({ ask: 'view', view: name, units: 'mm' })).toEqual(nothing);
    await drawn(a, exampleText(), false);
    expect(await a.answer({ ask: 'view', view: name, units: 'mm' })).toEqual(nothing);
    expect(await measure(a, 0, 0)).toBeNull();
  });

  it('nor after an exact drawing that was refused: nothing old is shown as if it were new', async () => {
    const a = answerer();
    await drawn(a, exampleText());
    expect((await view(a, 'gap')).view).toBe('gap');
    await trouble(a, exampleText({ 'cutter.thin': 'refuse', 'cutter.ease': 1.2 }));
    expect(await a.answer({ ask: 'view', view: 'gap', units: 'mm' })).toMatchObject({ kind: 'trouble' });
    expect(await measure(a, 0, 0)).toBeNull();
  });
});

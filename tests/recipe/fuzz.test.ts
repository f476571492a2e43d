import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/disk/load.js';
import { readLine } from '../../src/fit/log/read-line.js';
import { prove, readSvg } from '../../src/proof/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { readers, tryReferences } from '../support/reader-runs.js';
import { proofFiles, written } from '../support/reader-samples.js';
import { exampleText } from './example.js';

/** How many damaged files of each kind; the long tests take fifty thousand, on other seeds, and drawings and fonts too. */
const RUNS = {
  'recipe JSON': 300,
  'the fit log': 100,
  'job.json of a folder to replace': 200,
  'written drawings, by the proof': 150,
};

describe('a damaged file is read soundly or turned away in clear lines:', () => {
  for (const [name, runs] of Object.entries(RUNS))
    it(`${runs} of ${name}`, async () => {
      const { read, refused, faults } = await readers[name](0, runs);
      expect(faults).toEqual([]);
      expect(read).toBeGreaterThan(runs / 100);
      expect(refused).toBeGreaterThan(runs / 100);
    });
});

it("names and references that lead elsewhere write and read nothing outside the recipe's folder", async () => {
  const { read, refused, faults } = await tryReferences();
  expect(faults).toEqual([]);
  expect(read).toBeGreaterThan(0);
  expect(refused).toBeGreaterThan(200);
});

/** What the trials found. */
describe('found by these trials:', () => {
  const said = (text: string): string => {
    try {
      loadAssets(readRecipe(text, 'recipe.json'), 'recipe.json');
    } catch (e) {
      return (e as Error).message;
    }
    return '';
  };

  it('a number too large to hold is not shown as Infinity', () => {
    expect(said(exampleText({ depth: 1 }).replace('"depth": 1', '"depth": 1e999'))).toMatch(
      /^recipe.json:\d+: depth: (?!.*Infinity)/,
    );
  });

  it('a long key is shortened in the line that turns it away', () => {
    const long = exampleText({ depth: 1 }).replace('"depth"', `"${'W'.repeat(20_000)}"`);
    expect(said(long)).toMatch(/^recipe.json:\d+: W{40}\.{3}: is not a known key; .{10,600}$/m);
    const twice = long.replace(/("W+"): 1/, '$1: 1, $1: 2');
    expect(said(twice)).toMatch(/^recipe.json:\d+: W{40}\.{3}: is given twice.{0,600}$/m);
  });

  it("a log line's version that is too large to hold is damage", () => {
    expect(readLine('{"version":1e999}').kind).toBe('damaged');
  });

  it('a long name in a drawing is shortened in the line that refuses it', () => {
    expect(() => readSvg(`<svg ${'W'.repeat(20_000)}=x>`)).toThrow(/^.{20,400}$/);
  });

  const changed = (key: 'pocketSvg' | 'pocketDxf', from: RegExp, to: string): boolean => {
    const { files, asked } = JSON.parse(proofFiles(written('door-number')).sound);
    const text = files[key].replace(from, to);
    expect(text).not.toBe(files[key]);
    return prove({ ...files, [key]: text }, asked).holds;
  };

  it('a point at -1e308 mm fails the proof and does not throw', () => {
    expect(changed('pocketSvg', /L 133\.615979/, 'L -1e308')).toBe(false);
  });

  it.each(['1e308', '1e160', '5e-324'])(
    'an arc of a bulge of %s, as no arc has, fails the proof',
    (bulge) => {
      const of = /(POCKET\s+100\s+AcDbPolyline[\s\S]*?\n *42\r?\n)\S+/;
      expect(changed('pocketDxf', of, `$1${bulge}`)).toBe(false);
    },
  );

  it.each(['1e12', '1e155', '1e300'])('an arc of a radius of %s mm fails the proof at once', (radius) => {
    const before = process.cpuUsage();
    const of = /(id="pocket">[\s\S]*?A )\S+ \S+/;
    expect(changed('pocketSvg', of, `$1${radius} ${radius}`)).toBe(false);
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(2);
  });
});

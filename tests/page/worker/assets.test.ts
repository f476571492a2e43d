import { describe, expect, it } from 'vitest';
import { AssetStore, type Sources } from '../../../src/page/worker/assets.js';
import type { Origin } from '../../../src/page/worker/protocol.js';
import { readRecipe } from '../../../src/recipe/read.js';
import type { Recipe } from '../../../src/recipe/recipe.js';
import { BadInput } from '../../../src/schema/fault.js';
import { exampleText } from '../../recipe/example.js';
import { fromDisk, nowhere } from '../../support/card-sources.js';

/** The files of a folder, and a note of what was asked. */
function noted(files: Readonly<Record<string, Uint8Array>> = {}): { sources: Sources; asked: string[] } {
  const asked: string[] = [];
  const sources: Sources = {
    async file(origin, path) {
      asked.push(`${origin.file}: ${path}`);
      const bytes = files[path];
      return bytes ? (new Uint8Array(bytes).buffer as ArrayBuffer) : fromDisk.file(origin, path);
    },
    async font(origin, name, part) {
      asked.push(`${name} ${part}`);
      return fromDisk.font(origin, name, part);
    },
    async shaper() {
      asked.push('shaper');
      return fromDisk.shaper();
    },
  };
  return { sources, asked };
}

const recipe = (pattern: object): Recipe => readRecipe(exampleText({ pattern }), 'x.json');
const drawing = (file: string): Recipe => recipe({ generator: 'drawing', file });
const letters = (font: string): Recipe => recipe({ generator: 'lettering', text: 'A', font });
const at = (file: string): Origin => ({ ...nowhere, file });

const first = (parts: unknown): ArrayBuffer => (parts as readonly ArrayBuffer[])[0];

async function fault(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (e) {
    if (e instanceof BadInput) return e.faults.map((f) => `${f.where}: ${f.message}`).join('\n');
    throw e;
  }
  return '';
}

describe('what a recipe names', () => {
  it('is loaded once for a card, and anew for another', async () => {
    const { sources, asked } = noted();
    const store = new AssetStore(sources);
    for (const file of ['a.json', 'a.json', 'b.json', 'b.json', 'a.json'])
      await store.load(drawing('drawings/acorn.svg'), at(file));
    expect(asked).toEqual(['a.json', 'b.json', 'a.json'].map((f) => `${f}: drawings/acorn.svg`));
  });

  it('is another card when only the recipe that ships differs', async () => {
    const { sources, asked } = noted();
    const store = new AssetStore(sources);
    await store.load(drawing('drawings/acorn.svg'), { ...nowhere, shipped: 'one.json' });
    await store.load(drawing('drawings/acorn.svg'), { ...nowhere, shipped: 'two.json' });
    expect(asked).toHaveLength(2);
  });

  it('bundled fonts are kept for all cards', async () => {
    const { sources, asked } = noted();
    const store = new AssetStore(sources);
    for (const file of ['a.json', 'b.json']) {
      const { fonts, shaper } = await store.load(letters('arvo'), at(file));
      expect(first(fonts.get('arvo')).byteLength).toBeGreaterThan(1000);
      expect(shaper).toBeDefined();
    }
    expect(asked.filter((x) => x !== 'shaper')).toEqual(['arvo 0']);
  });

  it('starts no engine where no text is set', async () => {
    const { sources, asked } = noted();
    const got = await new AssetStore(sources).load(recipe({ generator: 'rosette' }), nowhere);
    expect(asked).toEqual([]);
    expect('shaper' in got).toBe(false);
  });

  it("may be a font of the maker's own, which is a file beside the card", async () => {
    const { sources, asked } = noted({ 'own.ttf': new Uint8Array([1, 2, 3]) });
    const { fonts } = await new AssetStore(sources).load(letters('own.ttf'), at('a.json'));
    expect([...new Uint8Array(first(fonts.get('own.ttf')))]).toEqual([1, 2, 3]);
    expect(asked[0]).toBe('a.json: own.ttf');
  });

  it('is read as UTF-8, and an old DXF in the code page of Windows', async () => {
    const umlaut = { 'a.dxf': new Uint8Array([0x57, 0xe4]), 'a.svg': new TextEncoder().encode('Wä') };
    const { sources } = noted(umlaut);
    const store = new AssetStore(sources);
    expect((await store.load(drawing('a.svg'), nowhere)).drawings.get('a.svg')).toBe('Wä');
    // 0xE4 is a with two dots in Windows-1252 (WHATWG Encoding, index windows-1252).
    expect((await store.load(drawing('a.dxf'), nowhere)).drawings.get('a.dxf')).toBe('Wä');
  });

  it('is refused where it is neither, by the key that names it', async () => {
    const { sources } = noted({
      'a.svg': new Uint8Array([0x57, 0xe4]),
      'b.dxf': new Uint8Array([0x57, 0xe4, 0]),
    });
    const store = new AssetStore(sources);
    expect(await fault(store.load(drawing('a.svg'), nowhere))).toMatch(/^pattern\.file: a\.svg is no UTF-8/);
    expect(await fault(store.load(drawing('b.dxf'), nowhere))).toMatch(/^pattern\.file: b\.dxf is no UTF-8/);
  });

  it('that failed once is asked for again', async () => {
    let fails = true;
    const sources: Sources = {
      ...fromDisk,
      file: (o, path) => (fails ? Promise.reject(new Error('the disk is asleep')) : fromDisk.file(o, path)),
      font: (o, n, k) => (fails ? Promise.reject(new Error('the disk is asleep')) : fromDisk.font(o, n, k)),
    };
    const store = new AssetStore(sources);
    const card = drawing('drawings/acorn.svg');
    expect(await fault(store.load(card, nowhere))).toBe('pattern.file: the disk is asleep');
    expect(await fault(store.load(letters('arvo'), nowhere))).toBe('pattern.font: the disk is asleep');
    fails = false;
    expect((await store.load(card, nowhere)).drawings.get('drawings/acorn.svg')).toMatch(/<svg/);
    expect((await store.load(letters('arvo'), nowhere)).fonts.size).toBe(1);
  });
});

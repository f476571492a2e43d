import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/disk/load.js';
import type { Layer } from '../../src/generators/layer.js';
import { WHOLE } from '../../src/generators/layer.js';
import { readRecipe } from '../../src/recipe/read.js';
import type { Recipe } from '../../src/recipe/recipe.js';
import { BadInput } from '../../src/schema/fault.js';
import type { Values } from '../../src/schema/parameter.js';
import { exampleText } from '../recipe/example.js';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'load-test-'));
  mkdirSync(join(dir, 'art'));
  writeFileSync(join(dir, 'a.svg'), '<svg>a</svg>');
  writeFileSync(join(dir, 'art', 'b.svg'), '<svg>b</svg>');
  writeFileSync(join(dir, 'art', 'utf16.svg'), Buffer.from('\uFEFF<svg/>', 'utf16le'));
  writeFileSync(join(dir, 'art', 'bom.svg'), '\uFEFF<svg/>');
  writeFileSync(join(dir, 'huge.svg'), '');
  truncateSync(join(dir, 'huge.svg'), 50_000_000);
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const plain = readRecipe(exampleText(), 'example.json');

function layer(generator: string, values: Values): Layer {
  return { generator, values, combine: 'union', clear: 0, nearby: 'cut', within: WHOLE };
}

function load(pattern: Recipe['pattern']): ReturnType<typeof loadAssets> {
  return loadAssets({ ...plain, pattern }, join(dir, 'recipe.json'));
}

function said(pattern: Recipe['pattern']): string {
  try {
    load(pattern);
  } catch (e) {
    if (e instanceof BadInput) return e.message;
    throw e;
  }
  throw new Error('was loaded');
}

describe('the drawings of a recipe', () => {
  it("are read from the recipe's folder, by the paths it gives, in every layer", () => {
    const { drawings } = load([
      layer('drawing', { file: 'a.svg' }),
      layer('star', { seed: 1 }),
      layer('drawing', { file: 'art/b.svg' }),
      layer('drawing', { file: './a.svg' }),
      layer('wallpaper', { motif: 'drawing', drawing: 'art/bom.svg' }),
    ]);
    expect([...drawings]).toEqual([
      ['a.svg', '<svg>a</svg>'],
      ['art/b.svg', '<svg>b</svg>'],
      ['./a.svg', '<svg>a</svg>'],
      ['art/bom.svg', '<svg/>'],
    ]);
  });

  it('are read only where they are asked for', () => {
    const none = load([
      layer('wallpaper', { motif: 'leaf', drawing: 'gone.svg' }),
      layer('star', { file: 'gone.svg' }),
    ]);
    expect(none.drawings.size).toBe(0);
    expect(none.fonts.size).toBe(0);
    expect(none.shaper).toBeUndefined();
  });

  it('are refused, by the path in the recipe, when they cannot be read, saying where they were looked for', () => {
    const where = (file: string): string => join(dir, file);
    expect(said(layer('drawing', { file: 'gone.svg' }))).toBe(
      `pattern.file: cannot read ${where('gone.svg')}: there is no such file or folder; give the path of an SVG or DXF file`,
    );
    expect(said([layer('star', {}), layer('frieze', { motif: 'drawing', drawing: 'art' })])).toBe(
      `pattern.1.drawing: ${where('art')} is a folder; give an SVG or DXF file, such as one in it`,
    );
    expect(said(layer('drawing', { file: 'a.svg/b.svg' }))).toMatch(/a part of the path is a file/);
    expect(said(layer('drawing', { file: 'huge.svg' }))).toBe(
      `pattern.file: ${where('huge.svg')} holds 50.0 MB; a drawing is 2 MB at most`,
    );
    expect(said(layer('drawing', { file: 'art/utf16.svg' }))).toMatch(
      /is not an SVG or DXF text: it is no UTF-8; save it as UTF-8/,
    );
  });

  it.each(['/etc/hosts', 'http://example.org/a.svg', 'file:///etc/hosts', 'data:image/svg+xml,a'])(
    'must lie at a path from the folder: not %s',
    (file) => {
      expect(said(layer('drawing', { file }))).toMatch(
        /^pattern\.file: ".*" must be a path from the recipe's folder/,
      );
    },
  );
});

describe('the fonts of a recipe', () => {
  const lettering = (font: string): Layer => layer('lettering', { font });

  it("are bundled ones by name and the user's own by path, with the shaper", () => {
    writeFileSync(join(dir, 'art', 'mine.ttf'), 'not looked at yet');
    const { fonts, shaper } = load([lettering('varela-round'), lettering('art/mine.ttf')]);
    expect([...fonts.keys()]).toEqual(['varela-round', 'art/mine.ttf']);
    expect([fonts.get('art/mine.ttf')].flat(2)[0]?.byteLength).toBe('not looked at yet'.length);
    expect(shaper).toBeDefined();
  });

  it('are refused, by the path in the recipe, when they cannot be read', () => {
    expect(said(lettering('fonts/gone.ttf'))).toBe(
      `pattern.font: cannot read ${join(dir, 'fonts/gone.ttf')}: there is no such file or folder; give the path of a TTF, OTF or WOFF font file`,
    );
    expect(said([layer('star', {}), lettering('/etc/x.ttf')])).toBe(
      `pattern.1.font: "/etc/x.ttf" must be a path from the recipe's folder, such as "fonts/mine.ttf"`,
    );
    expect(said(lettering('verala-round'))).toMatch(/is not a bundled font; did you mean "varela-round"\?/);
    truncateSync(join(dir, 'huge.svg'), 20_000_001);
    expect(said(lettering('./huge.svg'))).toMatch(
      /^pattern\.font: .* holds 20\.0 MB; a font is 20 MB at most$/,
    );
  });
});

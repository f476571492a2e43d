import { closeSync, fstatSync, openSync, readFileSync, readSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Assets } from '../generators/generator.js';
import type { Renderer } from '../output/renderer.js';
import { MAX_BYTES } from '../recipe/json.js';
import type { Recipe } from '../recipe/recipe.js';
import { BadInput } from '../schema/fault.js';
import { fileFault } from './files.js';

const require = createRequire(import.meta.url);

/** The text of a recipe file. Reads no more than a recipe may hold, whatever the file's size. Throws BadInput. */
export function loadRecipeText(path: string): string {
  const bytes = bounded(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw bad(path, 'is not a JSON text: it is no UTF-8; save it as UTF-8 text');
  }
}

function bounded(path: string): Uint8Array {
  let file: number;
  try {
    file = openSync(path, 'r');
  } catch (e) {
    throw fileFault(e, `cannot read ${path}`, 'give the path of a recipe file');
  }
  try {
    const stat = fstatSync(file);
    if (stat.isDirectory())
      throw bad(path, 'is a folder; give a recipe file, such as one in it that ends in .json');
    if (!stat.isFile()) throw bad(path, 'is not a file that can be read; give a recipe file');
    if (stat.size > MAX_BYTES)
      throw bad(path, `holds ${(stat.size / 1e6).toFixed(1)} MB; a recipe is a page of text, 1 MB at most`);
    const bytes = new Uint8Array(stat.size);
    let length = 0;
    for (let n = -1; n !== 0; length += n) n = readSync(file, bytes, length, bytes.length - length, null);
    return bytes.subarray(0, length);
  } catch (e) {
    throw e instanceof BadInput ? e : fileFault(e, `cannot read ${path}`, 'give the path of a recipe file');
  } finally {
    closeSync(file);
  }
}

/** What the recipe's generators need from outside: fonts, for lettering only. */
export function loadAssets(recipe: Recipe): Assets {
  const fonts = new Map<string, ArrayBuffer>();
  if ([recipe.pattern].flat().some((layer) => layer.generator === 'lettering')) {
    for (const [name, file] of FONT_FILES) {
      const bytes = readFileSync(require.resolve(file));
      fonts.set(
        name,
        bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer,
      );
    }
  }
  return { fonts, drawings: new Map() };
}

const FONT_FILES = [
  ['varela-round', '@fontsource/varela-round/files/varela-round-latin-400-normal.woff'],
] as const;

/** Starts the picture renderer. Its WASM takes a moment, so it is loaded only when something is drawn. */
export async function loadRenderer(): Promise<Renderer> {
  const { makeRenderer } = await import('../output/renderer.js');
  return makeRenderer(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm')));
}

function bad(path: string, message: string): BadInput {
  return new BadInput([{ where: '', message: `${path} ${message}` }]);
}

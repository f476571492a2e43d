import { closeSync, fstatSync, openSync, readFileSync, readSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, isAbsolute, join } from 'node:path';
import { drawingOf } from '../generators/drawing/named.js';
import { MOST_BYTES } from '../generators/drawing/xml.js';
import type { Assets } from '../generators/generator.js';
import type { Renderer } from '../output/renderer.js';
import { MAX_BYTES } from '../recipe/json.js';
import type { Recipe } from '../recipe/recipe.js';
import { BadInput } from '../schema/fault.js';
import { fileFault } from './files.js';

const require = createRequire(import.meta.url);

/** A kind of text file that is read. */
interface TextFile {
  readonly most: number;
  /** Words of the messages: what to give, its text, and how much it may hold. */
  readonly give: string;
  readonly text: string;
  readonly holds: string;
}

const RECIPE: TextFile = {
  most: MAX_BYTES,
  give: 'a recipe file',
  text: 'a JSON text',
  holds: 'a recipe is a page of text, 1 MB at most',
};

const DRAWING: TextFile = {
  most: MOST_BYTES,
  give: 'an SVG file',
  text: 'an SVG text',
  holds: `a drawing is ${MOST_BYTES / 1e6} MB at most`,
};

/** The text of a recipe file. Reads no more than a recipe may hold, whatever the file's size. Throws BadInput. */
export function loadRecipeText(path: string): string {
  return readText(path, RECIPE);
}

function readText(path: string, kind: TextFile): string {
  const bytes = bounded(path, kind);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw bad(path, `is not ${kind.text}: it is no UTF-8; save it as UTF-8 text`);
  }
}

function bounded(path: string, { most, give, holds }: TextFile): Uint8Array {
  let file: number;
  try {
    file = openSync(path, 'r');
  } catch (e) {
    throw fileFault(e, `cannot read ${path}`, `give the path of ${give}`);
  }
  try {
    const stat = fstatSync(file);
    if (stat.isDirectory()) throw bad(path, `is a folder; give ${give}, such as one in it`);
    if (!stat.isFile()) throw bad(path, `is not a file that can be read; give ${give}`);
    if (stat.size > most) throw bad(path, `holds ${(stat.size / 1e6).toFixed(1)} MB; ${holds}`);
    const bytes = new Uint8Array(stat.size);
    let length = 0;
    for (let n = -1; n !== 0; length += n) n = readSync(file, bytes, length, bytes.length - length, null);
    return bytes.subarray(0, length);
  } catch (e) {
    throw e instanceof BadInput ? e : fileFault(e, `cannot read ${path}`, `give the path of ${give}`);
  } finally {
    closeSync(file);
  }
}

/**
 * What the recipe's generators need from outside: fonts, for lettering, and the drawings that it names, by their paths
 * from the recipe's folder. Nothing else is read. Throws BadInput for a drawing that cannot be read.
 */
export function loadAssets(recipe: Recipe, recipePath: string): Assets {
  const fonts = new Map<string, ArrayBuffer>();
  const drawings = new Map<string, string>();
  const list = Array.isArray(recipe.pattern);
  [recipe.pattern].flat().forEach((layer, k) => {
    if (layer.generator === 'lettering') loadFonts(fonts);
    const named = drawingOf(layer);
    if (!named || drawings.has(named.file)) return;
    const where = `pattern.${list ? `${k}.` : ''}${named.key}`;
    drawings.set(named.file, loadDrawing(named.file, dirname(recipePath), where));
  });
  return { fonts, drawings };
}

function loadDrawing(file: string, folder: string, where: string): string {
  const fault = (message: string): BadInput => new BadInput([{ where, message }]);
  if (isAbsolute(file) || /^[a-z][a-z0-9+.-]*:/i.test(file))
    throw fault(
      `${JSON.stringify(file)} must be a path from the recipe's folder, such as "drawings/heron.svg"`,
    );
  try {
    return readText(join(folder, file), DRAWING);
  } catch (e) {
    throw e instanceof BadInput ? fault(e.message) : e;
  }
}

function loadFonts(fonts: Map<string, ArrayBuffer>): void {
  for (const [name, file] of FONT_FILES) {
    const bytes = readFileSync(require.resolve(file));
    fonts.set(name, bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
  }
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

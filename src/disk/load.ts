import { closeSync, fstatSync, openSync, readFileSync, readSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, isAbsolute, join } from 'node:path';
import { MOST_DXF } from '../generators/drawing/dxf/groups.js';
import { MOST_BYTES } from '../generators/drawing/xml.js';
import type { Assets } from '../generators/generator.js';
import { faces } from '../generators/lettering/faces.js';
import { faceFiles, fontChoice, fontFault } from '../generators/lettering/font-name.js';
import { MOST_FONT_BYTES } from '../generators/lettering/sfnt.js';
import { makeShaper, type Shaper } from '../generators/lettering/shaper.js';
import { wantedBy } from '../generators/wanted.js';
import type { PictureFont, Renderer } from '../output/renderer.js';
import { MAX_BYTES } from '../recipe/json.js';
import type { Recipe } from '../recipe/recipe.js';
import { BadInput } from '../schema/fault.js';
import type { Kernel } from '../solid/kernel.js';
import { fileFault } from './files.js';

const require = createRequire(import.meta.url);

/** A kind of file that is read. */
interface Kind {
  readonly most: number;
  /** Words of the messages: what to give, and how much it may hold. */
  readonly give: string;
  readonly holds: string;
}

/** A kind of text file; its text in words. */
interface TextFile extends Kind {
  readonly text: string;
}

const FONT: Kind = {
  most: MOST_FONT_BYTES,
  give: 'a TTF, OTF or WOFF font file',
  holds: `a font is ${MOST_FONT_BYTES / 1e6} MB at most`,
};

const RECIPE: TextFile = {
  most: MAX_BYTES,
  give: 'a recipe file',
  text: 'a JSON text',
  holds: 'a recipe is a page of text, 1 MB at most',
};

const DRAWING: TextFile = {
  most: MOST_BYTES,
  give: 'an SVG or DXF file',
  text: 'an SVG or DXF text',
  holds: `a drawing is ${MOST_BYTES / 1e6} MB at most`,
};

const DXF: TextFile = { ...DRAWING, most: MOST_DXF, holds: `a DXF is ${MOST_DXF / 1e6} MB at most` };

function drawingKind(path: string): TextFile {
  return /\.dxf$/i.test(path) ? DXF : DRAWING;
}

/** The text of a recipe file. Reads no more than a recipe may hold, whatever the file's size. Throws BadInput. */
export function loadRecipeText(path: string): string {
  return readText(path, RECIPE);
}

/** A drawing file's bytes, no more than a drawing may hold. Throws BadInput. */
export function loadDrawing(path: string): Uint8Array {
  return bounded(path, drawingKind(path));
}

/** The text of a drawing file from its bytes. Throws BadInput, naming the path, for bytes that are no text. */
export function drawingText(path: string, bytes: Uint8Array): string {
  return decoded(path, bytes, drawingKind(path));
}

function readText(path: string, kind: TextFile, where = ''): string {
  return decoded(path, bounded(path, kind, where), kind, where);
}

function decoded(path: string, bytes: Uint8Array, kind: TextFile, where = ''): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Older drawing programs write DXF in the code page of Windows; only names of layers and texts have such letters.
    if (kind === DXF && !bytes.includes(0)) return new TextDecoder('windows-1252').decode(bytes);
    throw bad(path, `is not ${kind.text}: it is no UTF-8; save it as UTF-8 text`, where);
  }
}

/** A file's bytes. Throws BadInput, about `where` in the recipe when that is given. */
function bounded(path: string, { most, give, holds }: Kind, where = ''): Uint8Array {
  const fault = (e: unknown): BadInput => {
    const found = fileFault(e, `cannot read ${path}`, `give the path of ${give}`);
    return where === '' ? found : new BadInput([{ where, message: found.message }]);
  };
  let file: number;
  try {
    file = openSync(path, 'r');
  } catch (e) {
    throw fault(e);
  }
  try {
    const stat = fstatSync(file);
    if (stat.isDirectory()) throw bad(path, `is a folder; give ${give}, such as one in it`, where);
    if (!stat.isFile()) throw bad(path, `is not a file that can be read; give ${give}`, where);
    if (stat.size > most) throw bad(path, `holds ${(stat.size / 1e6).toFixed(1)} MB; ${holds}`, where);
    const bytes = new Uint8Array(stat.size);
    let length = 0;
    for (let n = -1; n !== 0; length += n) n = readSync(file, bytes, length, bytes.length - length, null);
    return bytes.subarray(0, length);
  } catch (e) {
    throw e instanceof BadInput ? e : fault(e);
  } finally {
    closeSync(file);
  }
}

/**
 * What the recipe's generators need from outside: for lettering its fonts and the engine that shapes text, and the
 * drawings that it names. Fonts and drawings of the user's own lie at paths from the recipe's folder. Nothing else is
 * read. Throws BadInput for a drawing or a font that cannot be read.
 */
export function loadAssets(recipe: Recipe, recipePath: string): Assets {
  const folder = dirname(recipePath);
  const wanted = wantedBy(recipe.pattern);
  const fonts = new Map(wanted.fonts.map((f) => [f.name, loadFont(f.name, folder, f.where)]));
  const drawings = new Map(
    wanted.drawings.map(({ name, where }) => [
      name,
      readText(ownPath(name, folder, where, 'drawings/heron.svg'), drawingKind(name), where),
    ]),
  );
  return fonts.size === 0 ? { fonts, drawings } : { fonts, drawings, shaper: loadShaper() };
}

/** The path of a file that a recipe names. Throws BadInput for one that is no path from the recipe's folder. */
function ownPath(file: string, folder: string, where: string, example: string): string {
  if (isAbsolute(file) || /^[a-z][a-z0-9+.-]*:/i.test(file))
    throw new BadInput([
      {
        where,
        message: `${JSON.stringify(file)} must be a path from the recipe's folder, such as "${example}"`,
      },
    ]);
  return join(folder, file);
}

/** The files of a bundled font, or the one at a path from the recipe's folder. */
function loadFont(name: string, folder: string, where: string): ArrayBuffer[] {
  const choice = fontChoice(name);
  if (!choice) throw new BadInput([{ where, message: fontFault(name)! }]);
  const bytes =
    'face' in choice
      ? faceFiles(choice.face).map((file) => readFileSync(require.resolve(file)))
      : [bounded(ownPath(choice.path, folder, where, 'fonts/mine.ttf'), FONT, where)];
  return bytes.map((b) => new Uint8Array(b).buffer);
}

/** The text engine's WASM, compiled once. */
let shaper: Shaper | undefined;

export function loadShaper(): Shaper {
  shaper ??= makeShaper(readFileSync(require.resolve('harfbuzzjs/dist/harfbuzz.wasm')));
  return shaper;
}

/** The font of words in pictures: one of the bundled ones. */
export function loadPictureFont(): PictureFont {
  const [face] = faces;
  return { family: face!.title, bytes: readFileSync(require.resolve(face!.file)) };
}

/**
 * Starts the picture renderer, where that is not done. Its WASM takes a moment, so it is loaded only when something is
 * drawn; `compiled` for a thread, which need not compile again what another has.
 */
export async function loadRenderer(compiled?: WebAssembly.Module): Promise<Renderer> {
  const { makeRenderer } = await import('../output/renderer.js');
  return makeRenderer(() => compiled ?? rendererBytes());
}

/** The picture renderer compiled, for threads to share. */
export async function compileRenderer(): Promise<WebAssembly.Module> {
  return WebAssembly.compile(rendererBytes());
}

function rendererBytes(): Uint8Array<ArrayBuffer> {
  return readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm'));
}

function bad(path: string, message: string, where = ''): BadInput {
  return new BadInput([{ where, message: `${path} ${message}` }]);
}

/** Starts the library of solids; later calls reuse the first one's. Loaded only when a vessel is made. */
export async function loadKernel(): Promise<Kernel> {
  const { startKernel } = await import('../solid/kernel.js');
  return startKernel(readFileSync(require.resolve('manifold-3d/manifold.wasm')));
}

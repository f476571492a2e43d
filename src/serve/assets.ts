import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, posix } from 'node:path';
import { drawingText, loadShaper } from '../disk/load.js';
import { MOST_DXF } from '../generators/drawing/dxf/groups.js';
import { MOST_BYTES } from '../generators/drawing/xml.js';
import type { Assets } from '../generators/generator.js';
import { faceFiles, fontChoice, fontFault } from '../generators/lettering/font-name.js';
import { MOST_FONT_BYTES } from '../generators/lettering/sfnt.js';
import { wantedBy } from '../generators/wanted.js';
import type { Recipe } from '../recipe/recipe.js';
import { BadInput } from '../schema/fault.js';
import type { Kept } from '../wire.js';
import { Denied } from './denied.js';
import { inside, readInside } from './inside.js';
import { replace } from './recipes.js';

const require = createRequire(import.meta.url);

/** What a recipe may name, where such files are kept, and how large they may be. */
const KINDS: readonly { readonly ends: RegExp; readonly folder: string; readonly most: number }[] = [
  { ends: /\.svg$/i, folder: 'drawings', most: MOST_BYTES },
  { ends: /\.dxf$/i, folder: 'drawings', most: MOST_DXF },
  { ends: /\.(ttf|otf|woff)$/i, folder: 'fonts', most: MOST_FONT_BYTES },
];

function kindOf(path: string): (typeof KINDS)[number] {
  const kind = KINDS.find((k) => k.ends.test(path));
  if (!kind) throw new Denied(403, `${JSON.stringify(basename(path))} is no SVG, DXF, TTF, OTF or WOFF file`);
  return kind;
}

/** A drawing or font that the recipe `of` names, by its path from there; it lies within the folder served. */
export function readAsset(root: string, of: string, path: string): Buffer {
  const { most } = kindOf(path);
  return readInside(root, besideOf(of, path), most);
}

/** The path from the served folder of a path from a recipe's own. */
function besideOf(of: string, path: string): string {
  // Only what stays plain after joining is let through by `inside`; "../x" from a folder within may be plain again.
  return posix.join(dirname(of), path);
}

/** A file of a bundled font. */
export function readFont(name: string, part: number): Buffer {
  const choice = fontChoice(name);
  const file = choice && 'face' in choice ? faceFiles(choice.face)[part] : undefined;
  if (file === undefined) throw new Denied(404, 'no such font is bundled');
  return readFileSync(require.resolve(file));
}

/** All that a recipe of the folder needs, as the command line loads it, from within the folder. Throws BadInput. */
export function assetsWithin(root: string, of: string, recipe: Recipe): Assets {
  const wanted = wantedBy(recipe.pattern);
  const own = (name: string, where: string): Buffer => {
    try {
      return readAsset(root, of, name);
    } catch (e) {
      if (e instanceof Denied) throw new BadInput([{ where, message: e.message }]);
      throw e;
    }
  };
  const fonts = new Map(
    wanted.fonts.map(({ name, where }) => {
      const choice = fontChoice(name);
      if (!choice) throw new BadInput([{ where, message: fontFault(name)! }]);
      const files =
        'face' in choice ? faceFiles(choice.face).map((_, k) => readFont(name, k)) : [own(name, where)];
      return [name, files.map((b) => new Uint8Array(b).buffer)];
    }),
  );
  const drawings = new Map(
    wanted.drawings.map(({ name, where }) => [name, drawingText(name, own(name, where))]),
  );
  return fonts.size === 0 ? { fonts, drawings } : { fonts, drawings, shaper: loadShaper() };
}

/** Most files of one name that are told apart by a number. */
const MOST_TWINS = 99;

/**
 * Keeps a drawing or font beside a recipe. A file of that name with other content stays: the new one gets a number.
 * Returns its path from the recipe's folder.
 */
export function keepBeside(root: string, of: string, name: string, bytes: Buffer): Kept {
  const { folder, most, ends } = kindOf(name);
  if (bytes.length > most) throw new Denied(413, `that file holds more than ${most / 1e6} MB`);
  const ending = ends.exec(name)![0].toLowerCase();
  const stem = plainName(name.slice(0, -ending.length));
  for (let k = 1; k <= MOST_TWINS; k++) {
    const path = `${folder}/${stem}${k === 1 ? '' : `-${k}`}${ending}`;
    const from = besideOf(of, path);
    const there = contentAt(root, from, most);
    if (there === null) replace(inside(root, from), bytes, path);
    else if (!there.equals(bytes)) continue;
    return { path };
  }
  throw new Denied(409, `there are ${MOST_TWINS} files called ${stem} already`);
}

function contentAt(root: string, path: string, most: number): Buffer | null {
  try {
    return readInside(root, path, most);
  } catch (e) {
    if (e instanceof Denied && e.status === 404) return null;
    if (e instanceof Denied && e.status === 413) return Buffer.alloc(0);
    throw e;
  }
}

/** Letters, digits, hyphens and underscores; never empty. */
function plainName(stem: string): string {
  const plain = basename(stem.replaceAll('\\', '/'))
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9_-]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return plain === '' ? 'file' : plain;
}

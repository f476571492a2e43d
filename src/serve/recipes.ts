import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { errorCode, fileFault, makeFolder } from '../disk/files.js';
import { putFile } from '../disk/put.js';
import { BadInput } from '../schema/fault.js';
import { type Listed, MOST_TEXT, type Opened, type Save, type Saved } from '../wire.js';
import { Denied } from './denied.js';
import { inside, readInside } from './inside.js';

/** How deep recipes are looked for, how many are listed, and how many names are read for it. */
const DEEPEST = 4;
const MOST_LISTED = 500;
const MOST_NAMES = 5000;

/** Folders and files that hold no recipes. */
const NOT_THERE = new Set(['node_modules', 'dist', 'out']);
const NOT_THESE = new Set([
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'recipe.schema.json',
  'job.json',
]);

/** Tells a content from any other. */
export function versionOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('base64url').slice(0, 22);
}

/** The recipes below a folder, in the order of their paths. `out` is left out. */
export function listRecipes(root: string, out: string): Listed[] {
  const found: string[] = [];
  let names = 0;
  const walk = (folder: string, depth: number): void => {
    let entries: ReturnType<typeof entriesOf>;
    try {
      entries = entriesOf(join(root, folder));
    } catch {
      return; // Not ours to read.
    }
    for (const entry of entries) {
      if (++names > MOST_NAMES || found.length >= MOST_LISTED) return;
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (entry.name.startsWith('.') || join(root, path) === out) continue;
      if (entry.isDirectory() && depth < DEEPEST && !NOT_THERE.has(entry.name)) walk(path, depth + 1);
      else if (entry.isFile() && isRecipe(root, path)) found.push(path);
    }
  };
  walk('', 0);
  return found.map((file) => ({ file }));
}

function entriesOf(folder: string) {
  return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** A JSON file with a pattern, and an outline or a bowl for it. */
function isRecipe(root: string, path: string): boolean {
  if (!/\.json$/i.test(path) || NOT_THESE.has(basename(path))) return false;
  try {
    const tree: unknown = JSON.parse(readInside(root, path, MOST_TEXT).toString('utf8'));
    if (tree === null || typeof tree !== 'object') return false;
    return 'pattern' in tree && ('outline' in tree || 'bowl' in tree);
  } catch {
    return false;
  }
}

/** A recipe of the folder as it lies on disk. */
export function openRecipe(root: string, file: string): Opened & { readonly version: string } {
  checkName(file);
  const bytes = readInside(root, file, MOST_TEXT);
  return { file, text: textOf(bytes, file), version: versionOf(bytes) };
}

function textOf(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Denied(422, `${file} is no UTF-8 text`);
  }
}

function checkName(file: string): void {
  if (!/\.json$/i.test(file))
    throw new Denied(403, `${JSON.stringify(file)} is no recipe: its name ends in .json`);
}

/**
 * Writes a recipe over the version that the page last saw, or where there is none. Throws Denied 409 with what lies
 * there instead when that is another. The whole file is replaced at once. Between the look and the rename, a thousandth of a
 * second, an editor could still write: no system call replaces a file only if it is unchanged.
 */
export function saveRecipe(root: string, { file, text, over }: Save): Saved {
  checkName(file);
  checkJson(text, file);
  const place = inside(root, file);
  const now = versionAt(root, file, place);
  if (now !== over) {
    // The same words twice are no quarrel.
    if (now !== null && now === versionOf(Buffer.from(text))) return { version: now };
    throw now === null
      ? new Denied(410, `${file} is gone from the folder`, { file, text: '', version: null })
      : new Denied(409, `${file} was changed elsewhere`, openRecipe(root, file));
  }
  const bytes = Buffer.from(text);
  replace(place, bytes, file);
  return { version: versionOf(bytes) };
}

/** A text that is no JSON would be no recipe to anybody: the page cannot have made it. */
function checkJson(text: string, file: string): void {
  try {
    JSON.parse(text);
  } catch {
    throw new Denied(422, `what is to be saved as ${file} is no JSON`);
  }
}

function versionAt(root: string, file: string, place: string): string | null {
  return existsSync(place) ? versionOf(readInside(root, file, MOST_TEXT)) : null;
}

/** Replaces a file as a whole, its mode kept. Throws Denied with one line when the disk will not have it. */
export function replace(place: string, bytes: Uint8Array, name: string): void {
  try {
    makeFolder(dirname(place));
    putFile(place, bytes);
  } catch (e) {
    if (errorCode(e) === undefined) throw e;
    throw new Denied(507, lineOf(e, name));
  }
}

function lineOf(e: unknown, name: string): string {
  try {
    throw fileFault(e, `cannot write ${name}`, 'make its folder usable, or save it under another name');
  } catch (fault) {
    return fault instanceof BadInput ? fault.faults[0]!.message : 'cannot write';
  }
}

/** A recipe that ships. */
export function openShipped(patterns: string, name: string): Opened {
  if (!/^[a-z0-9-]+$/.test(name) || !existsSync(join(patterns, `${name}.json`)))
    throw new Denied(404, `no recipe of that name ships`);
  return { file: null, text: readFileSync(join(patterns, `${name}.json`), 'utf8'), version: null };
}

/** Names of the recipes that ship. */
export function shippedNames(patterns: string): string[] {
  return readdirSync(patterns)
    .filter((f) => f.endsWith('.json'))
    .map((f) => f.slice(0, -'.json'.length))
    .sort();
}

import { closeSync, constants, fstatSync, openSync, readSync, realpathSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { errorCode } from '../disk/files.js';
import { Denied } from './denied.js';

/** Longer paths are no maker's. */
const MOST = 400;

/**
 * The place on disk of a path from a folder, links resolved. Throws Denied for whatever could lead out of it: a path that
 * is not plain, and a link that points elsewhere. What is not there yet is placed below what is.
 */
export function inside(root: string, path: string): string {
  const parts = plainParts(path);
  const top = topOf(root);
  const wanted = join(top, ...parts);
  const there = nearest(wanted);
  const real = realpathSync(there);
  if (real !== top && !real.startsWith(top.endsWith(sep) ? top : top + sep)) throw outside(path);
  return real + wanted.slice(there.length);
}

function topOf(root: string): string {
  try {
    return realpathSync(root);
  } catch {
    throw new Denied(404, 'that folder is not there');
  }
}

/** The parts of a plain path: names one below the other, with forward slashes. */
function plainParts(path: string): string[] {
  const parts = path.split('/');
  const sound =
    path.length <= MOST &&
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is refused.
    !/[\\:\u0000-\u001f\u007f]/.test(path) &&
    parts.every((p) => p !== '' && !p.startsWith('.') && !/[. ]$/.test(p));
  if (!sound) throw outside(path);
  return parts;
}

function outside(path: string): Denied {
  const shown = JSON.stringify(path.length > 80 ? `${path.slice(0, 80)}...` : path);
  return new Denied(403, `${shown} is no plain path within the served folder`);
}

/** The path itself, or the nearest folder above it that is there. A link counts as there, wherever it leads. */
function nearest(path: string): string {
  for (let here = path; ; here = dirname(here)) {
    try {
      realpathSync(here);
      return here;
    } catch (e) {
      // A link to nowhere must not be written through either.
      if (errorCode(e) !== 'ENOENT' || isLink(here))
        throw new Denied(403, 'a link in that path leads nowhere');
    }
  }
}

function isLink(path: string): boolean {
  try {
    closeSync(openSync(path, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK));
    return false;
  } catch (e) {
    return errorCode(e) === 'ELOOP';
  }
}

/** The bytes of a file within the folder, at most `most`. Throws Denied, naming the path as it was given. */
export function readInside(root: string, path: string, most: number): Buffer {
  const place = inside(root, path);
  let file: number;
  try {
    // A pipe of that name would otherwise wait for its other end.
    file = openSync(place, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0));
  } catch (e) {
    const code = errorCode(e);
    if (code === undefined) throw e;
    throw code === 'ENOENT'
      ? new Denied(404, `there is no ${path} in the served folder`)
      : new Denied(403, `${path} cannot be read (${code})`);
  }
  try {
    const { size, ...stat } = statOf(file);
    if (!stat.isFile) throw new Denied(403, `${path} is no plain file`);
    if (size > most)
      throw new Denied(413, `${path} holds ${(size / 1e6).toFixed(1)} MB; ${most / 1e6} MB at most`);
    const bytes = Buffer.alloc(size);
    let length = 0;
    for (let n = -1; n !== 0 && length < size; length += n)
      n = readSync(file, bytes, length, size - length, null);
    return bytes.subarray(0, length);
  } catch (e) {
    const code = errorCode(e);
    throw code === undefined ? e : new Denied(403, `${path} cannot be read (${code})`);
  } finally {
    closeSync(file);
  }
}

function statOf(file: number): { size: number; isFile: boolean } {
  const stat = fstatSync(file);
  return { size: stat.size, isFile: stat.isFile() };
}

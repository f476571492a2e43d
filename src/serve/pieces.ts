import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { isOurs } from '../disk/folder.js';
import { nameFault } from '../recipe/name.js';
import { Denied } from './denied.js';
import { readInside } from './inside.js';

/** A made piece holds some hundred kilobytes; this is far more. */
const MOST = 200_000_000;

/** The earliest day a zip can name: the same piece is always the same zip. */
const DAY = '1980-01-01T00:00:00';

/** One file of a made piece. */
export function madeFile(out: string, name: string, file: string): Buffer {
  check(name);
  if (!isOurs(file)) throw new Denied(404, 'no such file is made');
  return readInside(out, `${name}/${file}`, MOST);
}

/** All files of a made piece as one zip, in a folder of its name. */
export function zipOf(out: string, name: string): Uint8Array {
  check(name);
  const files = namesIn(join(out, name)).filter(isOurs).sort();
  const content = Object.fromEntries(
    files.map((f) => [`${name}/${f}`, new Uint8Array(madeFile(out, name, f))]),
  );
  return zipSync(content, { mtime: DAY });
}

function check(name: string): void {
  if (nameFault(name)) throw new Denied(404, 'no such piece is made');
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    throw new Denied(404, 'no such piece is made yet');
  }
}

import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { BadInput } from '../schema/fault.js';

const WHY: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EBUSY: 'it is in use by another program',
  EEXIST: 'a file of that name is in the way',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  EIO: 'the disk reports an error',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'the name is too long',
  ENFILE: 'too many files are open',
  ENOENT: 'there is no such file or folder',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'a part of the path is a file, not a folder',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
};

/** The error code of a failed file operation, or undefined for any other error. */
export function errorCode(e: unknown): string | undefined {
  const code = e instanceof Error ? (e as NodeJS.ErrnoException).code : undefined;
  return typeof code === 'string' && /^E[A-Z]+$/.test(code) ? code : undefined;
}

/** A failed file operation as bad input, one line. Other errors are thrown as they are. */
export function fileFault(e: unknown, what: string, todo: string): BadInput {
  const code = errorCode(e);
  if (code === undefined) throw e;
  return new BadInput([{ where: '', message: `${what}: ${WHY[code] ?? code}; ${todo}` }]);
}

/** Why a file operation failed, in words. */
export function whyOf(e: unknown): string {
  const code = errorCode(e);
  return code === undefined ? String(e) : (WHY[code] ?? code);
}

/**
 * Makes a folder and those above it. Node's own recursive way never returns where the file system says ENOENT for a
 * folder that can hold none (/proc on Linux).
 */
export function makeFolder(path: string): void {
  try {
    mkdirSync(path);
  } catch (e) {
    if (errorCode(e) === 'EEXIST' && statSync(path).isDirectory()) return;
    const above = dirname(path);
    if (errorCode(e) !== 'ENOENT' || above === path || existsSync(above)) throw e;
    makeFolder(above);
    mkdirSync(path);
  }
}

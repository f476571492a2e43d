import { existsSync, readFileSync, rmdirSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { BadInput } from '../schema/fault.js';
import { fileFault, makeFolder } from './files.js';
import { quietly } from './leftovers.js';
import { putFile } from './put.js';

/** A file that a command writes beside a piece's folder. */
export interface Beside {
  readonly path: string;
  /** What it is, for messages. */
  readonly what: string;
  readonly content: string | Uint8Array;
  /** What to do about another file of that name, before "give another name with --name, or add --replace". */
  readonly instead?: string;
}

/** Throws BadInput when one of the files is there and differs. */
export function refuseOthers(files: readonly Beside[], replace: boolean): void {
  for (const { path, content, instead } of files) {
    const before = earlier(path);
    if (before === null || replace || before.equals(Buffer.from(content))) continue;
    throw new BadInput([
      {
        where: '',
        message: `${path} is there and differs from what would be written: ${instead === undefined ? '' : `${instead}, `}give another name with --name, or add --replace`,
      },
    ]);
  }
}

/**
 * Writes the files and makes the folder they lie in, all or none. Returns what takes them back and puts what was there
 * before in their place. `tell` gets a line for each.
 */
export function writeBeside(
  folder: string,
  files: readonly Beside[],
  tell: (line: string) => void,
): () => void {
  const missing = missingFolders(folder);
  const back: (() => void)[] = [() => missing.forEach(removeEmpty)];
  const undo = (): void => {
    for (const step of back.reverse()) quietly(step);
  };
  try {
    makeFolder(folder);
    for (const { path, what, content } of files) {
      const before = earlier(path);
      if (before?.equals(Buffer.from(content))) continue;
      back.push(() => (before === null ? rmSync(path, { force: true }) : putFile(path, before)));
      tell(`${before === null ? 'writing' : 'replacing'} ${what} ${path}`);
      putFile(path, content);
    }
    return undo;
  } catch (e) {
    undo();
    throw fileFault(e, `cannot write to ${folder}`, 'choose another folder with --out');
  }
}

/** The folder and those above it that are not there yet, the innermost first. */
function missingFolders(folder: string): string[] {
  if (existsSync(folder)) return [];
  const above = dirname(folder);
  return above === folder ? [folder] : [folder, ...missingFolders(above)];
}

function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // Not made, or somebody else has put something into it.
  }
}

/** What the file holds already, or null when there is none. */
function earlier(path: string): Buffer | null {
  try {
    return existsSync(path) ? readFileSync(path) : null;
  } catch (e) {
    throw fileFault(e, `cannot read ${path}`, 'choose another folder with --out');
  }
}

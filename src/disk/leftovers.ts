import { randomUUID } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { errorCode } from './files.js';

/*
 * What is being written, or is on its way out, has a hidden name with the number of its process in it, so that a later
 * run knows what dead ones left.
 */

export type Kind = 'new' | 'gone';

/** A place beside `folder/name` that no other run uses. */
export function temporary(folder: string, name: string, kind: Kind): string {
  return join(folder, `.${name}.${kind}-${process.pid}-${randomUUID().slice(0, 8)}`);
}

/** The places that runs which are dead left beside `folder/name`. */
export function leftovers(folder: string, name: string): string[] {
  const starts = [`.${name}.new-`, `.${name}.gone-`];
  return entries(folder)
    .filter((entry) => {
      const start = starts.find((s) => entry.startsWith(s));
      const pid = start === undefined ? null : /^(\d+)-[0-9a-f]{8}$/.exec(entry.slice(start.length));
      return pid !== null && !alive(Number(pid[1]));
    })
    .map((entry) => join(folder, entry));
}

/** The names in a folder; none when it is not there. */
export function entries(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch (e) {
    if (errorCode(e) === 'ENOENT') return [];
    throw e;
  }
}

/** Clears up: where even that fails there is something else to tell the user. */
export function quietly(work: () => void): void {
  try {
    work();
  } catch {
    // What is left is hidden, and the next run removes it.
  }
}

/** Whether a process is there; one of another user is. */
function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (e) {
    return errorCode(e) !== 'ESRCH';
  }
}

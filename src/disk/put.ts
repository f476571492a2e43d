import { randomUUID } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { errorCode } from './files.js';

/**
 * Replaces a file as a whole, its mode kept: written beside it, then renamed. What another file of that name holds stays
 * until then, whatever happens; what a killed run left beside it goes. Throws what the system says.
 */
export function putFile(path: string, content: string | Uint8Array): void {
  const [folder, name] = [dirname(path), basename(path)];
  const beside = join(folder, `.${name}.new-${process.pid}-${randomUUID().slice(0, 8)}`);
  try {
    removeLeft(folder, name);
    const mode = existsSync(path) ? statSync(path).mode & 0o777 : 0o666;
    const bytes = Buffer.from(content);
    const to = openSync(beside, 'wx', mode);
    try {
      for (let done = 0; done < bytes.length; ) done += writeSync(to, bytes, done);
      fsyncSync(to);
    } finally {
      closeSync(to);
    }
    renameSync(beside, path);
  } catch (e) {
    quietly(() => rmSync(beside, { force: true }));
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
export function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (e) {
    return errorCode(e) !== 'ESRCH';
  }
}

function removeLeft(folder: string, name: string): void {
  const start = `.${name}.new-`;
  for (const entry of readdirSync(folder)) {
    if (!entry.startsWith(start)) continue;
    const pid = /^(\d+)-[0-9a-f]{8}$/.exec(entry.slice(start.length))?.[1];
    if (pid !== undefined && !alive(Number(pid))) quietly(() => rmSync(join(folder, entry), { force: true }));
  }
}

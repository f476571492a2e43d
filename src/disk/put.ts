import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { leftovers, quietly, temporary } from './leftovers.js';

/**
 * Replaces a file as a whole, its mode kept: written beside it, then renamed. What another file of that name holds stays
 * until then, whatever happens; what a killed run left beside it goes. Throws what the system says.
 */
export function putFile(path: string, content: string | Uint8Array): void {
  const [folder, name] = [dirname(path), basename(path)];
  const beside = temporary(folder, name, 'new');
  try {
    for (const left of leftovers(folder, name)) quietly(() => rmSync(left, { force: true }));
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

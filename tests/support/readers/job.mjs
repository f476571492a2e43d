import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const SHEET = 'the sheet of before';

/** Makes a piece again whose folder holds a damaged job.json: it replaces what it knows as its own, and nothing else. */
export async function start(from, folder) {
  const { writeFolder } = await from('disk/folder.js');
  const out = join(folder, 'out');
  const target = join(out, 'lid');
  let turn = 0;
  return (bytes) => {
    rmSync(out, { recursive: true, force: true });
    // A run that was ended may have left it under the other name.
    const before = turn++ % 4 === 0 ? `${target}.old` : target;
    mkdirSync(before, { recursive: true });
    writeFileSync(join(before, 'job.json'), bytes);
    writeFileSync(join(before, 'sheet.html'), SHEET);
    const ours = isOurs(bytes);
    try {
      writeFolder(out, 'lid', new Map([['job.json', 'new']]));
    } catch (e) {
      if (ours) return `its own folder is refused: ${e.message}`;
      const kept =
        readFileSync(join(before, 'job.json')).equals(bytes) &&
        readFileSync(join(before, 'sheet.html'), 'utf8') === SHEET &&
        readdirSync(before).length === 2 &&
        readdirSync(out).length === 1;
      if (!kept) return 'refused, and yet something was changed';
      throw e;
    }
    if (!ours) return 'a folder that is none of ours was replaced';
    if (readdirSync(out).join() !== 'lid' || readdirSync(target).join() !== 'job.json') return 'a mixed folder';
    return readFileSync(join(target, 'job.json'), 'utf8') === 'new' ? '' : 'another file was written';
  };
}

/** As the words of design have it: an object that says its version, its recipe and its proof. */
function isOurs(bytes) {
  try {
    const job = JSON.parse(bytes.toString('utf8'));
    return !Array.isArray(job) && ['version', 'recipe', 'proof'].every((key) => Object.keys(job).includes(key));
  } catch {
    return false;
  }
}

/**
 * Gives damaged files to one of the built library's readers, in a process of its own. Started with the folder of the built
 * library (a URL), an empty folder of its own below two more, and the reader's name; each message is a list of files' bytes, each answer
 * how each of them ended.
 */
import { watchFiles } from './watch-files.mjs';

const [library, folder, name] = process.argv.slice(2);
const outside = watchFiles(folder, new URL('../', library));
const from = (file) => import(new URL(file, library));
const read = await import(`./readers/${name}.mjs`).then((reader) => reader.start(from, folder, outside));
const { BadInput, printable, Refusal } = await from('schema/fault.js');
const { Unreadable } = await from('proof/place.js');

process.on('message', (files) => process.send(files.map(tried)));
process.send('ready');

function tried(bytes) {
  const before = process.cpuUsage();
  const answer = ended(bytes);
  const { user, system } = process.cpuUsage(before);
  const far = outside.splice(0);
  if (far.length > 0) Object.assign(answer, { end: 'error', said: `went outside its folder: ${far.join(', ')}` });
  return { ...answer, seconds: (user + system) / 1e6, megabytes: process.resourceUsage().maxRSS / 1024 };
}

function ended(bytes) {
  try {
    // What is wrong with what was read; empty when nothing is.
    return { end: 'drawn', said: read(bytes) };
  } catch (e) {
    // As a command prints it.
    if (e instanceof BadInput) return { end: 'refused', said: e.message };
    if (e instanceof Refusal || e instanceof Unreadable) return { end: 'refused', said: printable(e.message) };
    return { end: 'error', said: String(e?.stack ?? e) };
  }
}

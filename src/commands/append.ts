import { closeSync, constants, fstatSync, fsyncSync, openSync, readSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { errorCode, fileFault } from '../disk/files.js';
import { BadInput } from '../schema/fault.js';

/*
 * A file of lines that is only ever added to. What is added goes out in one write() to a file opened with O_APPEND, then
 * fsync: the system puts the whole write behind the last byte, wherever another process has moved it, so two writers
 * cannot overwrite or mix (on a local disk; network disks make no such promise). A run that is killed, or a full disk,
 * can leave half a line. The next writer sees that the last byte is no line break and begins with one.
 */

const LINE_BREAK = 0x0a;
const OTHER_PLACE =
  'it has to stand beside the recipe: make that folder usable, or copy the recipe elsewhere';
/** A fit takes an hour to try and some 300 bytes to write down. */
const MOST_BYTES = 4_000_000;
/** A pipe of that name would otherwise wait for its other end for ever. Windows has no such thing. */
const NO_WAIT = constants.O_NONBLOCK ?? 0;

/** Adds whole lines to a file, which is made when there is none, and waits until the disk has them. Throws BadInput. */
export function append(path: string, bytes: Buffer): void {
  const fault = (e: unknown): BadInput => fileFault(e, `cannot write ${path}`, OTHER_PLACE);
  let file: number;
  try {
    file = openSync(path, constants.O_RDWR | constants.O_APPEND | constants.O_CREAT | NO_WAIT, 0o666);
  } catch (e) {
    throw fault(e);
  }
  try {
    const whole = endsWhole(file, path) ? bytes : Buffer.concat([Buffer.of(LINE_BREAK), bytes]);
    const written = writeSync(file, whole);
    fsyncSync(file);
    if (written < whole.length)
      throw new BadInput([
        {
          where: '',
          message: `cannot write ${path}: the disk is full, half a line was written; make room and record this again`,
        },
      ]);
  } catch (e) {
    throw e instanceof BadInput ? e : fault(e);
  } finally {
    closeSync(file);
  }
  syncFolder(dirname(path));
}

/** Whether the file ends with a line break, or is empty. */
function endsWhole(file: number, path: string): boolean {
  const stat = fstatSync(file);
  if (!stat.isFile()) throw new BadInput([{ where: '', message: `${path} is not a file; move it away` }]);
  const last = Buffer.alloc(1);
  return stat.size === 0 || readSync(file, last, 0, 1, stat.size - 1) === 0 || last[0] === LINE_BREAK;
}

/** A new file's name is safe only once its folder is. Some systems cannot do this and need not. */
function syncFolder(folder: string): void {
  let file: number;
  try {
    file = openSync(folder, 'r');
  } catch {
    return;
  }
  try {
    fsyncSync(file);
  } catch {
    // Windows and some network disks refuse: the line itself is on the disk.
  } finally {
    closeSync(file);
  }
}

/** All of a file; nothing when there is none. Throws BadInput. */
export function bytesOf(path: string): Buffer {
  let file: number;
  try {
    file = openSync(path, constants.O_RDONLY | NO_WAIT);
  } catch (e) {
    if (errorCode(e) === 'ENOENT') return Buffer.alloc(0);
    throw fileFault(e, `cannot read ${path}`, OTHER_PLACE);
  }
  try {
    const stat = fstatSync(file);
    if (!stat.isFile()) throw new BadInput([{ where: '', message: `${path} is not a file; move it away` }]);
    if (stat.size > MOST_BYTES)
      throw new BadInput([
        { where: '', message: `${path} is over ${MOST_BYTES / 1e6} MB: no log grows so large; move it away` },
      ]);
    const bytes = Buffer.alloc(stat.size);
    let length = 0;
    for (let n = -1; n !== 0; length += n) n = readSync(file, bytes, length, bytes.length - length, null);
    return bytes.subarray(0, length);
  } catch (e) {
    throw e instanceof BadInput ? e : fileFault(e, `cannot read ${path}`, OTHER_PLACE);
  } finally {
    closeSync(file);
  }
}

/** The lines without their breaks; what follows the last break is a line too, unless it is empty. */
export function linesOf(bytes: Buffer): Buffer[] {
  const lines: Buffer[] = [];
  let from = 0;
  for (let at = bytes.indexOf(LINE_BREAK); at >= 0; at = bytes.indexOf(LINE_BREAK, from)) {
    lines.push(bytes.subarray(from, at));
    from = at + 1;
  }
  if (from < bytes.length) lines.push(bytes.subarray(from));
  return lines;
}

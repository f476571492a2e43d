import { lstatSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Files } from '../output/job.js';
import { BadInput } from '../schema/fault.js';
import { errorCode, fileFault, makeFolder } from './files.js';
import { entries, leftovers, quietly, temporary } from './leftovers.js';

/*
 * A piece's folder is replaced as a whole. New files are written to a folder beside it; then NAME becomes NAME.old and
 * the new folder becomes NAME, and the old one goes. A run that is killed leaves, at worst, NAME.old and no NAME
 * (the next run puts it back) and a hidden folder with its process number (the next run removes it). There is no lock:
 * names beside are unique, and a rename that finds the place taken by another run starts over.
 */

/** Every file a piece's folder may hold. Anything else in it is somebody else's and must not be lost. */
const OURS = [
  'job.json',
  'picture.png',
  'picture.svg',
  'plug-layout.dxf',
  'plug-layout.svg',
  'plug.dxf',
  'plug.svg',
  'pocket-layout.dxf',
  'pocket-layout.svg',
  'pocket.dxf',
  'pocket.svg',
  'sheet.html',
];

/** The drawings of the second inlay and those after it, when there are several plug woods. */
const FURTHER = /^(?:pocket|plug)-(?:[2-9]|[1-9]\d)\.(?:dxf|svg)$/;

/** What a vessel's folder holds beside its stave's files. */
const VESSEL =
  /^(?:vessel\.(?:html|glb)|vessel-(?:outside|inside)\.png|unrolled-(?:outside|inside)\.png|vessel-(?:field|inlay-\d{1,2})\.stl|stock-(?:stave|shell|block-\d{1,2})\.stl|jig-(?:low|high)\.(?:svg|dxf))$/;

/** Whether a made piece's folder may hold a file of that name. */
export function isOurs(name: string): boolean {
  return OURS.includes(name) || FURTHER.test(name) || VESSEL.test(name);
}

/** Files that systems leave in any folder they show. */
const SYSTEM = ['.DS_Store', 'Thumbs.db', 'desktop.ini'];

const OTHER_OUT = 'choose another folder with --out';

/**
 * Makes `out/name` ready to be replaced: puts back an old result that a killed run moved aside, removes what dead
 * runs left, and throws BadInput when something is there that we did not make. Creates nothing.
 */
export function checkFolder(out: string, name: string): void {
  const target = join(out, name);
  const old = `${target}.old`;
  try {
    for (const left of leftovers(out, name)) rmSync(left, { recursive: true, force: true });
    if (exists(old)) {
      refuseForeign(old);
      if (exists(target)) discard(out, name, old);
      else moved(old, target);
    }
    if (exists(target)) refuseForeign(target);
  } catch (e) {
    throw fileFault(e, `cannot use ${target}`, OTHER_OUT);
  }
}

/** Writes the files as `out/name`, all or nothing, in place of an earlier result. Returns the folder's path. */
export function writeFolder(out: string, name: string, files: Files): string {
  const target = join(out, name);
  let beside: string | undefined;
  try {
    makeFolder(out);
    checkFolder(out, name);
    beside = temporary(out, name, 'new');
    mkdirSync(beside);
    for (const [file, content] of files) writeFileSync(join(beside, file), content);
    swap(out, name, beside);
    return target;
  } catch (e) {
    const left = beside;
    if (left !== undefined) quietly(() => rmSync(left, { recursive: true, force: true }));
    throw fileFault(e, `cannot write ${target}`, OTHER_OUT);
  }
}

function swap(out: string, name: string, beside: string): void {
  const target = join(out, name);
  const old = `${target}.old`;
  for (let tries = 0; tries < 100; tries++) {
    const aside = moved(target, old);
    if (aside === 'taken') {
      discard(out, name, old);
      continue;
    }
    try {
      if (moved(beside, target) === 'done') {
        // The new piece stands: what is left of the old one goes with the next run.
        quietly(() => discard(out, name, old));
        return;
      }
    } catch (e) {
      quietly(() => moved(old, target));
      throw e;
    }
  }
  throw new BadInput([
    { where: '', message: `another run keeps writing ${target}; wait for it and run this again` },
  ]);
}

/** Renames a folder: done, or there was none to rename, or the new name is taken. */
function moved(from: string, to: string): 'done' | 'none' | 'taken' {
  try {
    renameSync(from, to);
    return 'done';
  } catch (e) {
    const code = errorCode(e);
    if (code === 'ENOENT') return 'none';
    // Windows answers EPERM or EACCES when the new name is taken.
    if (code === 'ENOTEMPTY' || code === 'EEXIST') return 'taken';
    if ((code === 'EPERM' || code === 'EACCES') && exists(to)) return 'taken';
    throw e;
  }
}

/** Removes a folder that others may see: first out of sight in one step, then file by file. */
function discard(out: string, name: string, folder: string): void {
  const hidden = temporary(out, name, 'gone');
  if (moved(folder, hidden) === 'done') rmSync(hidden, { recursive: true, force: true });
}

function exists(path: string): boolean {
  return identity(path) !== null;
}

/** Throws BadInput when the path is there and not a result of ours. Another run may replace it meanwhile: then look again. */
function refuseForeign(path: string): void {
  for (;;) {
    const seen = identity(path);
    const why = seen === null ? null : whyForeign(path);
    if (why === null) return;
    if (identity(path) === seen) throw new BadInput([{ where: '', message: `${path} ${why}` }]);
  }
}

function whyForeign(path: string): string | null {
  if (!isResult(path))
    return 'exists and was not made by inlaywright; move it away or choose another folder with --out';
  const other = entries(path).find((f) => !isOurs(f) && !SYSTEM.includes(f));
  return other === undefined
    ? null
    : `holds ${other}, which inlaywright did not write; move it out first, so that it is not lost`;
}

/** What tells a folder from another that takes its name; null when there is none. */
function identity(path: string): string | null {
  const stat = lstatSync(path, { throwIfNoEntry: false });
  return stat ? `${stat.dev} ${stat.ino}` : null;
}

function isResult(path: string): boolean {
  try {
    if (!lstatSync(path).isDirectory()) return false;
    const job: unknown = JSON.parse(readFileSync(join(path, 'job.json'), 'utf8'));
    return typeof job === 'object' && job !== null && 'version' in job && 'recipe' in job && 'proof' in job;
  } catch (e) {
    // A file that cannot be read says nothing about whose it is.
    const code = errorCode(e);
    if (code !== undefined && code !== 'ENOENT' && code !== 'EISDIR') throw e;
    return false;
  }
}

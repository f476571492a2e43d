import { signal } from '@preact/signals';
import type { Listed, Opened } from '../../wire.js';
import { api } from '../api/client.js';
import { begun } from '../files/opening.js';
import { wordsOf } from '../files/words.js';
import { read } from '../state/edit.js';
import type { Start } from './entries.js';

/** Recipes of the folder, as it was when the book was opened last. */
export const files = signal<readonly string[]>([]);
/** The recipes that have been read, taken apart, by their entries' keys. */
export const trees = signal<ReadonlyMap<string, unknown>>(new Map());
/** What went wrong, for the reader of the book; '' for nothing. */
export const said = signal('');

/** How many recipes are read before the book shows what they say. */
const AT_ONCE = 16;

const asked = new Map<string, Promise<string>>();
/** Which opening of the book is going on; an older one reads no further. */
let opening = 0;

/** Looks what the folder holds, then reads every recipe once: what they say is what they are found by. */
export async function readAll(): Promise<void> {
  const mine = ++opening;
  said.value = '';
  for (const key of [...asked.keys()]) if (key.startsWith('folder:')) asked.delete(key);
  try {
    files.value = (await api<Listed[]>('GET', '/api/recipes')).map(({ file }) => file);
  } catch (e) {
    said.value = wordsOf(e);
  }
  const starts: Exclude<Start, { from: 'here' }>[] = [
    ...files.value.map((file) => ({ from: 'folder', file }) as const),
    ...(begun?.shipped ?? []).map((name) => ({ from: 'shipped', name }) as const),
  ];
  for (let k = 0; k < starts.length && mine === opening; k += AT_ONCE) {
    const read = await Promise.allSettled(starts.slice(k, k + AT_ONCE).map(treeOf));
    const more = new Map(trees.value);
    read.forEach((r, i) => {
      if (r.status === 'fulfilled') more.set(keyOf(starts[k + i]!), r.value);
    });
    trees.value = more;
  }
}

/** The book is closed: nobody waits for more. */
export function stopReading(): void {
  opening++;
}

/** Each is taken apart as it comes, so that many do not hold the page up. */
async function treeOf(start: Start): Promise<unknown> {
  return read(await textOf(start));
}

/** The recipe of an entry, read once; those of the folder once each time the book is opened. */
export function textOf(start: Start): Promise<string> {
  if (start.from === 'here') return Promise.resolve(start.text);
  const key = keyOf(start);
  const before = asked.get(key);
  if (before) return before;
  const query: Record<string, string> =
    start.from === 'folder' ? { file: start.file } : { shipped: start.name };
  const text = api<Opened>('GET', '/api/recipe', { query }).then((opened) => opened.text);
  asked.set(key, text);
  text.catch(() => asked.delete(key));
  return text;
}

/** The key of the entry that begins so. */
export function keyOf(start: Exclude<Start, { from: 'here' }>): string {
  return start.from === 'folder' ? `folder:${start.file}` : `shipped:${start.name}`;
}

/** The recipe that ships which an entry's drawings and fonts lie beside; null: they lie in the folder, or nowhere. */
export function shippedFor(start: Start): string | null {
  if (start.from === 'folder') return null;
  // A pattern's sample names the drawings that ship; any recipe that ships lies beside them.
  return start.from === 'shipped' ? start.name : (begun?.shipped[0] ?? null);
}

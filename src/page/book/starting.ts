import { signal } from '@preact/signals';
import { openFile } from '../files/opening.js';
import { save } from '../files/saving.js';
import { wordsOf } from '../files/words.js';
import { notice } from '../state/bench.js';
import { clash, lay, unsaved } from '../state/card.js';
import type { BookEntry } from './entries.js';
import { said, shippedFor, textOf } from './recipes.js';

/** The entry that was chosen while the card has changes that are not saved; null: nothing is asked. */
export const asking = signal<BookEntry | null>(null);
/** Why saving first did not do; '' for nothing to say. */
export const unsavedBecause = signal('');

let busy = false;

/** Lays what an entry begins with on the bench. True when it lies there; false when something is asked or went wrong. */
export async function begin(entry: BookEntry): Promise<boolean> {
  if (busy) return false;
  if (unsaved.value) {
    unsavedBecause.value = '';
    asking.value = entry;
    return false;
  }
  return laid(entry);
}

/** Saves the card, then begins with what was chosen. */
export async function saveThenBegin(): Promise<boolean> {
  const entry = asking.value;
  if (!entry || busy) return false;
  busy = true;
  notice.value = '';
  unsavedBecause.value = '';
  const saved = await save();
  busy = false;
  if (saved) return laid(entry);
  unsavedBecause.value = clash.value
    ? 'The file was changed elsewhere meanwhile. Go back to the card: it asks which of the two is to hold.'
    : notice.value;
  return false;
}

/** Begins with what was chosen; the card's changes go. */
export async function leaveThenBegin(): Promise<boolean> {
  return asking.value !== null && !busy && laid(asking.value);
}

async function laid(entry: BookEntry): Promise<boolean> {
  busy = true;
  asking.value = null;
  said.value = '';
  const { start } = entry;
  try {
    if (start.from === 'folder') await openFile(start.file);
    else lay({ text: await textOf(start), path: null, version: null, shipped: shippedFor(start) });
    return true;
  } catch (e) {
    said.value = wordsOf(e);
    return false;
  } finally {
    busy = false;
  }
}

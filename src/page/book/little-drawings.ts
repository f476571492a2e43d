import { type Signal, signal } from '@preact/signals';
import { idle } from '../drawing/views.js';
import { wordsOf } from '../files/words.js';
import { token } from '../state/card.js';
import { smallHand } from '../state/hands.js';
import type { Figure } from '../worker/protocol.js';
import type { BookEntry } from './entries.js';
import { Queue } from './queue.js';
import { shippedFor, textOf } from './recipes.js';

/** What shows an entry: nothing yet, its drawing, or why there is none. */
export type Little = { readonly figure: Figure } | { readonly trouble: string } | null;

interface Kept {
  readonly shown: Signal<Little>;
  /** The recipe that was drawn. */
  text: string | null;
}

/** For the life of the page. */
const kept = new Map<string, Kept>();
const queue = new Queue();
let entries: ReadonlyMap<string, BookEntry> = new Map();
let busy = false;

/** What shows an entry, as it comes. */
export function littleOf(key: string): Signal<Little> {
  return keptOf(key).shown;
}

/** Entries came into sight, or went out of it; those in sight are drawn one at a time. */
export function see(
  all: ReadonlyMap<string, BookEntry>,
  come: readonly string[],
  gone: readonly string[],
): void {
  entries = all;
  queue.leave(gone);
  queue.want(come);
  void work();
}

/** The book is closed: what is not drawn yet waits until it is seen again, and so does what could not be drawn. */
export function stopDrawing(): void {
  queue.clear();
  for (const k of kept.values()) {
    if (k.shown.value && 'trouble' in k.shown.value) Object.assign(k, { text: null }).shown.value = null;
  }
}

function keptOf(key: string): Kept {
  const before = kept.get(key);
  if (before) return before;
  const made: Kept = { shown: signal(null), text: null };
  kept.set(key, made);
  return made;
}

async function work(): Promise<void> {
  if (busy) return;
  busy = true;
  for (let key = queue.take(); key !== undefined; key = queue.take()) {
    const entry = entries.get(key);
    if (entry) await draw(entry, keptOf(key));
  }
  busy = false;
}

async function draw({ start }: BookEntry, to: Kept): Promise<void> {
  try {
    const text = await textOf(start);
    if (to.text === text) return;
    const origin = {
      token: token.value,
      file: start.from === 'folder' ? start.file : null,
      shipped: shippedFor(start),
    };
    const got = await smallHand.ask({ ask: 'thumbnail', text, origin });
    // A large drawing is put on the page when nobody scrolls or types.
    await idle(100);
    to.text = text;
    to.shown.value =
      got.kind === 'thumbnail'
        ? { figure: got.figure }
        : { trouble: got.faults[0]?.message ?? 'it cannot be drawn' };
  } catch (e) {
    to.shown.value = { trouble: wordsOf(e) };
  }
}

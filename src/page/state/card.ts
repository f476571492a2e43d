import { computed, signal } from '@preact/signals';
import type { JSONPath } from 'jsonc-parser';
import type { Units } from '../../schema/units.js';
import type { Book, Drawn, Origin, Trouble } from '../worker/protocol.js';
import { read, type Written, withValue, writtenAt } from './edit.js';
import { begun, closed, type History, redone, stepped, undone } from './history.js';

/*
 * The card as it stands: one text, from which everything else follows. What changes it goes through here; who draws it
 * listens to `asked`.
 */

const history = signal<History>(begun(''));

/** The recipe's text as it stands on the card. */
export const text = computed(() => history.value.now);
/** The same taken apart: what JSON says, as far as it is JSON. */
export const tree = computed(() => read(text.value));
export const canUndo = computed(() => history.value.past.length > 0);
export const canRedo = computed(() => history.value.future.length > 0);

/** What is to be drawn, and how finely; set by every change. */
export const asked = signal<{ readonly text: string; readonly exact: boolean }>({ text: '', exact: true });

/** What the workers made of it: the last drawing that could be made, and what is wrong with the text now. */
export const drawn = signal<Drawn | null>(null);
export const trouble = signal<Trouble | null>(null);
/** A drawing of what stands on the card is under way. */
export const drawing = signal(false);

/** The file behind the card: its path, and version and text as the page last saw them on disk. */
export const file = signal<{
  readonly path: string | null;
  readonly version: string | null;
  readonly saved: string | null;
}>({ path: null, version: null, saved: null });
/** The recipe that ships from which the card began, until it is saved with its drawings. */
export const shipped = signal<string | null>(null);
export const unsaved = computed(() => text.value !== '' && file.value.saved !== text.value);

/** What lies on disk when it changed while the card has changes of its own; null: no clash. */
export const clash = signal<{ readonly text: string; readonly version: string } | null>(null);

/** In which unit lengths are shown and typed; the recipe keeps its own. */
export const shownIn = signal<Units>('mm');
export const token = signal('');
export const book = signal<Book | null>(null);

export const origin = computed<Origin>(() => ({
  token: token.value,
  file: file.value.path,
  shipped: shipped.value,
}));

/** Puts another card on the bench; its history begins anew. */
export function lay(next: {
  text: string;
  path: string | null;
  version: string | null;
  shipped: string | null;
}): void {
  history.value = begun(next.text);
  file.value = { path: next.path, version: next.version, saved: next.path === null ? null : next.text };
  shipped.value = next.shipped;
  clash.value = null;
  drawn.value = null;
  trouble.value = null;
  asked.value = { text: next.text, exact: true };
}

/** Changes the text. `of` names what is being dragged: all its steps are one to undo, and are drawn coarsely. */
export function change(next: string, of: string | null = null): void {
  history.value = stepped(history.value, next, of);
  asked.value = { text: next, exact: of === null };
}

/** Sets one value, or takes its key out. */
export function set(path: JSONPath, value: Written | undefined, of: string | null = null): void {
  change(withValue(text.value, path, value), of);
}

/** What the text says at a path, as written. */
export function at(path: JSONPath): Written | undefined {
  return writtenAt(tree.value, path);
}

/** The drag is over: draw exactly what it left. */
export function settle(): void {
  history.value = closed(history.value);
  asked.value = { text: text.value, exact: true };
}

export function undo(): void {
  go(undone(history.value));
}

export function redo(): void {
  go(redone(history.value));
}

function go(to: History): void {
  if (to === history.value) return;
  history.value = to;
  asked.value = { text: to.now, exact: true };
}

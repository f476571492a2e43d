import type { Change, Opened } from '../../wire.js';
import { api, lines } from '../api/client.js';
import { notice } from '../state/bench.js';
import { change, clash, file, text, unsaved } from '../state/card.js';

/** How long to wait before asking again a server that went away, ms. */
const AGAIN = 2000;

/** Follows what others write to the folder: an editor's change shows on the card, or asks when both changed. */
export async function followChanges(): Promise<never> {
  for (;;) {
    try {
      for await (const line of lines('/api/changes', { method: 'GET' })) await taken(line as Change);
    } catch {
      // The server went away or sleeps: what is on the card stays, and saving says so.
    }
    await new Promise((go) => setTimeout(go, AGAIN));
  }
}

async function taken({ file: path, version }: Change): Promise<void> {
  const mine = file.peek();
  if (path !== mine.path || version === mine.version) return;
  if (version === null) {
    file.value = { path, version: null, saved: null };
    notice.value = `${path} is gone from the folder; saving writes it anew.`;
    return;
  }
  const there = await api<Opened>('GET', '/api/recipe', { query: { file: path } });
  // It may have been our own save, which came back before its answer.
  if (there.text === text.peek()) {
    file.value = { path, version: there.version, saved: there.text };
    clash.value = null;
  } else if (unsaved.peek()) clash.value = { text: there.text, version: there.version! };
  else take(there);
}

/** Puts what lies on disk on the card; undoing it brings back what was there. */
export function take({ text: theirs, version }: { text: string; version: string | null }): void {
  file.value = { path: file.value.path, version, saved: theirs };
  clash.value = null;
  change(theirs);
  notice.value = 'The file was changed elsewhere: the card shows it as it is now.';
}

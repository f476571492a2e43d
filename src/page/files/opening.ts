import type { Opened, Start } from '../../wire.js';
import { api } from '../api/client.js';
import { choosing, notice } from '../state/bench.js';
import { lay, token } from '../state/card.js';
import { wordsOf } from './words.js';

/** What the server said when the page began. */
export let begun: Start | null = null;

/** Takes the run's token from the address, then opens the recipe that was named, or else the pattern book. */
export async function startCard(): Promise<void> {
  token.value = location.hash.slice(1);
  if (token.value === '') {
    notice.value = 'This address lacks its key: open the one that inlaywright serve printed.';
    return;
  }
  try {
    begun = await api<Start>('GET', '/api/start');
    if (begun.open === null) choosing.value = true;
    else await openFile(begun.open);
  } catch (e) {
    notice.value = wordsOf(e);
  }
}

/** Lays a recipe of the folder on the bench. */
export async function openFile(path: string): Promise<void> {
  const { file, text, version } = await api<Opened>('GET', '/api/recipe', { query: { file: path } });
  lay({ text, path: file, version, shipped: null });
}

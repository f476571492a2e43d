import { computed, signal } from '@preact/signals';
import type { Made, Make, Making } from '../../wire.js';
import { bytesOf, lines } from '../api/client.js';
import { notice } from '../state/bench.js';
import { file, text, token } from '../state/card.js';
import { save } from './saving.js';
import { wordsOf } from './words.js';

/** The steps of making a piece, in their order. */
export const STEPS = ['reading', 'building', 'drawing', 'proving', 'modelling', 'writing'] as const;
export type Step = (typeof STEPS)[number];

/** What is being made, or was: its step, or what came of it. */
export const making = signal<
  | { readonly now: Step }
  | { readonly made: Made; readonly of: string }
  | { readonly wrong: readonly string[] }
  | null
>(null);

/** The piece last made, and whether the card has changed since. */
export const made = computed(() => (making.value && 'made' in making.value ? making.value : null));
export const stale = computed(() => made.value !== null && made.value.of !== text.value);

let running: AbortController | null = null;

/** Saves the card, then has the server make the piece as the command line does. */
export async function makePiece(): Promise<void> {
  if (running || !(await save())) return;
  const of = text.value;
  const stop = new AbortController();
  running = stop;
  making.value = { now: 'reading' };
  try {
    const json = { file: file.value.path!, text: of } satisfies Make;
    for await (const line of lines('/api/make', { method: 'POST', json, signal: stop.signal })) {
      const said = line as Making;
      if ('step' in said) making.value = { now: said.step };
      else if ('made' in said) making.value = { made: said.made, of };
      else making.value = { wrong: said.wrong.lines };
    }
    if (making.value && 'now' in making.value)
      making.value = { wrong: ['The server stopped in the middle of it.'] };
  } catch (e) {
    making.value = stop.signal.aborted ? null : { wrong: [wordsOf(e)] };
    if (stop.signal.aborted) notice.value = 'Stopped: nothing was written.';
  } finally {
    running = null;
  }
}

export function stopMaking(): void {
  running?.abort();
}

/** Where a file of the made piece can be looked at. */
export function addressOf({ name }: Made, file: string): string {
  return `/made/${token.value}/${name}/${file}`;
}

/** Hands all files of the made piece to the browser as one zip. */
export async function fetchZip({ name }: Made): Promise<void> {
  try {
    const url = URL.createObjectURL(new Blob([await bytesOf('/api/zip', { query: { name } })]));
    const link = Object.assign(document.createElement('a'), { href: url, download: `${name}.zip` });
    link.click();
    // The download has its own hold on it by then.
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
  } catch (e) {
    notice.value = wordsOf(e);
  }
}

/** Opens the sheet and asks the browser to print it. */
export function printSheet(piece: Made): void {
  const sheet = window.open(addressOf(piece, 'sheet.html'), '_blank');
  if (sheet) sheet.addEventListener('load', () => sheet.print());
  else notice.value = 'The browser kept the sheet from opening: allow new windows for this page.';
}

import { ApiWrong } from '../api/client.js';

/** What went wrong, for the maker to read. */
export function wordsOf(e: unknown): string {
  if (e instanceof ApiWrong) return e.lines.join(' ');
  if (e instanceof TypeError)
    return 'The server does not answer: is inlaywright serve still running? What is on the card is kept here.';
  return e instanceof Error ? e.message : String(e);
}

import { distance } from 'fastest-levenshtein';

/** The known word a user most likely meant: nearest by edits, case set aside. Null when none is near. */
export function nearest(word: string, known: readonly string[]): string | null {
  const given = word.slice(0, 60).toLowerCase();
  let best: string | null = null;
  // A word may be off by 2 edits, or by two fifths of its letters when it is long, and still be the one meant.
  let least = Math.max(2, Math.floor(given.length * 0.4)) + 1;
  for (const k of known) {
    const lower = k.toLowerCase();
    const d =
      given.length >= 3 && (lower.startsWith(given) || lower.endsWith(given)) ? 1 : distance(given, lower);
    if (d < least) [best, least] = [k, d];
  }
  return best;
}

/** The end of a sentence about an unknown word: the one that was meant, or all there are. */
export function suggestion(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  return near === null ? `known: ${known.join(', ')}` : `did you mean ${JSON.stringify(near)}?`;
}

import type { Placed } from './layout.js';
import type { SetLine } from './set.js';
import { wordAt } from './text.js';

/** What a piece's letters are called: "letter 3 'e' in 'Orchard'", "letters 1-7 'Orchard'"; places in the whole text. */
export function pieceName(set: SetLine, letters: readonly Pick<Placed, 'cluster'>[]): string {
  const { line } = set;
  const from = Math.min(...letters.map((l) => l.cluster.from));
  const to = Math.max(...letters.map((l) => l.cluster.to));
  const own = line.text.slice(from, to).trimEnd();
  const first = line.places[from]!;
  const last = line.places[from + own.length - 1]!;
  const word = wordAt(line, from);
  const which = first === last ? `letter ${first}` : `letters ${first}-${last}`;
  return own.length > 1 && own === word ? `${which} '${own}'` : `${which} '${own}' in '${word}'`;
}

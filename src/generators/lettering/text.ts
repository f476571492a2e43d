import { bad } from '../values.js';

/** One line of the text. */
export interface TextLine {
  readonly text: string;
  /** Number of the line, 1 for the first. */
  readonly number: number;
  /** Place in the whole text of the character at each UTF-16 unit: 1 for the first; spaces and line ends count. */
  readonly places: readonly number[];
}

/**
 * The text's lines, canonically composed (NFC), blank ones at its ends left out. Throws BadInput, with the place, for
 * a control character, and for a text with nothing in it.
 */
export function linesOf(given: string): TextLine[] {
  const text = given.normalize('NFC').replaceAll('\r\n', '\n');
  const lines: TextLine[] = [];
  let place = 0;
  text.split('\n').forEach((line, k) => {
    const places: number[] = [];
    Array.from(line).forEach((character, i) => {
      place++;
      if (/[\p{Cc}\p{Cs}\u2028\u2029\uFFFE\uFFFF]/u.test(character))
        throw bad(
          'text',
          `holds a control character, ${codePoint(character)}, in line ${k + 1} at character ${i + 1}; take it out (only \\n, which starts a new line, may stand there)`,
        );
      for (let u = 0; u < character.length; u++) places.push(place);
    });
    place++; // the line's end
    lines.push({ text: line, number: k + 1, places });
  });
  const inked = lines.map((l) => l.text.trim() !== '');
  if (!inked.includes(true)) throw bad('text', 'is empty; give at least one letter');
  return lines.slice(inked.indexOf(true), inked.lastIndexOf(true) + 1);
}

/** The word that stands round a place in a line, UTF-16 units. */
export function wordAt({ text }: TextLine, at: number): string {
  let from = at;
  let to = at;
  while (from > 0 && !/\s/.test(text[from - 1]!)) from--;
  while (to < text.length && !/\s/.test(text[to]!)) to++;
  return text.slice(from, to);
}

/** A character's code point as Unicode writes it: U+0041. */
export function codePoint(character: string): string {
  return `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
}

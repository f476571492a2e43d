import { NUMBER } from './numbers.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';

/** How many numbers each command takes. */
const COUNTS = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 } as const;

export interface Command {
  readonly letter: keyof typeof COUNTS;
  readonly relative: boolean;
  readonly numbers: readonly number[];
}

const SPACE = /[ \t\n\f\r]*/y;
const GAP = /[ \t\n\f\r]*(,?)[ \t\n\f\r]*/y;
const VALUE = new RegExp(NUMBER, 'y');
const FLAG = /[01]/y;
const MORE = /[0-9+.-]/y;

/**
 * The commands of path data, by the grammar of SVG 2, section 9.3.9: numbers need nothing between them where a sign or
 * a second point parts them, an arc's flags need nothing at all, and numbers beyond a command's own start it again
 * (after a move, as a line). Throws Unreadable with the place of the first fault.
 */
export function* pathCommands(data: string): Generator<Command> {
  const text = data.trim();
  let at = 0;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found) at = pattern.lastIndex;
    return found;
  };
  const fail = (what: string): never => {
    throw new Unreadable(
      `has path data that cannot be read: ${what} at character ${at + 1}, "${shortened(text.slice(at, at + 12))}"`,
    );
  };
  if (text !== '' && !/^[Mm]/.test(text)) fail('no M');
  while (at < text.length) {
    const written = text.charAt(at);
    const known = written.toUpperCase();
    if (!isLetter(known)) return fail('no command');
    let letter: Command['letter'] = known;
    at++;
    take(SPACE);
    let comma = false;
    do {
      const numbers: number[] = [];
      for (let i = 0; i < COUNTS[letter]; i++) {
        const flag = letter === 'A' && (i === 3 || i === 4);
        const value = Number(take(flag ? FLAG : VALUE)?.[0] ?? fail(flag ? 'no flag' : 'no number'));
        if (!Number.isFinite(value)) fail('a number too large');
        numbers.push(value);
        comma = take(GAP)![1] === ',';
      }
      yield { letter, relative: written !== known, numbers };
      if (letter === 'M') letter = 'L';
    } while (letter !== 'Z' && (comma || startsNumber(text, at)));
  }
}

function isLetter(letter: string): letter is Command['letter'] {
  return Object.hasOwn(COUNTS, letter);
}

function startsNumber(text: string, at: number): boolean {
  MORE.lastIndex = at;
  return MORE.test(text);
}

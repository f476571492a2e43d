import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';

/** A number of SVG's, as a regular expression. */
export const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const NEXT = new RegExp(NUMBER, 'y');
const GAP = /\s*(,?)\s*/y;
const LENGTH = new RegExp(`^(${NUMBER})([a-zA-Z%]*)$`);

/** CSS pixels a unit: an inch is 96 of them (CSS Values and Units 3, section 6.2). */
const PIXELS: ReadonlyMap<string, number> = new Map([
  ['', 1],
  ['px', 1],
  ['pt', 96 / 72],
  ['pc', 16],
  ['in', 96],
  ['cm', 96 / 2.54],
  ['mm', 96 / 25.4],
  ['q', 96 / 101.6],
]);

export const MM_PER_PIXEL = 25.4 / 96;

/** The numbers of a list, parted by spaces, commas, or nothing but a sign or point; null when it is no such list. */
export function readNumbers(text: string): number[] | null {
  const list = text.trim();
  const numbers: number[] = [];
  let comma = false;
  for (let at = 0; at < list.length || comma; ) {
    NEXT.lastIndex = at;
    const found = NEXT.exec(list);
    const value = Number(found?.[0]);
    if (!found || !Number.isFinite(value)) return null;
    numbers.push(value);
    GAP.lastIndex = NEXT.lastIndex;
    comma = GAP.exec(list)![1] === ',';
    at = GAP.lastIndex;
  }
  return numbers;
}

/**
 * A length in user units (CSS pixels).
 * @param whole what 100 % is
 * @param what the attribute's name, for the message
 */
export function readLength(text: string, whole: number, what: string): number {
  const found = LENGTH.exec(text.trim());
  const value = found ? Number(found[1]) * factorOf(found[2]!.toLowerCase(), whole) : Number.NaN;
  if (Number.isFinite(value)) return value;
  throw new Unreadable(
    `has ${what}="${shortened(text)}", which is no length; give a number, or one with mm, cm, in, px, pt, pc or %`,
  );
}

function factorOf(unit: string, whole: number): number {
  return unit === '%' ? whole / 100 : (PIXELS.get(unit) ?? Number.NaN);
}

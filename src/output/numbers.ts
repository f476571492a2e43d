import { type Island, isNumbered } from '../fit/islands.js';

/** Words centred on (x, y); the height is that of a capital letter, mm. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

/** Greatest height of a number in a part, mm: it is to be read, not to be admired. */
const TALLEST = 4;

/** Width of a digit in heights of a capital letter: that of usual sans-serif faces, about 0.56 of the font size of 1 / 0.7. */
const DIGIT = 0.8;

/** Share of the circle in a part that its number may fill. */
const FILL = 0.85;

/** The numbers of a pair's parts as they stand in its drawings; none when there is one part or too many. */
export function numbersOf(islands: readonly Island[], mirrored: boolean): Label[] {
  if (!isNumbered(islands.length)) return [];
  return islands.map((i) => {
    const [x, y] = i.at;
    return numberLabel(i.number, mirrored ? -x : x, y, i.room);
  });
}

/** A number that keeps within a circle of the given radius about (x, y), mm. */
export function numberLabel(number: number, x: number, y: number, room: number): Label {
  return labelIn(String(number), x, y, room);
}

/** Words of a few characters, as wide as digits, that keep within a circle of the given radius about (x, y), mm. */
export function labelIn(text: string, x: number, y: number, room: number): Label {
  return { text, x, y, height: numberHeight(text, room, TALLEST) };
}

/** Height at which digits lie within a circle of radius `room`, `tallest` at most; in the unit of both. */
export function numberHeight(text: string, room: number, tallest: number): number {
  const wide = DIGIT * text.length;
  return Math.min(tallest, (FILL * 2 * room) / Math.sqrt(1 + wide * wide));
}

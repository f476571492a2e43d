import { type Bomb, countOf, sfnt } from './bomb.js';
import { type Command, cffTable, charstring, int, OP } from './cff.js';

const runs = (charstrings: number, subroutines: Uint8Array[]): Uint8Array =>
  cffTable({
    charstrings: Array.from({ length: charstrings }, () =>
      Uint8Array.from([...int(0), ...int(0), OP.rmoveto, ...int(-107), OP.callgsubr, OP.endchar]),
    ),
    subroutines,
  });
const call = (n: number): number[] => [...int(n - 107), OP.callgsubr];
/** Every glyph draws this. */
const runsOf = (charstrings: number, commands: readonly Command[]): Uint8Array =>
  runs(charstrings, [Uint8Array.from([...charstring(commands).slice(0, -1), OP.ret])]);
/** A closed chain of lines across the middle of a letter, each of which crosses nearly all others. */
const star = (n: number): Command[] =>
  Array.from({ length: n }, (_, i) => ({
    type: i === 0 ? 'M' : 'L',
    x: i % 2 ? 600 - ((i * 7) % 300) : (i * 13) % 300,
    y: (i * 37) % 700,
  }));
const box = (x: number, y: number, side: number): Command[] => [
  { type: 'M', x, y },
  { type: 'L', x: x + side, y },
  { type: 'L', x: x + side, y: y + side },
  { type: 'L', x, y: y + side },
  { type: 'Z' },
];
const cff = (name: string, make: (count: number) => Uint8Array): Bomb =>
  sfnt(name, 'otf', (tables) => tables.set('CFF ', make(countOf(tables))));

/** CFF outlines that try their reader. */
export const cffBombs: readonly Bomb[] = [
  cff('CFF: a subroutine that calls itself', (n) => runs(n, [Uint8Array.from([...call(0), OP.ret])])),
  cff('CFF: subroutines that call ten each, ten deep', (n) =>
    runs(
      n,
      Array.from({ length: 10 }, (_, i) =>
        Uint8Array.from(
          i === 9
            ? [...int(1), ...int(1), OP.rlineto, OP.ret]
            : [...new Array<number[]>(10).fill(call(i + 1)).flat(), OP.ret],
        ),
      ),
    ),
  ),
  cff('CFF: a subroutine that is not there', (n) => runs(n, [])),
  cff('CFF: operators without numbers', (n) =>
    cffTable({
      charstrings: new Array<Uint8Array>(n).fill(Uint8Array.from([21, 5, 8, 24, 25, 26, 27, 30, 31, 14])),
    }),
  ),
  cff('CFF: numbers without end', (n) =>
    cffTable({
      charstrings: new Array<Uint8Array>(n).fill(
        Uint8Array.from(new Array<number>(300).fill(9).flatMap((n) => int(n))),
      ),
    }),
  ),
  cff('CFF: 20,000 lines in each glyph', (n) => {
    const lines = Array.from(
      { length: 2000 },
      (_, i) => ({ type: 'L', x: (i * 37) % 600, y: (i * 91) % 700 }) as const,
    );
    const one = charstring([{ type: 'M', x: 0, y: 0 }, ...lines]);
    const sub = Uint8Array.from([...one.slice(0, -1), OP.ret]);
    return runs(n, [Uint8Array.from([...new Array<number[]>(10).fill(call(1)).flat(), OP.ret]), sub]);
  }),
  cff('CFF: 190 lines that all cross, in each glyph', (n) => runsOf(n, star(190))),
  cff('CFF: 2,000 lines that all cross, in each glyph', (n) => runsOf(n, star(2000))),
  cff('CFF: 900 squares on each other, in each glyph', (n) =>
    runsOf(n, Array.from({ length: 900 }, (_, i) => box(i % 30, Math.floor(i / 30), 600)).flat()),
  ),
  cff('CFF: 900 squares beside each other, in each glyph', (n) =>
    runsOf(n, Array.from({ length: 900 }, (_, i) => box(20 * (i % 30), 24 * Math.floor(i / 30), 15)).flat()),
  ),
  cff('CFF: as far out as numbers go', (n) =>
    runsOf(n, [...box(-32_000, -32_000, 200), ...box(0, 0, 32_000)]),
  ),
  cff('CFF: a moveto alone', (n) =>
    cffTable({ charstrings: new Array<Uint8Array>(n).fill(Uint8Array.from([...int(5), 22, 14])) }),
  ),
];

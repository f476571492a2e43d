import type { Layout } from '../fit/layout.js';
import type { Job } from '../output/job.js';
import { BadInput } from '../schema/fault.js';
import { lengthText, numberText } from '../schema/units.js';

/** More than any plug has that gets numbers, so that a slip of the finger is no flood. */
const MOST = 400;

/** The numbers of `--parts 7,12`; null when it is not given. A number given twice is made twice. Throws BadInput. */
export function partNumbers(given: string | undefined, recipes: number): number[] | null {
  if (given === undefined) return null;
  const bad = (message: string): BadInput => new BadInput([{ where: '--parts', message }]);
  if (recipes > 1) throw bad('is for one recipe at a time: the numbers are those of one piece');
  const words = given.split(',').map((w) => w.trim());
  const wrong = words.find((w) => !/^\d{1,6}$/.test(w));
  if (wrong !== undefined)
    throw bad(
      `${JSON.stringify(wrong.slice(0, 40))} is no part's number: give the numbers in the drawings with commas between, such as 7,12`,
    );
  if (words.length > MOST) throw bad(`names ${words.length} parts: ${MOST} at most`);
  return words.map(Number);
}

/** What became of the boards, a line each. */
export function layoutLines({ layouts, inlays, recipe }: Job): string[] {
  const { units } = recipe;
  const line = (layout: Layout, what: string): string => {
    const { board, offcut, laid } = layout;
    const size = `${lengthText(board.length, units)} by ${lengthText(board.width, units)}`;
    const rest = offcut ? `a clean rest of ${lengthText(offcut.length, units)}` : 'no clean rest';
    return `${laid.length} ${what}${laid.length === 1 ? '' : 's'} on a board of ${size}, ${lengthText(layout.spacing, units)} apart: yield ${numberText(layout.yield, 1)} %, ${rest}`;
  };
  const only = inlays.length > 1 ? ` (${inlays[0]!.wood} only: the other woods are not laid out)` : '';
  return [
    ...(layouts.plug ? [`${line(layouts.plug, 'plug part')}${only}`] : []),
    ...(layouts.pocket ? [`${line(layouts.pocket, 'piece')}${only}`] : []),
  ];
}

import { isNumbered } from '../fit/islands.js';

/** "Part 3", "Parts 1 to 6 and 9", or how many there are where they have no numbers. `numbers` rise; `of`: of how many. */
export function partNames(numbers: readonly number[], of: number): string {
  if (of === 1) return 'The part';
  if (!isNumbered(of)) return numbers.length === 1 ? 'One part' : `${numbers.length} parts`;
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const text = runs.flatMap(([a, b]) => (b > a + 1 ? [`${a} to ${b}`] : b > a ? [`${a}`, `${b}`] : [`${a}`]));
  return `Part${numbers.length === 1 ? '' : 's'} ${listed(text, 'and')}`;
}

/** "a, b or c". */
export function listed(words: readonly string[], by = 'or'): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${by} ${words.at(-1)}`;
}

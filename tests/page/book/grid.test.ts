import { describe, expect, it, test } from 'vitest';
import { led, type Place } from '../../../src/page/book/grid.js';

const at = (left: number, top: number, width: number, height: number): Place => ({
  left,
  top,
  width,
  height,
});

/*
 * Two leaves one under the other:
 *
 *   0 1 2 3        four columns of 100
 *   4 5
 *   -------
 *   6   7          two columns of 200
 *   8
 */
const book = [
  ...[0, 100, 200, 300].map((x) => at(x, 0, 90, 150)),
  ...[0, 100].map((x) => at(x, 160, 90, 170)),
  ...[0, 200].map((x) => at(x, 400, 190, 110)),
  at(0, 520, 190, 110),
];

describe('arrow keys over the entries', () => {
  test.each([
    ['ArrowRight', 0, 1],
    ['ArrowRight', 3, 4],
    ['ArrowRight', 5, 6],
    ['ArrowRight', 8, null],
    ['ArrowLeft', 6, 5],
    ['ArrowLeft', 1, 0],
    ['ArrowLeft', 0, null],
    ['ArrowDown', 1, 5],
    // Nothing lies under the last two: the nearest of the row below.
    ['ArrowDown', 2, 5],
    ['ArrowDown', 3, 5],
    ['ArrowDown', 4, 6],
    // The middle of 5 is at 145: 6 has its own at 95, 7 at 295.
    ['ArrowDown', 5, 6],
    ['ArrowDown', 7, 8],
    ['ArrowDown', 8, null],
    ['ArrowUp', 8, 6],
    ['ArrowUp', 7, 5],
    // The middle of 6 is at 95: 4 has its own at 45, 5 at 145. As near: the first.
    ['ArrowUp', 6, 4],
    ['ArrowUp', 4, 0],
    ['ArrowUp', 3, null],
    ['Home', 3, 0],
    ['Home', 5, 4],
    ['End', 0, 3],
    ['End', 4, 5],
    ['End', 8, 8],
    ['Enter', 2, null],
    ['a', 2, null],
  ] as const)('%s leads from %i to %j', (key, from, to) => expect(led(book, from, key)).toBe(to));

  test.each([
    ['Home', 5, 0],
    ['End', 2, 8],
  ] as const)('with Ctrl %s leads from %i to %i', (key, from, to) =>
    expect(led(book, from, key, true)).toBe(to),
  );
});

describe('entries that lie as browsers lay them', () => {
  it('are level although they differ by a fraction of a pixel', () => {
    const row = [at(0, 0, 90, 100.4), at(100, 0.3, 90, 100), at(0, 100.1, 90, 100), at(100, 100.6, 90, 100)];
    expect(led(row, 1, 'ArrowDown')).toBe(3);
    expect(led(row, 3, 'ArrowUp')).toBe(1);
    expect(led(row, 0, 'End')).toBe(1);
  });

  it('are scrolled past the top without a change', () => {
    const up = book.map((p) => ({ ...p, top: p.top - 350 }));
    expect(up.map((_, k) => led(up, k, 'ArrowDown'))).toEqual(book.map((_, k) => led(book, k, 'ArrowDown')));
  });

  it('lead nowhere from what is none of them', () => {
    expect(led(book, -1, 'ArrowRight')).toBeNull();
    expect(led([], 0, 'End')).toBeNull();
  });
});

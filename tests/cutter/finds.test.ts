import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Drawn, endOf, isSoundDrawing, shrunk } from '../support/found.js';

const FOLDER = new URL('../corpus/finds/', import.meta.url);

/** What long runs and reviews found, each as small as it could be made, with how it must end and what was wrong. */
interface Find extends Drawn {
  readonly end: string;
  readonly was: string;
}

const finds = readdirSync(FOLDER).map((file) => ({
  file,
  find: JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Find,
}));

describe('what was found wrong once', () => {
  for (const { file, find } of finds) {
    const { end, was, ...drawn } = find;
    it(file, () => expect(endOf(drawn), was).toBe(end));
  }

  it('was found in sound drawings', () => {
    expect(finds.filter(({ find }) => !isSoundDrawing(find))).toEqual([]);
    const outer = [
      [-5, -5, 0],
      [5, -5, 0],
      [0, 5, 0],
    ] as const;
    const drawn = (hole: readonly (readonly [number, number, number])[]): Drawn => ({
      r: 1,
      touch: 'part',
      clearance: 0.1,
      pieces: [[outer, hole]],
    });
    expect(
      isSoundDrawing(
        drawn([
          [-1, -1, 0],
          [0, 1, 0],
          [1, -1, 0],
        ]),
      ),
    ).toBe(true);
    expect(
      isSoundDrawing(
        drawn([
          [-1, -1, 0],
          [0, 9, 0],
          [1, -1, 0],
        ]),
      ),
    ).toBe(false);
    expect(
      isSoundDrawing(
        drawn([
          [9, -1, 0],
          [10, 1, 0],
          [11, -1, 0],
        ]),
      ),
    ).toBe(false);
  });
});

describe('a drawing that fails', () => {
  it('is made as small as it can be and still fails', () => {
    const square = (x: number): Drawn['pieces'][number] => [
      [
        [x, 0, 0],
        [x + 3.16227, 0, 0],
        [x + 3, 3, 0],
        [x, 3.3, 0],
      ],
    ];
    const drawn: Drawn = {
      r: 1.2345,
      touch: 'part',
      clearance: 0.0812,
      pieces: [square(0), square(50), square(9)],
    };
    const found = shrunk(drawn, (d) => d.pieces.some((p) => p[0]!.some(([x]) => x > 49)));
    expect(found.pieces).toHaveLength(1);
    expect(found.pieces[0]![0]).toHaveLength(3);
    expect(found.r).toBe(1.2);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Drawn, endOf, shrunk } from '../support/found.js';

const FOLDER = new URL('../corpus/finds/', import.meta.url);

/** What long runs and reviews found, each as small as it could be made, with how it must end and what was wrong. */
interface Find extends Drawn {
  readonly end: string;
  readonly was: string;
}

describe('what was found wrong once', () => {
  for (const file of readdirSync(FOLDER))
    it(file, () => {
      const { end, was, ...drawn } = JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Find;
      expect(endOf(drawn), was).toBe(end);
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

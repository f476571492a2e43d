import { expect, test } from 'vitest';
import { type Edge, line } from '../../src/geometry/edge.js';
import { link } from '../../src/geometry/link.js';

/** Closed polygons, each given by its corners, one after the other. */
const loops = (...corners: (readonly [number, number])[][]): Edge[] =>
  corners.flatMap((c) =>
    c.map(([x, y], i) => {
      const [u, v] = c[(i + 1) % c.length]!;
      return line(x, y, u, v);
    }),
  );
const RIGHT: (readonly [number, number])[] = [
  [0, 0],
  [9, -4],
  [9, 4],
];
const LEFT: (readonly [number, number])[] = [
  [0, 0],
  [-9, 4],
  [-9, -4],
];
/** Far away and many, so that starts are looked up in cells. */
const MANY = Array.from({ length: 20 }, (_, k): (readonly [number, number])[] =>
  RIGHT.map(([x, y]) => [x + 100, y + 20 * k] as const),
);

test('where two loops meet at a point every start is taken once', () => {
  for (const more of [[], MANY]) {
    const next = link(loops(RIGHT, LEFT, ...more), 0.01)!;
    expect([...next].sort((a, b) => a - b)).toEqual(next.map((_, i) => i));
    expect(next.slice(0, 2)).toEqual([1, 2]);
    expect([0, 3]).toContain(next[2]);
  }
});

test('of two ends at one start one is left over, and nothing is linked', () => {
  const stray = line(-5, 5, 0, 0);
  for (const more of [[], MANY])
    for (const edges of [
      [...loops(RIGHT, ...more), stray],
      [stray, ...loops(RIGHT, ...more)],
    ])
      expect(link(edges, 0.01)).toBeNull();
});

test('ends go to the nearest start, within the distance given', () => {
  const apart = (by: number) => [line(0, 0, 5, 0), line(5 + by, 0, 5, 5), line(5, 5, 0, 0)];
  expect(link(apart(0.009), 0.01)).toEqual([1, 2, 0]);
  expect(link(apart(0.011), 0.01)).toBeNull();
  const near = [line(0, 0, 5, 0), line(5.004, 0, 0, 0), line(5.002, 0, 0, 0), line(0, 0, 5, 0)];
  expect(link(near, 0.01)).toEqual([2, 0, 3, 1]);
});

import { expect, test } from 'vitest';
import { type Contour, polygon } from '../../src/geometry/region.js';
import { roll, rollOutside } from '../../src/geometry/roll.js';

function star(n: number, inner: number): Contour {
  return polygon(
    Array.from({ length: 2 * n }, (_, i): [number, number] => {
      const radius = i % 2 === 0 ? 30 : inner;
      const a = (Math.PI * i) / n;
      return [radius * Math.cos(a), radius * Math.sin(a)];
    }),
  );
}

/** A plate with a slot in its top and a tongue beside it, both of one width and blunt. */
function slotted(width: number): Contour {
  return polygon([
    [0, 0],
    [60, 0],
    [60, 30],
    [45 + width, 30],
    [45 + width, 45],
    [45, 45],
    [45, 30],
    [20 + width, 30],
    [20 + width, 10],
    [20, 10],
    [20, 30],
    [0, 30],
  ]);
}

test('what a rest dropped is counted as it is made', () => {
  const counts = new Set<number>();
  const shapes = [...[3, 5, 7].flatMap((n) => [star(n, 8), star(n, 20)]), slotted(1), slotted(6)];
  for (const shape of shapes)
    for (const r of [0.3, 1, 2.5, 4])
      for (const rest of [...roll([shape], r).rests, ...rollOutside([shape], r).rests]) {
        expect(rest.droppedCount).toBe(rest.dropped.length);
        counts.add(rest.droppedCount);
      }
  // Corners have parts of two edges, the slot and the tongue more.
  expect(counts.size).toBeGreaterThan(1);
});

/** What each rest of a ball in a shape dropped, counted and made. */
const countsIn = (shape: Contour, r: number): number[][] =>
  roll([shape], r)!.rests.map((rest) => [rest.droppedCount, rest.dropped.length]);

test('of a long edge that a ball cannot reach in its middle one stretch is dropped', () => {
  // A bump comes down to within 3 mm of the floor; the ball is 4 mm wide.
  const bump = polygon([
    [0, 0],
    [60, 0],
    [60, 30],
    [40, 30],
    [30, 3],
    [20, 30],
    [0, 30],
  ]);
  expect(countsIn(bump, 2)).toContainEqual([1, 1]);
});

test('an edge dropped right up to its joint counts, and the next one, touched from its start, does not', () => {
  // The ball of 2 mm touches the wall just where its two edges meet.
  const parted = polygon([
    [0, 0],
    [20, 0],
    [20, 2],
    [20, 20],
    [0, 20],
  ]);
  const counts = countsIn(parted, 2);
  expect(counts).toHaveLength(4);
  for (const [counted, made] of counts) expect([counted, made]).toEqual([2, 2]);
});

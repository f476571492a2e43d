import { expect, test } from 'vitest';
import { polygon } from '../../src/geometry/region.js';
import { type Rest, roll, rollOutside } from '../../src/geometry/roll.js';

/** A star of n points with radii 30 and `inner`, some of them notched: corners, slots and straits. */
function star(n: number, inner: number) {
  const points = Array.from({ length: 2 * n }, (_, i): [number, number] => {
    const radius = i % 2 === 0 ? 30 : inner;
    const a = (Math.PI * i) / n;
    return [radius * Math.cos(a), radius * Math.sin(a)];
  });
  const notched = points.flatMap(([x, y], i): [number, number][] =>
    i % 4 === 1
      ? [
          [x, y],
          [x * 0.8, y * 0.8],
          [x * 0.8 + 0.5, y * 0.8],
          [x + 0.5, y],
        ]
      : [[x, y]],
  );
  return [polygon(notched)];
}

test('what a rest dropped is counted as it is made', () => {
  const counts = new Set<number>();
  for (const n of [3, 4, 5, 7])
    for (const inner of [8, 12, 20])
      for (const r of [0.3, 1, 2.5, 4]) {
        const contours = star(n, inner);
        const rests: Rest[] = [...roll(contours, r).rests, ...rollOutside(contours, r).rests];
        for (const rest of rests) {
          expect(rest.droppedCount).toBe(rest.dropped.length);
          counts.add(rest.droppedCount);
        }
      }
  // Corners of one edge and two, and slots and tips of more.
  expect(counts.size).toBeGreaterThan(2);
});

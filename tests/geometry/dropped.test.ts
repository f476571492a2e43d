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

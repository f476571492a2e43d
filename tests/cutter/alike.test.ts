import { expect, it } from 'vitest';
import { oncePerShape } from '../../src/cutter/alike.js';
import { bulgedContour, type Contour, polygon } from '../../src/geometry/region.js';

const square = (x: number, y: number, side: number): Contour =>
  polygon([
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ]);

/** Work that gives its piece back, notes its first corner, and counts how often it is done. */
function counting() {
  let times = 0;
  const once = oncePerShape((piece, contours, changes) => {
    times++;
    const { x0, y0 } = contours[0]![0]!;
    changes.push({ kind: 'filled', piece, at: [x0, y0], size: 1 });
    return contours;
  });
  return { once, times: () => times };
}

it('works once on pieces that are alike, and brings result and changes to each one’s own place and name', () => {
  const { once, times } = counting();
  const changes: Parameters<typeof once>[2] = [];
  once('a', [square(0, 0, 2)], changes);
  expect(once('b', [square(10, 5, 2)], changes)).toEqual([square(10, 5, 2)]);
  expect(times()).toBe(1);
  expect(changes.map((c) => [c.piece, c.at])).toEqual([
    ['a', [0, 0]],
    ['b', [10, 5]],
  ]);
});

it('tells apart shapes of other sizes, and arcs that go the other way about', () => {
  const { once, times } = counting();
  const bulging = (bulge: number): Contour =>
    bulgedContour([
      { x: 0, y: 0, bulge },
      { x: 2, y: 0, bulge: 0 },
      { x: 1, y: 2, bulge: 0 },
    ]);
  for (const c of [square(0, 0, 2), square(0, 0, 2.000001), bulging(0.2), bulging(-0.2)]) once('p', [c], []);
  expect(times()).toBe(4);
});

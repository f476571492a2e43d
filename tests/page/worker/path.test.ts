import { describe, expect, it } from 'vitest';
import { arc, type Edge, line } from '../../../src/geometry/edge.js';
import { type Contour, circle, polygon, reversedContour } from '../../../src/geometry/region.js';
import { openPathOf, pathOf } from '../../../src/page/worker/path.js';
import { seeded } from '../../support/random.js';
import { pathArea, pathBox, readPath } from './svg-path.js';

describe('path data', () => {
  it('says a triangle point by point, y turned over', () => {
    const triangle = polygon([
      [0, 0],
      [3, 0],
      [0, 4],
    ]);
    expect(pathOf([triangle])).toBe('M0 0L3 0L0 -4L0 0Z');
  });

  it('says sweep 0 for a counter-clockwise arc and 1 for a clockwise one, as SVG 1.1 8.3.8 has it with y down', () => {
    // A quarter of the unit circle from the right to the top: on the screen from 1, 0 to 0, -1.
    const left = arc(1, 0, 0, 1, 0, 0, 1);
    expect(openPathOf([[left]])).toBe('M1 0A1 1 0 0 0 0 -1');
    const right = arc(0, 1, 1, 0, 0, 0, -1);
    expect(openPathOf([[right]])).toBe('M0 -1A1 1 0 0 1 1 0');
  });

  it.each([
    ['counter-clockwise', arc(5, 0, -5, 0, 0, 0, 5), [-5, -5, 5, 0]],
    ['clockwise', arc(-5, 0, 5, 0, 0, 0, -5), [-5, -5, 5, 0]],
    ['clockwise, below', arc(5, 0, -5, 0, 0, 0, -5), [-5, 0, 5, 5]],
  ] as const)('keeps a half circle on its side: %s', (_, half: Edge, wanted) => {
    const { minX, minY, maxX, maxY } = pathBox(openPathOf([[half]]));
    [minX, minY, maxX, maxY].forEach((v, i) => {
      expect(v).toBeCloseTo(wanted[i], 3);
    });
  });

  it.each([30, 90, 150, 170])("keeps an arc of %i degrees where it is, to its ends' rounding", (degrees) => {
    const turn = seeded(degrees);
    let worst = 0;
    for (let k = 0; k < 40; k++) {
      const [cx, cy, r, from] = [turn(), turn(), 0.3 + 20 * turn() ** 2, 7 * turn()];
      const to = from + ((k % 2 ? -1 : 1) * degrees * Math.PI) / 180;
      const on = (a: number): [number, number] => [cx + r * Math.cos(a), cy + r * Math.sin(a)];
      const [[chain], middle] = [
        readPath(openPathOf([[arc(...on(from), ...on(to), cx, cy, k % 2 ? -r : r)]])),
        on((from + to) / 2),
      ];
      for (const [x, y] of chain.points) worst = Math.max(worst, Math.abs(Math.hypot(x - cx, -y - cy) - r));
      const [x, y] = chain.points[Math.floor(chain.points.length / 2)];
      // On the side it was on: its crown is where it was, as near as the flattening tells.
      worst = Math.max(worst, Math.hypot(x - middle[0], -y - middle[1]) - 0.002 * r);
    }
    // Half a thousandth in x and in y. Arcs of the kernel sweep 170 degrees at most.
    expect(worst).toBeLessThan(0.0005 * Math.SQRT2 * 1.05);
  });

  it('keeps arcs that are shorter than the grid, or no longer than a point', () => {
    expect(readPath(openPathOf([[arc(1, 0, 1, 1e-5, 0, 0, 1)]]))[0].closed).toBe(false);
    expect(openPathOf([[arc(1, 0, 1, 0, 0, 0, 1)]])).toBe('M1 0A1 1 0 0 0 1 0');
  });

  it('writes no minus before a nought, and no exponent', () => {
    const d = openPathOf([[line(0, 0, 1e-9, 4e-7), line(1e-9, 4e-7, -1e-9, 1e-4)]]);
    expect(d).toBe('M0 0L0 0L0 0');
    expect(openPathOf([[line(-0.0004, 0.0004, 1234567.1234, -1e-3)]])).toBe('M0 0L1234567.123 0.001');
  });

  it('rounds to thousandths', () => {
    expect(openPathOf([[line(0.12345, -0.98765, 1 / 3, 2 / 3)]])).toBe('M0.123 0.988L0.333 -0.667');
  });

  it('leaves stretches open, each with its own start', () => {
    const d = openPathOf([[line(0, 0, 1, 0), line(1, 0, 1, 1)], [], [line(5, 5, 6, 5)]]);
    expect(d).toBe('M0 0L1 0L1 -1M5 -5L6 -5');
    expect(readPath(d).map((c) => [c.closed, c.points.length])).toEqual([
      [false, 3],
      [false, 2],
    ]);
  });

  it('says nothing of nothing', () => {
    expect(pathOf([])).toBe('');
    expect(pathOf([[]])).toBe('');
    expect(openPathOf([])).toBe('');
    expect(openPathOf([[], []])).toBe('');
  });

  it('draws a ring as large as a ring is', () => {
    const ring: Contour[] = [circle(3, -2, 10), reversedContour(circle(3, -2, 6))];
    // pi (10^2 - 6^2)
    expect(Math.abs(pathArea(pathOf(ring)) - Math.PI * 64)).toBeLessThan(0.01);
    const box = pathBox(pathOf(ring));
    expect([box.minX, box.minY, box.maxX, box.maxY].map((v) => Math.round(v * 100) / 100)).toEqual([
      -7, -8, 13, 12,
    ]);
  });
});

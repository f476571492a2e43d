import { describe, expect, it } from 'vitest';
import { tileFor } from '../../../src/page/drawing/grain.js';

const PAIR = /(-?[\d.]+) (-?[\d.]+)/g;

/** The lines of a tile: the points they pass through and the handles between, by M, C and S. */
function lines(d: string): { ends: [number, number][]; all: [number, number][] }[] {
  return d
    .split('M')
    .slice(1)
    .map((line) => {
      const all = [...line.matchAll(PAIR)].map(([, x, y]): [number, number] => [Number(x), Number(y)]);
      // A start, then C with two handles and a point, then S with one handle and a point.
      const ends = all.filter((_, k) => k === 0 || (k >= 3 && (k - 3) % 2 === 0));
      return { ends, all };
    });
}

describe.each([
  [20, 7],
  [130, 7],
  [130, 1977],
  [640, 2008],
])('grain for a piece of %i mm, seed %i', (size, seed) => {
  const tile = tileFor(size, seed);
  const all = tile.strokes.flatMap((s) => lines(s.d));

  it('is the same every time', () => {
    expect(tileFor(size, seed)).toEqual(tile);
  });

  it('is another for another seed', () => {
    expect(tileFor(size, seed + 1).strokes).not.toEqual(tile.strokes);
  });

  it('has lines from one side of the tile to the other, which come back to where they began', () => {
    expect(all.length).toBeGreaterThan(25);
    for (const { ends } of all) {
      expect(ends).toHaveLength(9);
      expect(ends[0][0]).toBe(0);
      expect(ends[8][0]).toBeCloseTo(tile.width, 2);
      // Written to hundredths.
      expect(ends[8][1]).toBeCloseTo(ends[0][1], 1);
      for (let k = 1; k < 9; k++) expect(ends[k][0]).toBeGreaterThan(ends[k - 1][0]);
    }
  });

  it('keeps its lines within the tile, but for what strays over an edge and is there on the other side too', () => {
    // The flow strays by the sum of its waves, 0.016 of the size, and a line is drawn where it begins within 0.02.
    const stray = 0.037 * size;
    for (const { all: points } of all)
      for (const [x, y] of points) {
        expect(x >= -0.01 && x <= tile.width + 0.01).toBe(true);
        expect(y > -stray && y < tile.height + stray).toBe(true);
      }
    for (const { ends } of all) {
      const over = ends.some(([, y]) => y < 0)
        ? tile.height
        : ends.some(([, y]) => y > tile.height)
          ? -tile.height
          : 0;
      if (over === 0) continue;
      const again = all.some((o) => o.ends.every(([, y], k) => Math.abs(y - over - ends[k][1]) < 0.011));
      expect(again).toBe(true);
    }
  });

  it('meets itself at the seam without a kink: its slope there is the same at both ends', () => {
    for (const { all: points } of all) {
      const [[x0, y0], [x1, y1]] = points;
      const [[u0, v0], [u1, v1]] = points.slice(-2);
      // A handle is a third of a step long; points are written to hundredths.
      expect(Math.abs((y1 - y0) / (x1 - x0) - (v1 - v0) / (u1 - u0))).toBeLessThan(0.021 / (x1 - x0) + 1e-9);
    }
  });

  it('has strokes of three weights, as wide as suits the size', () => {
    expect(tile.strokes).toHaveLength(3);
    tile.strokes.forEach(({ width, dark }, k) => {
      expect(width / size).toBeCloseTo([0.16, 0.26, 0.4][k] / 130, 9);
      expect(dark > 0 && dark < 1).toBe(true);
    });
    expect(`${tile.strokes.map((s) => s.d)}`).not.toMatch(/NaN|Infinity|e-/);
  });
});

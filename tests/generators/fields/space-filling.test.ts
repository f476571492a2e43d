import { describe, expect, it } from 'vitest';
import { gosperPath } from '../../../src/generators/fields/gosper-path.js';
import { coursePath, courseSize, hilbertPath } from '../../../src/generators/fields/hilbert-path.js';
import { mitred, rounded } from '../../../src/generators/fields/turns.js';
import type { Vector } from '../../../src/geometry/bezier.js';
import { edgeLength, endTangent, startTangent } from '../../../src/geometry/edge.js';
import { area, contains } from '../../../src/geometry/region.js';
import { Refusal } from '../../../src/schema/fault.js';
import { artworkWith, expectSound, outlineWith } from '../../support/artwork.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const stave = outlineWith('stave', { bottom: 70, top: 100, height: 150, margin: 6 });

/**
 * D. Hilbert, Mathematische Annalen 38, 1891: the k-th curve visits the 4^k squares of a grid once each, from square to
 * neighbouring square, so it has 4^k - 1 steps. No two steps can then cross.
 */
describe("Hilbert's curve", () => {
  it.each([1, 2, 3, 4, 5, 6])('of order %i visits every point of its grid once, by unit steps', (k) => {
    const path = hilbertPath(k);
    const n = 2 ** k;
    expect(path).toHaveLength(4 ** k);
    expect(new Set(path.map(String)).size).toBe(4 ** k);
    expect(path.every(([x, y]) => [x, y].every((v) => Number.isInteger(v) && v >= 0 && v < n))).toBe(true);
    expect(steps(path).every((l) => l === 1)).toBe(true);
    expect(steps(path)).toHaveLength(4 ** k - 1);
    expect([path[0], path.at(-1)]).toEqual([[0, 0], [0, n - 1]]); // biome-ignore format: two ends
  });

  /** E. H. Moore, Transactions of the American Mathematical Society 1, 1900: closed, so 4^k steps. */
  it('closes: two columns of two squares, the end one step from the start', () => {
    const path = coursePath({ order: 2, count: 2, closed: true, lying: false });
    expect(path).toHaveLength(64);
    expect(new Set(path.map(String)).size).toBe(64);
    expect(steps([...path, path[0]!]).every((l) => Math.abs(l - 1) < 1e-12)).toBe(true);
  });

  it('goes on from square to square, upright or lying', () => {
    for (const closed of [false, true])
      for (const lying of [false, true])
        for (const count of [1, 3]) {
          const course = { order: 2, count, closed, lying };
          const path = coursePath(course);
          const [wide, high] = courseSize(course);
          expect(path).toHaveLength(wide * high);
          expect(new Set(path.map(String)).size).toBe(wide * high);
          expect(steps(path).every((l) => Math.abs(l - 1) < 1e-12)).toBe(true);
          expect(span(path, 0)).toBe(wide - 1);
          expect(span(path, 1)).toBe(high - 1);
        }
  });
});

/** M. Gardner, "Mathematical Games", Scientific American, December 1976 (from memory): seven steps for one, each 1/sqrt 7. */
describe("Gosper's curve", () => {
  it.each([1, 2, 3, 4])('of order %i has 7^k unit steps and ends sqrt(7)^k away', (k) => {
    const path = gosperPath(k);
    expect(path).toHaveLength(7 ** k + 1);
    for (const l of steps(path)) expect(l).toBeCloseTo(1, 9);
    const [x, y] = path.at(-1)!;
    expect(Math.hypot(x, y)).toBeCloseTo(7 ** (k / 2), 8);
  });

  it('never comes back to a point, and so never crosses: its steps join neighbours of a triangular lattice', () => {
    const path = gosperPath(4);
    expect(new Set(path.map(([x, y]) => `${Math.round(2 * x)},${Math.round(4 * y)}`)).size).toBe(path.length);
    expect(steps(path).every((l) => l < 1.0001)).toBe(true);
  });
});

describe('turns', () => {
  const path: Vector[] = [[0, 0], [10, 0], [10, 10], [20, 10], [30, 10], [30, 0]]; // biome-ignore format: a path

  it('mitred: lines alone, those in line made one', () => {
    expect(mitred(path, false).map((e) => [e.x0, e.y0, e.x1, e.y1, e.r])).toEqual([
      [0, 0, 10, 0, 0],
      [10, 0, 10, 10, 0],
      [10, 10, 30, 10, 0],
      [30, 10, 30, 0, 0],
    ]);
  });

  it('round: quarter circles of half a step, tangent all along', () => {
    const edges = rounded(path, false);
    for (let i = 0; i + 1 < edges.length; i++) {
      const [ax, ay] = endTangent(edges[i]!);
      const [bx, by] = startTangent(edges[i + 1]!);
      expect(ax * bx + ay * by).toBeCloseTo(1, 12);
    }
    // Three corners, each 2 x 5 mm of straight for a quarter circle of radius 5.
    const length = edges.reduce((sum, e) => sum + edgeLength(e), 0);
    expect(length).toBeCloseTo(50 - 3 * 10 + (3 * 5 * Math.PI) / 2, 9);
  });

  it('round and closed: a square of four points becomes a circle', () => {
    const edges = rounded([[0, 0], [10, 0], [10, 10], [0, 10]], true); // biome-ignore format: a square
    expect(edges.reduce((sum, e) => sum + edgeLength(e), 0)).toBeCloseTo(10 * Math.PI, 9);
  });
});

describe('the generators', () => {
  it('hilbert: a mitred strap has the length of its path', () => {
    const { pieces } = artworkWith('hilbert', { order: 3, turns: 'mitred' }, lid);
    expectSound(pieces[0]!.region);
    // Strap s = 88 / 15, step 2 s: 63 steps, and butt ends: a mitred corner adds and takes the same.
    const s = 88 / 15;
    expect(area(pieces[0]!.region)).toBeCloseTo(63 * 2 * s * s, 3);
  });

  it('hilbert: closed, one opening; open, none', () => {
    const contours = (closed: boolean): number =>
      artworkWith('hilbert', { closed }, lid).pieces[0]!.region.contours.length;
    expect([contours(true), contours(false)]).toEqual([2, 1]);
  });

  it('hilbert: takes as many squares as a long outline has room for', () => {
    const { pieces } = artworkWith('hilbert', { turns: 'mitred' }, stave);
    const { contours } = pieces[0]!.region;
    const ys = contours.flat().map((e) => e.y0);
    expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(110);
  });

  it('refuse an order whose gaps are too small, and gaps that leave no room', () => {
    expect(() => artworkWith('hilbert', { order: 6 }, lid)).toThrow(
      /pattern\.order: 6 leaves gaps of 0\.69 mm/,
    );
    expect(() => artworkWith('hilbert', { gap: 80 }, lid)).toThrow(Refusal);
    expect(() => artworkWith('gosper', { fill: 'whole', order: 5 }, lid)).toThrow(/pattern\.order/);
    expect(() => artworkWith('gosper', { gap: 0.2, strap: 0.2 }, lid)).toThrow(Refusal);
  });

  it.each(['hilbert', 'gosper'])('%s: clipped, runs keep off the frame but where they end in it', (name) => {
    const { region } = artworkWith(name, { fill: 'clip', strap: 4, gap: 4 }, lid).pieces[0]!;
    expectSound(region);
    // The frame is 4 mm wide; along the middle of the gap within it only the ends of runs lie.
    let wood = 0;
    for (let t = -37.9; t < 38; t += 0.2)
      for (const [x, y] of [[t, 38], [t, -38], [38, t], [-38, t]] as const) if (contains(region, x, y)) wood++; // biome-ignore format: four sides
    expect(wood / (4 * 380)).toBeGreaterThan(0.05);
    expect(wood / (4 * 380)).toBeLessThan(0.3);
    for (const [x, y] of [[42, 0], [-42, 7], [3, 42], [11, -42]] as const) expect(contains(region, x, y)).toBe(true); // biome-ignore format: four places
  });

  it('gosper: whole, one strap without openings that lies in the field', () => {
    const { pieces } = artworkWith('gosper', { fill: 'whole' }, lid);
    expect(pieces).toHaveLength(1);
    expect(pieces[0]!.region.contours).toHaveLength(1);
    for (const e of pieces[0]!.region.contours[0]!)
      expect(Math.max(Math.abs(e.x0), Math.abs(e.y0))).toBeLessThan(44.001);
  });
});

function steps(path: readonly Vector[]): number[] {
  return path.slice(1).map((p, i) => Math.hypot(p[0] - path[i]![0], p[1] - path[i]![1]));
}

function span(path: readonly Vector[], k: 0 | 1): number {
  const all = path.map((p) => p[k]);
  return Math.max(...all) - Math.min(...all);
}

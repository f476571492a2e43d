import { describe, expect, test } from 'vitest';
import { intersect, subtract, union } from '../../src/geometry/boolean.js';
import { line } from '../../src/geometry/edge.js';
import { EdgesIndex } from '../../src/geometry/edges-index.js';
import { area, polygon, type Region } from '../../src/geometry/region.js';

/** A steady stream of numbers from 0 to 1: Park and Miller's generator (CACM 31, 1988). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const few = 20;
const many = 300;

describe.each([few, many])('an index of %i edges', (count) => {
  const chance = random(count);
  const edges = Array.from({ length: count }, () => {
    const [x, y] = [100 * chance(), 100 * chance()];
    return line(x, y, x + 20 * chance() - 10, y + 20 * chance() - 10);
  });
  const index = new EdgesIndex(edges);

  test('finds after an edge what it finds near it, less what is before', () => {
    for (let i = 0; i < count; i++) {
      const near = [...index.nearEdge(i, 1)];
      expect(near).toContain(i);
      expect([...index.nearAfter(i, 1)]).toEqual(near.filter((j) => j > i));
    }
  });

  test('gives ids in rising order', () => {
    for (let i = 0; i < count; i++) {
      const near = [...index.nearEdge(i, 5)];
      expect(near).toEqual([...near].sort((a, b) => a - b));
    }
  });

  test('finds along a ray what is level with it and not behind it', () => {
    for (let k = 0; k < 50; k++) {
      const [x, y] = [100 * chance(), 100 * chance()];
      const ahead = edges.flatMap((e, i) =>
        Math.max(e.x0, e.x1) >= x && Math.min(e.y0, e.y1) <= y && Math.max(e.y0, e.y1) >= y ? [i] : [],
      );
      expect([...index.alongRay(x, y)].sort((a, b) => a - b)).toEqual(ahead);
    }
  });
});

// Straight edges that share an end are only looked at where they may meet elsewhere, too.
describe('straight edges with an end in common', () => {
  const of = (...points: [number, number][]): Region => ({ contours: [polygon(points)] });
  const triangle = of([0, 0], [10, 0], [0, 10]);

  test.each<[string, Region, number]>([
    ['drawn twice', triangle, 50],
    ['one along a part of the other, from its start', of([0, 0], [4, 0], [0, 4]), 8],
    ['one along a part of the other, to its end', of([6, 0], [10, 0], [6, 4]), 8],
    ['the other way about, on the far side', of([0, 0], [-5, 0], [0, -5]), 0],
    ['running on from its end', of([10, 0], [20, 0], [20, 5]), 0],
    ['the same edge from the far side', of([10, 0], [0, 0], [5, -5]), 0],
    ['folded back over the end', of([10, 0], [4, 0], [4, -6], [10, -6]), 0],
  ])('%s', (_, other, common) => {
    const both = area(triangle) + area(other);
    expect(area(intersect(triangle, other))).toBeCloseTo(common, 9);
    expect(area(union([triangle, other]))).toBeCloseTo(both - common, 9);
    expect(area(subtract(triangle, other))).toBeCloseTo(area(triangle) - common, 9);
  });
});

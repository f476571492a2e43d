import { describe, expect, it } from 'vitest';
import { chainBetween, chained, closedChain, endingAt } from '../../src/geometry/chain.js';
import { arc, line } from '../../src/geometry/edge.js';

// Two lines and an arc about (2, 1) whose ends miss each other by the rounding that chains are mended of.
const HAIR = 1e-12;
const edges = [line(0, 0, 2, 0), arc(2 + HAIR, 0, 3, 1, 2, 1, 1), line(3, 1 - HAIR, 0, 4)];

describe('chains', () => {
  it('make each edge end where the next starts, and leave its circle as it is', () => {
    expect(chained(edges)).toEqual([
      line(0, 0, 2 + HAIR, 0),
      arc(2 + HAIR, 0, 3, 1 - HAIR, 2, 1, 1),
      line(3, 1 - HAIR, 0, 4),
    ]);
  });

  it('close', () => {
    const [first, , last] = closedChain(edges);
    expect([last!.x1, last!.y1]).toEqual([first!.x0, first!.y0]);
    expect(closedChain([arc(1, 0, 1, HAIR, 0, 0, 1)])).toEqual([arc(1, 0, 1, 0, 0, 0, 1)]);
  });

  it('end where they are told, and start there too', () => {
    expect(endingAt(edges, 7, 8)).toEqual([edges[0], edges[1], line(3, 1 - HAIR, 7, 8)]);
    expect(chainBetween(edges, [-1, 5], [7, 8])).toEqual([
      line(-1, 5, 2, 0),
      edges[1],
      line(3, 1 - HAIR, 7, 8),
    ]);
    expect(chainBetween([line(0, 0, 1, 1)], [2, 3], [4, 5])).toEqual([line(2, 3, 4, 5)]);
  });

  it('of no edge are a line between the two places, or nothing where these are one', () => {
    expect(chainBetween([], [0, 0], [1, 2])).toEqual([line(0, 0, 1, 2)]);
    expect(chainBetween([], [1, 2], [1, 2 + 1e-9])).toEqual([]);
  });
});

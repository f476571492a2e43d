import type { Vector } from '../../geometry/bezier.js';

/** What a step of each kind becomes: steps of both kinds (A, B) and turns of 60 degrees (+ left, - right). */
const RULES = { A: 'A-B--B+A++AA+B-', B: '+A-BB--B-A++A+B' } as const;

/** Six directions of the triangular lattice, on its own two axes. */
const DIRECTIONS: readonly Vector[] = [
  [1, 0],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [0, -1],
  [1, -1],
];

/**
 * Gosper's curve through points of the triangular lattice (M. Gardner, "Mathematical Games", Scientific American,
 * December 1976, from memory): 7^order steps of length 1, from (0, 0) to a point sqrt(7)^order away.
 */
export function gosperPath(order: number): Vector[] {
  let [i, j, facing] = [0, 0, 0];
  const out: Vector[] = [[0, 0]];
  const draw = (kind: 'A' | 'B', k: number): void => {
    if (k === 0) {
      const [di, dj] = DIRECTIONS[facing]!;
      i += di;
      j += dj;
      out.push([i + j / 2, (j * Math.sqrt(3)) / 2]);
      return;
    }
    for (const sign of RULES[kind]) {
      if (sign === '+') facing = (facing + 1) % 6;
      else if (sign === '-') facing = (facing + 5) % 6;
      else draw(sign as 'A' | 'B', k - 1);
    }
  };
  draw('A', order);
  return out;
}

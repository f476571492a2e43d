import { randomAt } from '../../random-at.js';

/**
 * Which way the tile in column i, row j lies: quarter turns counter-clockwise, 0 to 3. At 0 its figure is about its
 * lower left corner.
 */
export type Arrangement = (i: number, j: number) => number;

export type ArrangementName = 'chance' | 'mirrored' | 'alike' | 'rows' | 'circles';

/**
 * Arrangements by name. Tile (0, 0) has its lower left corner on the grid's origin, about which "mirrored" has the
 * symmetry of a square.
 */
export function arrangement(name: ArrangementName, seed: number): Arrangement {
  switch (name) {
    case 'chance':
      return (i, j) => chance(seed, i, j);
    case 'mirrored':
      return (i, j) => mirrored(seed, i, j);
    case 'alike':
      return () => 0;
    case 'rows':
      return (_, j) => j & 1;
    case 'circles':
      return (i, j) => (i + j) & 1;
  }
}

function mirrored(seed: number, i: number, j: number): number {
  // Column -1 mirrors column 0.
  const x = i < 0 ? -1 - i : i;
  const y = j < 0 ? -1 - j : j;
  let turn = chance(seed, Math.max(x, y), Math.min(x, y));
  // On the diagonal a tile must be its own mirror image.
  if (x === y) turn &= 2;
  if (x < y) turn = (4 - turn) & 3;
  if (i < 0) turn ^= 1;
  return j < 0 ? 3 - turn : turn;
}

/** Makes the arrangement of the default seed one of rings about the middle. */
const FIRST = 2;

function chance(seed: number, i: number, j: number): number {
  return Math.floor(randomAt(seed + FIRST, i, j)() * 4);
}

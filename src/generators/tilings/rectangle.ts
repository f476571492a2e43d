import type { CellTile } from './lay.js';

/** A tile with sides along the axes, from its lower left corner. */
export function rectangle(kind: string, x: number, y: number, width: number, height: number): CellTile {
  return {
    kind,
    noun: kind,
    points: [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
  };
}

import { num } from '../values.js';
import { type Periodic, periodic } from './lay.js';
import { rectangle } from './rectangle.js';
import type { TileKind } from './tile.js';
import { tilePattern } from './tile-pattern.js';

const KINDS: readonly TileKind[] = [
  { value: 'lying', meaning: 'boards of the one direction (lying, when the turn is 0)' },
  { value: 'standing', meaning: 'boards of the other direction' },
];

/** Boards 1 wide: each lying one ends at the side of a standing one, and the pair climbs by one width. */
export function herringboneCell(ratio: number): Periodic {
  return {
    steps: [
      [1, 1],
      [-ratio, ratio],
    ],
    cell: [rectangle('lying', 0, 0, ratio, 1), rectangle('standing', ratio, 1 - ratio, 1, ratio)],
  };
}

export const herringbone = tilePattern({
  name: 'herringbone',
  title: 'Herringbone',
  summary: 'Boards that end at the sides of boards square to them, in zigzag rows.',
  parameters: [
    {
      kind: 'number',
      name: 'ratio',
      meaning: 'Length of a board over its width.',
      say: 'boards … times as long as wide',
      default: 4,
      min: 1.5,
      max: 10,
    },
  ],
  edge: { default: 11, meaning: 'Width of the boards.', say: 'boards … wide' },
  kinds: KINDS,
  defaults: { turn: 45, plug: 'tiles', wall: 4 },
  choosing: '… boards chosen',
  source: (values) => periodic(herringboneCell(num(values, 'ratio')), KINDS),
});

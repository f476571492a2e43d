import { num } from '../values.js';
import { type Periodic, periodic } from './lay.js';
import { rectangle } from './rectangle.js';
import type { TileKind } from './tile.js';
import { tilePattern } from './tile-pattern.js';

const KINDS: readonly TileKind[] = [
  { value: 'lying', meaning: 'strips of the one direction (lying, when the turn is 0)' },
  { value: 'standing', meaning: 'strips of the other direction' },
];

/** Square blocks of so many strips 1 wide, lying and standing by turns like a chequer. */
export function basketCell(strips: number): Periodic {
  // The middle one comes first: it is what lies on the middle of the outline.
  const middle = Math.floor(strips / 2);
  const each = Array.from({ length: strips }, (_, i) => (i + middle) % strips);
  return {
    steps: [
      [2 * strips, 0],
      [strips, strips],
    ],
    cell: [
      ...each.map((i) => rectangle('lying', 0, i, strips, 1)),
      ...each.map((i) => rectangle('standing', strips + i, 0, 1, strips)),
    ],
  };
}

export const basketWeave = tilePattern({
  name: 'basket-weave',
  title: 'Basket weave',
  summary: 'Square blocks of strips that lie and stand by turns.',
  parameters: [
    {
      kind: 'count',
      name: 'strips',
      meaning: 'Number of strips in a block.',
      say: '… strips to a block',
      default: 3,
      min: 2,
      max: 8,
    },
  ],
  edge: { default: 9.5, meaning: 'Width of the strips.', say: 'strips … wide' },
  kinds: KINDS,
  defaults: { plug: 'tiles', wall: 4 },
  choosing: '… strips chosen',
  source: (values) => periodic(basketCell(num(values, 'strips')), KINDS),
});

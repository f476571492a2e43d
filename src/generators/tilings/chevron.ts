import { cos, sin } from '../../geometry/trig.js';
import { num } from '../values.js';
import { type CellTile, type Periodic, periodic } from './lay.js';
import type { TileKind } from './tile.js';
import { tilePattern } from './tile-pattern.js';

const KINDS: readonly TileKind[] = [
  { value: 'dark', meaning: 'every other zigzag', of: ['rising dark', 'falling dark'] },
  { value: 'light', meaning: 'the zigzags between', of: ['rising light', 'falling light'] },
  { value: 'rising', meaning: 'boards that rise to the right', of: ['rising dark', 'rising light'] },
  { value: 'falling', meaning: 'boards that fall to the right', of: ['falling dark', 'falling light'] },
];

/** Boards 1 wide with upright ends, rising and falling by turns, so that their ends meet in straight upright lines. */
export function chevronCell(angle: number, ratio: number): Periodic {
  const width = ratio * cos(angle);
  const rise = ratio * sin(angle);
  const end = 1 / cos(angle);
  const board = (shade: string, y: number): CellTile[] => [
    {
      kind: `rising ${shade}`,
      noun: `rising board ${shade}`,
      points: [
        [0, y],
        [width, y + rise],
        [width, y + rise + end],
        [0, y + end],
      ],
    },
    {
      kind: `falling ${shade}`,
      noun: `falling board ${shade}`,
      points: [
        [width, y + rise],
        [2 * width, y],
        [2 * width, y + end],
        [width, y + rise + end],
      ],
    },
  ];
  return {
    steps: [
      [2 * width, 0],
      [0, 2 * end],
    ],
    cell: [...board('dark', 0), ...board('light', end)],
  };
}

export const chevron = tilePattern({
  name: 'chevron',
  title: 'Chevron',
  summary: 'Slanting boards whose mitred ends meet in straight lines, in zigzags.',
  parameters: [
    {
      kind: 'angle',
      name: 'angle',
      meaning: 'Slope of the boards.',
      say: 'boards sloping …',
      default: 45,
      min: 10,
      max: 70,
    },
    {
      kind: 'number',
      name: 'ratio',
      meaning: 'Length of a board over its width.',
      say: 'boards … times as long as wide',
      default: 3.5,
      min: 1,
      max: 12,
    },
  ],
  edge: { default: 9.5, meaning: 'Width of the boards.', say: 'boards … wide' },
  kinds: KINDS,
  defaults: { plug: 'tiles', wall: 4, centre: 'vertex' },
  choosing: '… boards chosen',
  source: (values) => periodic(chevronCell(num(values, 'angle'), num(values, 'ratio')), KINDS),
});

import { cos, sin } from '../../geometry/trig.js';
import type { AngleParameter } from '../../schema/parameter.js';
import { num } from '../values.js';
import { type CellTile, type Periodic, periodic } from './lay.js';
import type { Point, TileKind, TileSource } from './tile.js';
import { tilePattern } from './tile-pattern.js';

const KINDS: readonly TileKind[] = [
  { value: 'dark', meaning: 'every other column' },
  { value: 'light', meaning: 'the columns between' },
];

const angleParameter: AngleParameter = {
  kind: 'angle',
  name: 'angle',
  meaning: 'Angle at the top of the rhombs; it sets the height of half-drop tiles too.',
  say: '… at the top',
  default: 75,
  min: 20,
  max: 160,
};

/** Rhombs of edge 1 on their points, or the rectangles of a half-drop repeat round the same middles. */
export function rhombCell(angle: number, halfDrop: boolean): Periodic {
  // Half of each diagonal; columns stand `x` apart and each lies `y` lower than the one before it.
  const x = sin(angle / 2);
  const y = cos(angle / 2);
  const corners: readonly Point[] = halfDrop
    ? [
        [x / 2, y],
        [-x / 2, y],
        [-x / 2, -y],
        [x / 2, -y],
      ]
    : [
        [0, y],
        [-x, 0],
        [0, -y],
        [x, 0],
      ];
  const tile = (kind: string, dx: number, dy: number): CellTile => ({
    kind,
    noun: `${kind} tile`,
    points: corners.map(([u, v]): Point => [u + dx, v + dy]),
  });
  return {
    steps: [
      [2 * x, 0],
      [0, 2 * y],
    ],
    cell: [tile('dark', 0, 0), tile('light', x, -y)],
  };
}

export function rhombSource(angle: number, halfDrop: boolean): TileSource {
  return periodic(rhombCell(angle, halfDrop), KINDS);
}

export const rhombs = tilePattern({
  name: 'rhombs',
  title: 'Rhombs',
  summary: 'A lattice of rhombs of any angle, or a half-drop repeat of upright rectangles.',
  parameters: [
    {
      kind: 'choice',
      name: 'lattice',
      meaning: 'What lies on the lattice.',
      say: 'set as …',
      default: 'rhombs',
      options: [
        { value: 'rhombs', meaning: 'rhombs on their points' },
        {
          value: 'half-drop',
          meaning: 'upright rectangles in columns, each half a step lower than the last',
        },
      ],
    },
    angleParameter,
  ],
  edge: { default: 15.5, meaning: 'Length of the edges of the rhombs.' },
  kinds: KINDS,
  defaults: { centre: 'vertex' },
  source: (values) => rhombSource(num(values, 'angle'), values.lattice === 'half-drop'),
});

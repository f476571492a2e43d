import { type CellTile, type Periodic, periodic } from './lay.js';
import type { Point, TileKind } from './tile.js';
import { tilePattern } from './tile-pattern.js';

const KINDS: readonly TileKind[] = [
  { value: 'top', meaning: 'the top faces' },
  { value: 'left', meaning: 'the left faces' },
  { value: 'right', meaning: 'the right faces' },
  { value: 'sides', meaning: 'the left and the right faces', of: ['left', 'right'] },
  { value: 'top-left', meaning: 'the top and the left faces', of: ['top', 'left'] },
  { value: 'top-right', meaning: 'the top and the right faces', of: ['top', 'right'] },
];

const HALF_ROOT3 = Math.sqrt(3) / 2;

/** The corners of a regular hexagon about (0, 0) with edges of 1, from the right upper one, counter-clockwise. */
const HEXAGON: readonly Point[] = [
  [HALF_ROOT3, 1 / 2],
  [0, 1],
  [-HALF_ROOT3, 1 / 2],
  [-HALF_ROOT3, -1 / 2],
  [0, -1],
  [HALF_ROOT3, -1 / 2],
];

/** The face of a cube seen along its diagonal: from its middle, round three corners of its outline. */
function face(kind: string, first: number): CellTile {
  const corners = [0, 1, 2].map((k) => HEXAGON[(first + k) % 6]!);
  return { kind, noun: `${kind} face`, points: [[0, 0], ...corners] };
}

export const blocks: Periodic = {
  steps: [
    [2 * HALF_ROOT3, 0],
    [HALF_ROOT3, 3 / 2],
  ],
  cell: [face('top', 0), face('left', 2), face('right', 4)],
};

export const tumblingBlocks = tilePattern({
  name: 'tumbling-blocks',
  title: 'Tumbling blocks',
  summary: 'Stacked cubes, each of three rhombs; choose which faces are let in.',
  parameters: [],
  edge: { default: 18 },
  kinds: KINDS,
  defaults: { plug: 'tiles', wall: 4 },
  choosing: '… of the cubes chosen',
  source: () => periodic(blocks, KINDS),
});

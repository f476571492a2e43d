import { bad, num } from '../values.js';
import { type CellTile, type Periodic, periodic } from './lay.js';
import { rectangle } from './rectangle.js';
import type { TileKind } from './tile.js';
import { tilePattern } from './tile-pattern.js';

const KINDS: readonly TileKind[] = [
  { value: 'even', meaning: 'every other course' },
  { value: 'odd', meaning: 'the courses between' },
];

/** Courses 1 high of bricks `ratio` long, each course moved on by the bond, a share of that length. */
export function brickCell(ratio: number, bond: number): Periodic {
  return {
    steps: [
      [ratio, 0],
      [2 * bond * ratio, 2],
    ],
    cell: [rectangle('even', 0, 0, ratio, 1), rectangle('odd', bond * ratio, 1, ratio, 1)],
  };
}

/** The same with hexagons: their points reach `point` into the next course, where its upright joints end. */
export function hexagonCell(ratio: number, bond: number, point: number): Periodic {
  const tile = (kind: string, x: number, y: number): CellTile => ({
    kind,
    noun: kind,
    points: [
      [x, y],
      [x + (1 - bond) * ratio, y - point],
      [x + ratio, y],
      [x + ratio, y + 1 - point],
      [x + bond * ratio, y + 1],
      [x, y + 1 - point],
    ],
  });
  return {
    steps: [
      [ratio, 0],
      [2 * bond * ratio, 2],
    ],
    cell: [tile('even', 0, 0), tile('odd', bond * ratio, 1)],
  };
}

export const courses = tilePattern({
  name: 'courses',
  title: 'Courses',
  summary: 'Bricks or hexagons in courses, each moved on by a bond of any share.',
  parameters: [
    {
      kind: 'choice',
      name: 'shape',
      meaning: 'What the courses are laid of.',
      say: 'laid of …',
      default: 'bricks',
      options: [
        { value: 'bricks', meaning: 'rectangles' },
        { value: 'hexagons', meaning: 'hexagons with a point up and a point down' },
      ],
    },
    {
      kind: 'number',
      name: 'ratio',
      meaning: 'Length of a brick over the height of a course; 1.155 gives regular hexagons.',
      say: 'bricks … times as long as high',
      default: 2,
      min: 0.3,
      max: 10,
    },
    {
      kind: 'number',
      name: 'bond',
      meaning: 'How far each course is moved on, as a share of the length of a brick.',
      say: 'each course moved on … of a brick',
      default: 0.5,
      min: 0,
      max: 1,
    },
    {
      kind: 'number',
      name: 'point',
      meaning: "Height of the hexagons' points as a share of the height of a course.",
      say: 'hexagon points … of a course high',
      default: 0.3333,
      min: 0.1,
      max: 0.9,
    },
  ],
  edge: { default: 12.5, meaning: 'Height of the courses.', say: 'courses … high' },
  kinds: KINDS,
  defaults: { centre: 'edge' },
  choosing: '… courses chosen',
  source: (values) => {
    const [ratio, bond] = [num(values, 'ratio'), num(values, 'bond')];
    if (values.shape === 'bricks') return periodic(brickCell(ratio, bond), KINDS);
    if (bond < 0.2 || bond > 0.8)
      throw bad('bond', `${bond} leaves hexagons no room for a point; use 0.2 to 0.8, or bricks`);
    return periodic(hexagonCell(ratio, bond, num(values, 'point')), KINDS);
  },
});

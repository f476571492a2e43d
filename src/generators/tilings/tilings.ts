import { cos, radians, sin } from '../../geometry/trig.js';

export type Point = readonly [number, number];

/** One tile of a cell: its kind's name and number of sides, and its corners, counter-clockwise. */
export interface CellTile {
  readonly kind: string;
  readonly sides: number;
  readonly points: readonly Point[];
}

/** A periodic tiling with edges of length 1: two steps that repeat the cell, and the cell's tiles, largest first. */
export interface Tiling {
  /** Vertex configuration: the tiles' numbers of sides round a corner. */
  readonly name: string;
  readonly title: string;
  readonly steps: readonly [Point, Point];
  readonly cell: readonly CellTile[];
}

const KINDS: Readonly<Record<number, string>> = { 3: 'triangle', 4: 'square', 6: 'hexagon', 8: 'octagon' };

/** A regular tile with edges of length 1 about (x, y), its first corner in direction `first` degrees. */
function regular(sides: number, x: number, y: number, first: number): CellTile {
  const radius = 1 / (2 * sin(Math.PI / sides));
  const points = Array.from({ length: sides }, (_, i): Point => {
    const a = radians(first) + (2 * Math.PI * i) / sides;
    return [x + radius * cos(a), y + radius * sin(a)];
  });
  return { kind: KINDS[sides]!, sides, points };
}

const ROOT3 = Math.sqrt(3);
const OCTAGON = 1 + Math.SQRT2; // across the flats of an octagon of edge 1

/** Uniform edge-to-edge tilings by regular polygons (Grunbaum and Shephard, Tilings and Patterns, 1987, chapter 2). */
export const tilings: readonly Tiling[] = [
  {
    name: '3^6',
    title: 'triangles',
    steps: [
      [1, 0],
      [1 / 2, ROOT3 / 2],
    ],
    cell: [regular(3, 1 / 2, ROOT3 / 6, 90), regular(3, 1, ROOT3 / 3, -90)],
  },
  {
    name: '4^4',
    title: 'squares',
    steps: [
      [1, 0],
      [0, 1],
    ],
    cell: [regular(4, 1 / 2, 1 / 2, 45)],
  },
  {
    name: '6^3',
    title: 'hexagons',
    steps: [
      [ROOT3, 0],
      [ROOT3 / 2, 3 / 2],
    ],
    cell: [regular(6, 0, 0, 30)],
  },
  {
    name: '4.8.8',
    title: 'octagons and squares',
    steps: [
      [OCTAGON, 0],
      [0, OCTAGON],
    ],
    cell: [regular(8, 0, 0, 22.5), regular(4, OCTAGON / 2, OCTAGON / 2, 0)],
  },
  {
    name: '3.6.3.6',
    title: 'hexagons and triangles',
    steps: [
      [2, 0],
      [1, ROOT3],
    ],
    cell: [regular(6, 0, 0, 0), regular(3, 1, ROOT3 / 3, -90), regular(3, 1, -ROOT3 / 3, 90)],
  },
];

import { cos, radians, sin, tan } from '../../geometry/trig.js';
import type { CellTile, Periodic } from './lay.js';
import { middleOf, type Point } from './tile.js';

/** A periodic tiling by regular polygons with edges of length 1, every corner like every other. */
export interface Uniform extends Periodic {
  /** Vertex configuration: the tiles' numbers of sides round a corner. */
  readonly name: string;
  readonly title: string;
}

const NOUNS: Readonly<Record<number, string>> = {
  3: 'triangle',
  4: 'square',
  6: 'hexagon',
  8: 'octagon',
  12: 'dodecagon',
};

/** A regular polygon from its middle and a corner, counter-clockwise. */
function regular(sides: number, [mx, my]: Point, [x, y]: Point): CellTile {
  const points = Array.from({ length: sides }, (_, i): Point => {
    const c = cos((2 * Math.PI * i) / sides);
    const s = sin((2 * Math.PI * i) / sides);
    return [mx + (x - mx) * c - (y - my) * s, my + (x - mx) * s + (y - my) * c];
  });
  return { kind: String(sides), noun: NOUNS[sides]!, points };
}

/** The regular polygon on the far side of edge i of a tile; that edge is its own edge 0. */
function onEdge(tile: CellTile, i: number, sides: number): CellTile {
  const p = tile.points[i]!;
  const q = tile.points[(i + 1) % tile.points.length]!;
  const [mx, my] = middleOf([p, q]);
  const apothem = 1 / (2 * tan(Math.PI / sides));
  // The outside of a counter-clockwise edge of length 1 is on its right.
  return regular(sides, [mx + (q[1] - p[1]) * apothem, my - (q[0] - p[0]) * apothem], q);
}

/**
 * @param first sides of the first tile, about (0, 0), and the direction of its first corner, degrees
 * @param rest each further tile: its sides, and the tile (by place in the cell) and edge that it stands on
 */
function uniform(
  name: string,
  title: string,
  steps: Periodic['steps'],
  first: readonly [number, number],
  rest: readonly (readonly [number, number, number])[],
): Uniform {
  const [sides, direction] = first;
  const radius = 1 / (2 * sin(Math.PI / sides));
  const corner: Point = [radius * cos(radians(direction)), radius * sin(radians(direction))];
  const cell = [regular(sides, [0, 0], corner)];
  for (const [n, on, edge] of rest) cell.push(onEdge(cell[on]!, edge, n));
  return { name, title, steps, cell };
}

const ROOT3 = Math.sqrt(3);

/** Steps of one length, 60 degrees apart. */
const sixty = (length: number): Periodic['steps'] => [
  [length, 0],
  [length / 2, (length * ROOT3) / 2],
];

/** Steps of one length, square to each other. */
const square = (length: number): Periodic['steps'] => [
  [length, 0],
  [0, length],
];

/** The uniform edge-to-edge tilings by regular polygons (Grunbaum and Shephard, Tilings and Patterns, 1987, chapter 2). */
export const uniformTilings: readonly Uniform[] = [
  uniform('3^6', 'triangles', sixty(1), [3, 90], [[3, 0, 2]]),
  uniform('4^4', 'squares', square(1), [4, 45], []),
  uniform(
    '6^3',
    'hexagons',
    [
      [ROOT3, 0],
      [ROOT3 / 2, 3 / 2],
    ],
    [6, 30],
    [],
  ),
  uniform('4.8.8', 'octagons and squares', square(1 + Math.SQRT2), [8, 22.5], [[4, 0, 0]]),
  uniform(
    '3.6.3.6',
    'hexagons and triangles',
    sixty(2),
    [6, 0],
    [
      [3, 0, 0],
      [3, 0, 5],
    ],
  ),
  uniform(
    '3.4.6.4',
    'hexagons in rings of squares and triangles',
    sixty(1 + ROOT3),
    [6, 30],
    [
      [4, 0, 5],
      [4, 0, 0],
      [4, 0, 1],
      [3, 1, 3],
      [3, 2, 3],
    ],
  ),
  uniform(
    '3.12.12',
    'dodecagons and triangles',
    sixty(2 + ROOT3),
    [12, 15],
    [
      [3, 0, 0],
      [3, 0, 2],
    ],
  ),
  uniform(
    '4.6.12',
    'dodecagons, hexagons and squares',
    sixty(3 + ROOT3),
    [12, 15],
    [
      [6, 0, 0],
      [6, 0, 2],
      [4, 0, 11],
      [4, 0, 1],
      [4, 0, 3],
    ],
  ),
  uniform(
    '3^3.4^2',
    'rows of squares and rows of triangles',
    [
      [1, 0],
      [1 / 2, 1 + ROOT3 / 2],
    ],
    [4, 45],
    [
      [3, 0, 0],
      [3, 1, 1],
    ],
  ),
  uniform(
    '3^2.4.3.4',
    'squares turned among pairs of triangles',
    square(Math.sqrt(2 + ROOT3)),
    [4, 30],
    [
      [3, 0, 0],
      [3, 0, 1],
      [3, 0, 2],
      [3, 0, 3],
      [4, 1, 1],
    ],
  ),
  uniform(
    '3^4.6',
    'hexagons strewn among triangles',
    [
      [5 / 2, ROOT3 / 2],
      [1 / 2, (3 * ROOT3) / 2],
    ],
    [6, 0],
    [
      [3, 0, 0],
      [3, 0, 1],
      [3, 0, 2],
      [3, 0, 3],
      [3, 0, 4],
      [3, 0, 5],
      [3, 1, 2],
      [3, 2, 2],
    ],
  ),
];

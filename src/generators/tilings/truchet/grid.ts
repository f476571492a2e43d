import type { Edge } from '../../../geometry/edge.js';
import { arc, line, reversed } from '../../../geometry/edge.js';
import { type Contour, polygon, type Region } from '../../../geometry/region.js';
import { cos, sin } from '../../../geometry/trig.js';
import type { Point } from '../tile.js';

/** A tile of a square grid by column and row, and how many quarter turns it lies turned. */
export interface Cell {
  readonly i: number;
  readonly j: number;
  readonly quarters: number;
}

/** A square grid on the piece: tile edges of `edge` mm, turned by `turn` radians, (ox, oy) tiles on the middle. */
export interface Grid {
  readonly edge: number;
  readonly turn: number;
  readonly middle: Point;
}

/** From grid coordinates, in tiles, to the piece, mm. */
export function onPiece({ edge, turn, middle }: Grid): (x: number, y: number) => Point {
  const c = cos(turn) * edge;
  const s = sin(turn) * edge;
  return (x, y) => {
    const u = x - middle[0];
    const v = y - middle[1];
    return [u * c - v * s, u * s + v * c];
  };
}

/** Corners of a tile from its lower left one, counter-clockwise, in grid coordinates. */
export function corners({ i, j }: Cell): [Point, Point, Point, Point] {
  return [
    [i, j],
    [i + 1, j],
    [i + 1, j + 1],
    [i, j + 1],
  ];
}

/** The corners of a tile with the one its figure is about first. */
export function turnedCorners(cell: Cell): [Point, Point, Point, Point] {
  const all = corners(cell);
  const at = (k: number): Point => all[(cell.quarters + k) % 4]!;
  return [at(0), at(1), at(2), at(3)];
}

export function square(grid: Grid, cell: Cell): Contour {
  return polygon(corners(cell).map(([x, y]) => onPiece(grid)(x, y)));
}

/**
 * The two quarter circles of a tile, about the corner its figure is about and the one opposite, each turning
 * counter-clockwise. They meet the tile's edges at their middles, squarely.
 */
export function quarterArcs(grid: Grid, cell: Cell): [Edge, Edge] {
  const [p, q, r, s] = turnedCorners(cell);
  return [quarter(grid, p, q, s), quarter(grid, r, s, q)];
}

/** The tile's diagonal that does not pass through the corner its figure is about. */
export function diagonal(grid: Grid, cell: Cell): Edge {
  const [, q, , s] = turnedCorners(cell);
  const to = onPiece(grid);
  const [x0, y0] = to(q[0], q[1]);
  const [x1, y1] = to(s[0], s[1]);
  return line(x0, y0, x1, y1);
}

/** The half of the tile by the corner its figure is about. */
export function halfTile(grid: Grid, cell: Cell): Contour {
  const [p, q, , s] = turnedCorners(cell);
  return polygon([p, q, s].map(([x, y]) => onPiece(grid)(x, y)));
}

/**
 * What of the tile belongs to the corners whose column and row add to an even number: two quarter discs, or all but
 * two.
 */
export function evenArea(grid: Grid, cell: Cell): Region {
  const [p, q, r, s] = turnedCorners(cell);
  const to = onPiece(grid);
  const [first, second] = quarterArcs(grid, cell);
  const by = (corner: Point, e: Edge): Contour => {
    const [x, y] = to(corner[0], corner[1]);
    return [line(x, y, e.x0, e.y0), e, line(e.x1, e.y1, x, y)];
  };
  if ((p[0] + p[1]) % 2 === 0) return { contours: [by(p, first), by(r, second)] };
  const [qx, qy] = to(q[0], q[1]);
  const [sx, sy] = to(s[0], s[1]);

  return {
    contours: [
      [
        line(first.x0, first.y0, qx, qy),
        line(qx, qy, second.x1, second.y1),
        reversed(second),
        line(second.x0, second.y0, sx, sy),
        line(sx, sy, first.x1, first.y1),
        reversed(first),
      ],
    ],
  };
}

function quarter(grid: Grid, centre: Point, from: Point, to: Point): Edge {
  const map = onPiece(grid);
  const [cx, cy] = map(centre[0], centre[1]);
  const [x0, y0] = map((centre[0] + from[0]) / 2, (centre[1] + from[1]) / 2);
  const [x1, y1] = map((centre[0] + to[0]) / 2, (centre[1] + to[1]) / 2);
  return arc(x0, y0, x1, y1, cx, cy, grid.edge / 2);
}

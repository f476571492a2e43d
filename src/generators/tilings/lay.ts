import type { Box } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import { mm } from '../values.js';
import type { Point, Tiling } from './tilings.js';

/** A tile where it lies on the piece, mm. */
export interface LaidTile {
  /** Kind and cell, "octagon 3,4"; a second tile of its kind in the cell has a letter, "triangle 3,4 b". */
  readonly name: string;
  readonly sides: number;
  readonly points: readonly Point[];
}

export interface Lay {
  /** Length of the tiles' edges, mm. */
  readonly edge: number;
  /** Counter-clockwise, radians. */
  readonly turn: number;
  /** What lies on (0, 0): the middle of the first tile, a corner of it, or the middle of an edge. */
  readonly centre: 'tile' | 'vertex' | 'edge';
}

const MOST_TILES = 20_000;

/** Every tile whose box meets the box, row by row. Throws Refusal when there would be more than 20,000. */
export function lay(tiling: Tiling, { edge, turn, centre }: Lay, box: Box): LaidTile[] {
  const [[ax, ay], [bx, by]] = tiling.steps;
  const cellArea = ax * by - ay * bx;
  const count =
    ((box.maxX - box.minX) * (box.maxY - box.minY) * tiling.cell.length) / (cellArea * edge * edge);
  if (count > MOST_TILES) {
    const least = Math.ceil(edge * Math.sqrt(count / MOST_TILES) * 100) / 100;
    throw new Refusal(
      'too-large',
      `pattern.edge: ${mm(edge)} makes about ${Math.round(count)} tiles, more than ${MOST_TILES}; use ${mm(least)} or more`,
    );
  }
  const [ox, oy] = middle(tiling.cell[0]!.points, centre);
  const c = cos(turn) * edge;
  const s = sin(turn) * edge;
  const onPiece = (x: number, y: number): Point => [(x - ox) * c - (y - oy) * s, (x - ox) * s + (y - oy) * c];

  // The box's corners in cells, and two cells more on every side since tiles reach out of their cell.
  const e2 = edge * edge;
  const corners = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].map((y): Point => {
      const u = (x * c + y * s) / e2 + ox;
      const v = (y * c - x * s) / e2 + oy;
      return [(u * by - v * bx) / cellArea, (v * ax - u * ay) / cellArea];
    }),
  );
  const range = (k: 0 | 1): [number, number] => {
    const all = corners.map((p) => p[k]);
    return [Math.floor(Math.min(...all)) - 2, Math.ceil(Math.max(...all)) + 2];
  };
  const [i0, i1] = range(0);
  const [j0, j1] = range(1);
  const letters = tiling.cell.map((t, k) => tiling.cell.slice(0, k).filter((o) => o.kind === t.kind).length);

  const out: LaidTile[] = [];
  for (let j = j0; j <= j1; j++)
    for (let i = i0; i <= i1; i++)
      tiling.cell.forEach((tile, k) => {
        const points = tile.points.map(([x, y]) => onPiece(x + i * ax + j * bx, y + i * ay + j * by));
        if (!meets(points, box)) return;
        const letter = letters[k] ? ` ${String.fromCharCode(97 + letters[k]!)}` : '';
        out.push({ name: `${tile.kind} ${i},${j}${letter}`, sides: tile.sides, points });
      });
  return out;
}

function middle(points: readonly Point[], centre: Lay['centre']): Point {
  const share = points.slice(0, { tile: points.length, vertex: 1, edge: 2 }[centre]);
  const sum = (k: 0 | 1): number => share.reduce((total: number, p) => total + p[k], 0);
  return [sum(0) / share.length, sum(1) / share.length];
}

function meets(points: readonly Point[], box: Box): boolean {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return (
    Math.min(...xs) < box.maxX &&
    Math.max(...xs) > box.minX &&
    Math.min(...ys) < box.maxY &&
    Math.max(...ys) > box.minY
  );
}

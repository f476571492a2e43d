import type { Box } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import {
  type LaidTile,
  type Lay,
  meets,
  middleOf,
  type Point,
  refuseFlood,
  type TileKind,
  type TileSource,
} from './tile.js';

/** One tile of a cell: its kind, what it is called in messages, and its corners, counter-clockwise. */
export interface CellTile {
  readonly kind: string;
  readonly noun: string;
  readonly points: readonly Point[];
}

/** A periodic tiling: two steps (the second to the left of the first) that repeat the cell, and the cell's tiles. */
export interface Periodic {
  readonly steps: readonly [Point, Point];
  /** The first tile is the one that may lie on the middle of the outline. */
  readonly cell: readonly CellTile[];
}

/** A periodic tiling as a source of tiles; `kinds` are the choices it offers. */
export function periodic(tiling: Periodic, kinds: readonly TileKind[]): TileSource {
  return { kinds, tiles: (how, box) => lay(tiling, how, box) };
}

/** Every tile whose box meets the box, row by row. Throws Refusal when there would be a flood. */
export function lay(tiling: Periodic, { edge, turn, centre }: Lay, box: Box): LaidTile[] {
  const [[ax, ay], [bx, by]] = tiling.steps;
  const cellArea = ax * by - ay * bx;
  refuseFlood(edge, cellArea / tiling.cell.length, box);
  const [ox, oy] = onMiddle(tiling.cell[0]!.points, centre);
  const c = cos(turn) * edge;
  const s = sin(turn) * edge;
  const onPiece = (x: number, y: number): Point => [(x - ox) * c - (y - oy) * s, (x - ox) * s + (y - oy) * c];

  // The box's corners in cells.
  const e2 = edge * edge;
  const corners = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].map((y): Point => {
      const u = (x * c + y * s) / e2 + ox;
      const v = (y * c - x * s) / e2 + oy;
      return inCells(tiling, u, v);
    }),
  );
  // Tiles reach out of their cell: as many cells more on every side as they reach.
  const reach = tiling.cell.flatMap((t) => t.points.map(([x, y]) => inCells(tiling, x, y)));
  const range = (k: 0 | 1): [number, number] => {
    const all = corners.map((p) => p[k]);
    const out = reach.map((p) => p[k]);
    return [
      Math.floor(Math.min(...all) - Math.max(...out)) - 1,
      Math.ceil(Math.max(...all) - Math.min(...out)) + 1,
    ];
  };
  const [i0, i1] = range(0);
  const [j0, j1] = range(1);
  const letters = tiling.cell.map((t, k) => tiling.cell.slice(0, k).filter((o) => o.noun === t.noun).length);

  const out: LaidTile[] = [];
  for (let j = j0; j <= j1; j++)
    for (let i = i0; i <= i1; i++)
      tiling.cell.forEach((tile, k) => {
        const points = tile.points.map(([x, y]) => onPiece(x + i * ax + j * bx, y + i * ay + j * by));
        if (!meets(points, box)) return;
        const letter = letters[k] ? ` ${String.fromCharCode(97 + letters[k]!)}` : '';
        out.push({ name: `${tile.noun} ${i},${j}${letter}`, kind: tile.kind, points });
      });
  return out;
}

/** A place as so many of the first step and so many of the second. */
export function inCells({ steps: [[ax, ay], [bx, by]] }: Periodic, x: number, y: number): Point {
  const cellArea = ax * by - ay * bx;
  return [(x * by - y * bx) / cellArea, (y * ax - x * ay) / cellArea];
}

function onMiddle(points: readonly Point[], centre: Lay['centre']): Point {
  return middleOf(points.slice(0, { tile: points.length, vertex: 1, edge: 2 }[centre]));
}

import type { Box } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import { mm } from '../values.js';

export type Point = readonly [number, number];

/** A tile where it lies on the piece, mm: a simple polygon, counter-clockwise, not necessarily convex. */
export interface LaidTile {
  /** One tile's own, for messages: "octagon 3,4". */
  readonly name: string;
  /** A value of its source's kinds. */
  readonly kind: string;
  readonly points: readonly Point[];
}

/** How a tiling is to lie on the piece. */
export interface Lay {
  /** Length of the tiles' edges, mm. */
  readonly edge: number;
  /** Counter-clockwise, radians. */
  readonly turn: number;
  /** What lies on (0, 0): the middle of a tile, a corner of it, or the middle of one of its edges. */
  readonly centre: 'tile' | 'vertex' | 'edge';
}

/** A choice of tiles to let in. */
export interface TileKind {
  readonly value: string;
  /** A phrase in the plural, "tiles of 8 sides": it completes "this tiling has no ...". */
  readonly meaning: string;
  /** The tiles' kinds that belong to the choice, when it is not the one kind of its own name. */
  readonly of?: readonly string[];
}

/** Anything that can cover a box with tiles. */
export interface TileSource {
  /** The choices this tiling offers. */
  readonly kinds: readonly TileKind[];
  /** Every tile whose box meets the box, once each, leaving no gap. Throws Refusal when there would be a flood. */
  tiles(how: Lay, box: Box): LaidTile[];
}

const MOST_TILES = 20_000;

/** Refuses a flood of tiles, naming an edge that works. `tileArea`: mean area of a tile of edge 1. */
export function refuseFlood(edge: number, tileArea: number, box: Box): void {
  const count = ((box.maxX - box.minX) * (box.maxY - box.minY)) / (tileArea * edge * edge);
  if (count <= MOST_TILES) return;
  const least = Math.ceil(edge * Math.sqrt(count / MOST_TILES) * 100) / 100;
  throw new Refusal(
    'too-large',
    `pattern.edge: ${mm(edge)} makes about ${Math.round(count)} tiles, more than ${MOST_TILES}; use ${mm(least)} or more`,
  );
}

/** Whether a tile's box meets a box. */
export function meets(points: readonly Point[], box: Box): boolean {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return (
    Math.min(...xs) < box.maxX &&
    Math.max(...xs) > box.minX &&
    Math.min(...ys) < box.maxY &&
    Math.max(...ys) > box.minY
  );
}

/** The mean of points. */
export function middleOf(points: readonly Point[]): Point {
  let x = 0;
  let y = 0;
  for (const p of points) {
    x += p[0];
    y += p[1];
  }
  return [x / points.length, y / points.length];
}

import type { Box } from '../../../geometry/region.js';
import { cos, sin } from '../../../geometry/trig.js';
import { random } from '../../random.js';
import { type LaidTile, type Lay, meets, middleOf, type Point } from '../tile.js';

/** A tile of a patch, in edges. */
export interface PatchTile {
  readonly kind: string;
  /** Counter-clockwise. */
  readonly points: readonly Point[];
}

/** Farthest that the point which `centre` asks for can be from a place in a patch, edges. */
export const SNAP = 4;

/** How far round its middle a patch must reach to cover the box, edges. */
export function radiusOf(box: Box, edge: number): number {
  const x = Math.max(Math.abs(box.minX), Math.abs(box.maxX));
  const y = Math.max(Math.abs(box.minY), Math.abs(box.maxY));
  return Math.sqrt(x * x + y * y) / edge + SNAP;
}

/** A place that the seed picks, evenly, from a disc about (x, y). */
export function placeIn([x, y]: Point, radius: number, seed: number): Point {
  const chance = random(seed);
  const r = radius * Math.sqrt(chance());
  const a = 2 * Math.PI * chance();
  return [x + r * cos(a), y + r * sin(a)];
}

/**
 * Lays the tiles of a patch on the piece: what `centre` asks for nearest to `place` comes to the middle. The patch
 * must cover the disc of `radiusOf` about the place. Tiles are numbered in the order given.
 */
export function layPatch(tiles: readonly PatchTile[], place: Point, how: Lay, box: Box): LaidTile[] {
  const [ox, oy] = nearest(tiles, place, how.centre);
  const c = cos(how.turn) * how.edge;
  const s = sin(how.turn) * how.edge;
  const out: LaidTile[] = [];
  for (const { kind, points } of tiles) {
    const laid = points.map(([x, y]): Point => [(x - ox) * c - (y - oy) * s, (x - ox) * s + (y - oy) * c]);
    if (meets(laid, box)) out.push({ name: `${kind} ${out.length + 1}`, kind, points: laid });
  }
  return out;
}

function nearest(tiles: readonly PatchTile[], [x, y]: Point, centre: Lay['centre']): Point {
  let best: Point = [x, y];
  let least = Number.POSITIVE_INFINITY;
  const offer = (p: Point): void => {
    const d = (p[0] - x) * (p[0] - x) + (p[1] - y) * (p[1] - y);
    // Places equally near, but for rounding: the first.
    if (d < least - 1e-9) {
      least = d;
      best = p;
    }
  };
  for (const { points } of tiles) {
    if (centre === 'tile') offer(middleOf(points));
    else
      points.forEach((p, i) => {
        offer(centre === 'vertex' ? p : middleOf([p, points[(i + 1) % points.length]!]));
      });
  }
  return best;
}

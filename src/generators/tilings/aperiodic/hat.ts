import type { Box } from '../../../geometry/region.js';
import { num } from '../../values.js';
import { type LaidTile, type Lay, refuseFlood, type TileSource } from '../tile.js';
import { tilePattern } from '../tile-pattern.js';
import { PHI } from './half-tiles.js';
import { HatClusters, hatCorners } from './hat-substitution.js';
import { layPatch, type PatchTile, placeIn, radiusOf } from './patch.js';

const kinds = [
  { value: 'hat', meaning: 'hats' },
  { value: 'mirrored', meaning: 'mirrored hats' },
];

export const hat = tilePattern({
  name: 'hat',
  title: 'Hat tiling',
  summary: 'One tile of thirteen sides, some of them mirrored, that covers the plane without ever repeating.',
  parameters: [],
  edge: { default: 6.5, meaning: 'Length of the shorter sides of a hat.', say: 'the shorter sides … long' },
  kinds,
  defaults: { strap: 4.2, wall: 4.2 },
  source: (values) => hatSource(num(values, 'seed')),
});

/** Hats as a source of tiles, about a place that the seed picks. */
export function hatSource(seed: number): TileSource {
  return { kinds, tiles: (how, box) => lay(seed, how, box) };
}

/** Area of a hat: eight kites of area sqrt 3. */
const AREA = 8 * Math.sqrt(3);

/** An H of level 0 covers a disc of this radius about its middle; each level multiplies it by PHI * PHI. */
const INRADIUS = 2.4;

/** Room for the seed to pick a place from, in sides. */
const ROOM = 40;

/** Makes the part that the default seed shows one that sits evenly in a square. */
const FIRST = 13;

function lay(seed: number, how: Lay, box: Box): LaidTile[] {
  refuseFlood(how.edge, AREA, box);
  const radius = radiusOf(box, how.edge);
  let level = 0;
  let covered = INRADIUS;
  while (covered < radius + ROOM) {
    level++;
    covered *= PHI * PHI;
  }
  const clusters = new HatClusters(level);
  const place = placeIn(clusters.middle(), covered - radius, seed + FIRST);
  const tiles = clusters.hats(place, radius).map(
    (h): PatchTile => ({
      kind: h.mirrored ? 'mirrored' : 'hat',
      points: hatCorners(h),
    }),
  );
  return layPatch(tiles, place, how, box);
}

import type { Box } from '../../../geometry/region.js';
import { num } from '../../values.js';
import { type LaidTile, type Lay, type Point, refuseFlood, type TileSource } from '../tile.js';
import { tilePattern } from '../tile-pattern.js';
import { divided, type PenroseStyle, PHI, wheel, wholeTile } from './half-tiles.js';
import { layPatch, type PatchTile, placeIn, radiusOf } from './patch.js';

/** What part of the infinite tiling lies on the middle: a point of five-fold symmetry, or a place the seed picks. */
export type PenrosePart = 'sun' | 'star' | 'elsewhere';

export const penrose = tilePattern({
  name: 'penrose',
  title: 'Penrose tiling',
  summary: 'Penrose rhombs, or kites and darts: five-fold patterns that never repeat.',
  parameters: [
    {
      kind: 'choice',
      name: 'style',
      meaning: 'The two tiles.',
      say: '…',
      default: 'rhombs',
      options: [
        { value: 'rhombs', meaning: 'a thick and a thin rhomb' },
        { value: 'kites', meaning: 'a kite and a dart' },
      ],
    },
    {
      kind: 'choice',
      name: 'part',
      meaning: 'Which part of the infinite tiling is drawn.',
      say: 'the … part',
      default: 'sun',
      options: [
        { value: 'sun', meaning: 'round five kites, or the rhombs there' },
        { value: 'star', meaning: 'round five darts, or the rhombs there' },
        { value: 'elsewhere', meaning: 'round a place that the seed picks' },
      ],
    },
  ],
  edge: {
    default: 15,
    meaning: 'Length of the edges of rhombs, and of the longer edges of kites and darts.',
  },
  kinds: [
    { value: 'thick', meaning: 'thick rhombs' },
    { value: 'thin', meaning: 'thin rhombs' },
    { value: 'kite', meaning: 'kites' },
    { value: 'dart', meaning: 'darts' },
  ],
  defaults: { centre: 'vertex', strap: 4.2, wall: 4.2 },
  source: (values) =>
    penroseSource(values.style as PenroseStyle, values.part as PenrosePart, num(values, 'seed')),
});

/** Penrose tiles as a source. `seed` counts only elsewhere than round a sun or star. */
export function penroseSource(style: PenroseStyle, part: PenrosePart = 'sun', seed = 1): TileSource {
  const kinds =
    style === 'rhombs'
      ? [
          { value: 'thick', meaning: 'thick rhombs' },
          { value: 'thin', meaning: 'thin rhombs' },
        ]
      : [
          { value: 'kite', meaning: 'kites' },
          { value: 'dart', meaning: 'darts' },
        ];
  return { kinds, tiles: (how, box) => lay(style, part, seed, how, box) };
}

/** Mean area of a tile of edge 1, nearly: for the guard against floods. */
const MEAN_AREA = { rhombs: 0.81, kites: 0.5 };

/** Further divisions before a place is picked, so that there is a choice of thousands. */
const DEEPER = 6;

function lay(style: PenroseStyle, part: PenrosePart, seed: number, how: Lay, box: Box): LaidTile[] {
  refuseFlood(how.edge, MEAN_AREA[style], box);
  const radius = radiusOf(box, how.edge);
  // A division turns sun into star and star into sun, and a wheel of kite halves is a sun before any.
  let times = part === 'star' ? 1 : 0;
  while (inradius(times) < radius) times += 2;
  if (part === 'elsewhere') times += DEEPER;
  const place: Point = part === 'elsewhere' ? placeIn([0, 0], inradius(times) - radius, seed) : [0, 0];
  return layPatch(penrosePatch(style, times, place, radius), place, how, box);
}

/** Radius of the disc that a wheel covers whose tiles have edges of 1 after so many divisions, less a tile. */
function inradius(times: number): number {
  let edge = 1;
  for (let i = 0; i < times; i++) edge *= PHI;
  return edge * INRADIUS - 2;
}

/** cos(18 degrees): inradius over circumradius of a decagon. */
const INRADIUS = Math.sqrt(10 + 2 * Math.sqrt(5)) / 4;

/** The tiles of edge 1 that come within `radius` of a place in a wheel that was divided so many times. */
export function penrosePatch(style: PenroseStyle, times: number, [x, y]: Point, radius: number): PatchTile[] {
  let edge = 1;
  for (let i = 0; i < times; i++) edge *= PHI;
  let halves = wheel(style, edge);
  for (let i = 0; i < times; i++) {
    edge /= PHI;
    // A half, and the one beside it that makes it whole, lie within two edges of its corner.
    const reach = radius + 2 * edge;
    halves = halves
      .flatMap(divided)
      .filter(({ a }) => (a[0] - x) * (a[0] - x) + (a[1] - y) * (a[1] - y) < reach * reach);
  }
  return halves.flatMap((h) => wholeTile(h) ?? []);
}

import type { Box } from '../../../geometry/region.js';
import { bad } from '../../values.js';
import { distance } from '../inset.js';
import type { LaidTile, Lay, TileKind, TileSource } from '../tile.js';
import type { Contacts } from './contacts.js';
import { type Face, facesOf } from './faces.js';
import { contactLines } from './rays.js';

export const CONTACT_KINDS: readonly TileKind[] = [
  { value: 'stars', meaning: 'stars, one in every tile', of: ['large', 'small'] },
  { value: 'large', meaning: 'stars of the tiles with the most sides' },
  { value: 'small', meaning: 'stars of the other tiles' },
  { value: 'cells', meaning: 'cells between the stars' },
];

/** The stars and the cells between them that the lines of polygons in contact mark out on a tiling, as tiles. */
export function contactSource(base: TileSource, contacts: Contacts, angle: number): TileSource {
  return { kinds: CONTACT_KINDS, tiles: (how, box) => starsAndCells(base, contacts, angle, how, box) };
}

function starsAndCells(base: TileSource, contacts: Contacts, angle: number, how: Lay, box: Box): LaidTile[] {
  // Cells are whole only where all the tiles round them are laid.
  const more = Math.max(...base.tiles(how, box).map(reach));
  const tiles = base.tiles(how, {
    minX: box.minX - more,
    minY: box.minY - more,
    maxX: box.maxX + more,
    maxY: box.maxY + more,
  });
  const lines = tiles.map(({ points }, owner) => ({
    owner,
    segments: contactLines(points, contacts(points), angle),
  }));
  const faces = facesOf(lines);
  if (faces.length === 0) throw bad('contact', 'no lines meet at this angle; try 45');
  const most = Math.max(...tiles.map((t) => t.points.length));
  return faces.map((face, i) => {
    const kind = kindOf(face, tiles, most);
    return { name: `${kind === 'cells' ? 'cell' : 'star'} ${i + 1}`, kind, points: face.points };
  });
}

/** A cell with all its lines in one tile, one corner or more on each edge of it, is that tile's star. */
function kindOf({ owners, points }: Face, tiles: readonly LaidTile[], most: number): string {
  const sides = tiles[owners[0]!]!.points.length;
  const star = owners.every((o) => o === owners[0]) && points.length >= 2 * sides;
  return star ? (sides === most ? 'large' : 'small') : 'cells';
}

function reach({ points }: LaidTile): number {
  return Math.max(...points.map((p) => distance(p, points[0]!)));
}

import { subtract, union } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { type Contour, polygon, type Region, reversedContour } from '../../geometry/region.js';
import { placer } from '../field.js';
import { cutOff, insetTile } from './inset.js';
import type { LaidTile } from './tile.js';

/** An opening nearer to the field's edge than this may touch it, mm. */
const CLEAR = 0.001;

/**
 * Straps of one width along the edges of the tiles given, and all of the field round them, cut by the field's edge.
 * With a frame, one more strap runs along that edge; openings end at it (see `cutOff`).
 */
export function clippedStraps(
  tiles: readonly LaidTile[],
  strap: number,
  frame: boolean,
  least: number,
  field: Region,
): Region {
  const within = frame ? offset(field, -strap) : field;
  const place = placer(within);
  const whole: Contour[] = [];
  const across: Contour[] = [];
  for (const { points } of tiles) {
    const opening = insetTile(points, strap / 2);
    const where = place(frame ? opening : insetTile(points, strap / 2 - CLEAR));
    if (where === 'inside') whole.push(...opening.contours);
    else if (where === 'across') {
      const left = frame ? cutOff(opening, within, least) : opening;
      across.push(...left.contours);
    }
  }
  // Openings lie apart from each other and from the frame, so this is sound as it stands.
  const holes = (frame ? [...whole, ...across] : whole).map(reversedContour);
  const ground = frame ? field : subtract(field, { contours: across });
  return { contours: [...ground.contours, ...holes] };
}

/**
 * Straps along every edge of the tiles that lie in the field with the straps all round them. Tiles that are `solid`
 * have no opening.
 */
export function wholeStraps(
  tiles: readonly LaidTile[],
  solid: ReadonlySet<LaidTile>,
  strap: number,
  field: Region,
): Region {
  const place = placer(offset(field, -strap / 2));
  const whole = tiles.filter((t) => place({ contours: [polygon(t.points)] }) === 'inside');
  const open = whole.filter((t) => !solid.has(t));
  const holes = open.flatMap((t) => insetTile(t.points, strap / 2).contours.map(reversedContour));
  return { contours: [...grown(whole, strap / 2).contours, ...holes] };
}

/** All places within d of the tiles. They may touch each other at corners alone, so each is grown by itself. */
function grown(tiles: readonly LaidTile[], d: number): Region {
  const ground = union(tiles.map((t) => ({ contours: [polygon(t.points)] })));
  const place = placer(ground);
  const outer = tiles
    .map((t) => offset({ contours: [polygon(t.points)] }, d))
    .filter((t) => place(t) !== 'inside');
  return union([ground, ...outer]);
}

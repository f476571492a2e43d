import { intersect, subtract, union } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { type Contour, polygon, type Region, reversedContour } from '../../geometry/region.js';
import { insetPolygon } from './inset.js';
import type { LaidTile } from './lay.js';
import { placer } from './place.js';

/**
 * Straps of one width along the edges of tiles, cut by the field's edge. With a frame, one more strap runs along that
 * edge and every opening ends at it.
 */
export function clippedStraps(
  tiles: readonly LaidTile[],
  strap: number,
  frame: boolean,
  field: Region,
): Region {
  const openings = tiles.map((t) => insetPolygon(t.points, strap / 2)).filter((p) => p !== null);
  if (!frame) return subtract(field, { contours: openings.map(polygon) });
  const within = offset(field, -strap);
  const place = placer(within);
  const holes: Contour[] = [];
  for (const points of openings) {
    const where = place(points);
    if (where === 'outside') continue;
    const tile = [polygon(points)];
    holes.push(...(where === 'inside' ? tile : intersect({ contours: tile }, within).contours));
  }
  // The openings lie apart from each other and from the edge, so this is sound as it stands.
  return { contours: [...field.contours, ...holes.map(reversedContour)] };
}

/** Straps along every edge of the tiles that lie in the field with the straps all round them. */
export function wholeStraps(tiles: readonly LaidTile[], strap: number, field: Region): Region {
  const place = placer(offset(field, -strap / 2));
  const whole = tiles.filter((t) => place(t.points) === 'inside');
  const ground = union(whole.map((t) => ({ contours: [polygon(t.points)] })));
  const holes = whole.flatMap((t) => {
    const opening = insetPolygon(t.points, strap / 2);
    return opening ? [reversedContour(polygon(opening))] : [];
  });
  const around = offset(ground, strap / 2);
  return { contours: [...around.contours, ...holes] };
}

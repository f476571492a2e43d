import type { Artwork, Piece } from '../geometry/artwork.js';
import { intersect, union } from '../geometry/boolean.js';
import { bounds, parts, polygon, type Region } from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import type { Values } from '../schema/parameter.js';

/** How far a pattern that runs on over a joint is drawn past it, mm, so that its rounded ends are sawn off. */
const PAST = 3;

/**
 * The stave's face without its margin at the joints, and a little wider: a pattern drawn in it goes past them.
 */
export function widened<F extends { readonly values: Values }>(face: F): F {
  const { bottom, top, height, margin } = face.values as Record<string, number>;
  const lean = (top! - bottom!) / 2;
  const steep = Math.sqrt(lean * lean + height! * height!) / height!;
  const more = 2 * (margin! * steep + PAST);
  return { ...face, values: { ...face.values, bottom: bottom! + more, top: top! + more } };
}

/**
 * The artwork's right half and its mirror image: what crosses the right edge of a stave then meets the left edge of its
 * neighbour at the same height.
 */
export function mirrored({ pieces, remarks }: Artwork): Artwork {
  const halves = pieces.flatMap(({ name, region }): Piece[] => {
    const right = rightOf(region);
    if (right.contours.length === 0) return [];
    const whole = parts(union([right, mirrorX(right)]));
    return whole.map((contours, k) => ({
      name: whole.length === 1 ? name : `${name}, ${k + 1}`,
      region: { contours },
    }));
  });
  return { pieces: halves, ...(remarks ? { remarks } : {}) };
}

/** What lies right of the middle. */
function rightOf(region: Region): Region {
  const { minX, minY, maxX, maxY } = bounds(region.contours);
  if (minX >= 0) return region;
  if (maxX <= 0) return { contours: [] };
  const box = polygon([
    [0, minY - 1],
    [maxX + 1, minY - 1],
    [maxX + 1, maxY + 1],
    [0, maxY + 1],
  ]);
  return intersect(region, { contours: [box] });
}

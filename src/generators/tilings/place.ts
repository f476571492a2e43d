import { crossings } from '../../geometry/crossings.js';
import { EdgesIndex } from '../../geometry/edges-index.js';
import { bounds, contains, polygon, type Region, windingNumber } from '../../geometry/region.js';
import { insetPolygon } from './inset.js';
import type { Point } from './tilings.js';

/** A tile that pokes out by less than this is still inside, mm: one that just fits must not fall to rounding. */
const POKE = 1e-6;

/** Tells how convex polygons lie to a region: inside it, outside it or across its boundary. */
export function placer(region: Region): (points: readonly Point[]) => 'inside' | 'outside' | 'across' {
  const edges = region.contours.flat();
  const index = new EdgesIndex(edges);
  return (points) => {
    const tile = polygon(insetPolygon(points, POKE) ?? points);
    const near = index.near(bounds([tile]), 0);
    let met = false;
    for (const i of near) {
      for (const side of tile) {
        crossings(side, edges[i]!, () => {
          met = true;
        });
        if (met) return 'across';
      }
    }
    // A boundary that meets no side may still lie wholly within the tile.
    if (region.contours.some((c) => windingNumber([tile], c[0]!.x0, c[0]!.y0) !== 0)) return 'across';
    return contains(region, tile[0]!.x0, tile[0]!.y0) ? 'inside' : 'outside';
  };
}

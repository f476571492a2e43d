import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import STRtree from 'jsts/org/locationtech/jts/index/strtree/STRtree.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import IndexedFacetDistance from 'jsts/org/locationtech/jts/operation/distance/IndexedFacetDistance.js';

/**
 * Distances between the boundaries of two plain polygons, by JSTS: least is the distance of the two (IndexedFacetDistance);
 * most the largest distance of a point of either, sampled every `step` mm and at every vertex, to the other.
 * @param {readonly import('./rings.mjs').Ring[]} a
 * @param {readonly import('./rings.mjs').Ring[]} b
 * @param {number} step
 * @returns {{ least: number, most: number }}
 */
export function boundaryGap(a, b, step) {
  const least = new IndexedFacetDistance(lines(a)).distance(lines(b));
  return { least, most: Math.max(farthest(a, b, step), farthest(b, a, step)) };
}

const factory = new GeometryFactory();

function lines(rings) {
  return factory.createMultiLineString(rings.map(line));
}

function line(ring) {
  return factory.createLineString([...ring, ring[0]].map(([x, y]) => new Coordinate(x, y)));
}

/** The largest of the distances from points of `from` to the segments of `to`; those within 5 mm are looked at. */
function farthest(from, to, step) {
  const tree = new STRtree();
  for (const ring of to)
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length];
      const segment = factory.createLineString([new Coordinate(p[0], p[1]), new Coordinate(q[0], q[1])]);
      tree.insert(segment.getEnvelopeInternal(), segment);
    });
  let most = 0;
  for (const ring of from)
    ring.forEach(([x0, y0], i) => {
      const [x1, y1] = ring[(i + 1) % ring.length];
      const n = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / step));
      for (let k = 0; k < n; k++) {
        const point = factory.createPoint(new Coordinate(x0 + ((x1 - x0) * k) / n, y0 + ((y1 - y0) * k) / n));
        most = Math.max(most, nearest(tree, point));
      }
    });
  return most;
}

function nearest(tree, point) {
  for (let reach = 0.5; reach < 10; reach *= 3) {
    const box = point.getEnvelopeInternal().copy();
    box.expandBy(reach);
    const found = tree.query(box).toArray();
    const best = Math.min(...found.map((s) => DistanceOp.distance(s, point)));
    if (best <= reach) return best;
  }
  return Infinity;
}

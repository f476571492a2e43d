import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';
import { nested, quadrantSegments, signedArea } from './rings.mjs';

const factory = new GeometryFactory();

/** Points nearer than this are one point: the engine may loop on slivers of its own making. */
const WELD = 0.0015;
/** A vertex this near the line through its neighbours says nothing. */
const COLLINEAR = 0.0002;

/**
 * Moves the boundary outwards by each distance in turn (negative: inwards), round joins, no input simplification.
 * @param {readonly import('./rings.mjs').Ring[]} rings
 * @param {readonly number[]} distances
 * @param {number} chord
 * @returns {import('./rings.mjs').Ring[]}
 */
export function offsets(rings, distances, chord) {
  let now = [...rings];
  for (const distance of distances) {
    const tidied = now.map(tidy).filter((r) => r.length >= 3);
    if (tidied.length === 0) return [];
    const params = new BufferParameters(quadrantSegments(Math.abs(distance), chord));
    params.setSimplifyFactor(0);
    now = ringsOf(BufferOp.bufferOp(geometryOf(tidied), distance, params));
  }
  return now;
}

function geometryOf(rings) {
  const polygons = nested(rings).map(([outer, ...holes]) =>
    factory.createPolygon(linear(outer), holes.map(linear)),
  );
  return polygons.length === 1 ? polygons[0] : factory.createMultiPolygon(polygons);
}

function linear(ring) {
  const coordinates = ring.map(([x, y]) => new Coordinate(x, y));
  coordinates.push(new Coordinate(ring[0][0], ring[0][1]));
  return factory.createLinearRing(coordinates);
}

function ringsOf(geometry) {
  const out = [];
  for (let i = 0; i < geometry.getNumGeometries(); i++) {
    const polygon = geometry.getGeometryN(i);
    if (polygon.isEmpty()) continue;
    out.push(oriented(polygon.getExteriorRing(), 1));
    for (let k = 0; k < polygon.getNumInteriorRing(); k++) out.push(oriented(polygon.getInteriorRingN(k), -1));
  }
  return out;
}

function oriented(linearRing, sense) {
  const ring = linearRing.getCoordinates().map((c) => [c.x, c.y]);
  ring.pop();
  return signedArea([ring]) * sense < 0 ? ring.reverse() : ring;
}

function tidy(ring) {
  const welded = ring.filter((p, i) => {
    const q = ring[i === 0 ? ring.length - 1 : i - 1];
    return Math.abs(p[0] - q[0]) > WELD || Math.abs(p[1] - q[1]) > WELD;
  });
  const kept = [];
  for (let i = 0; i < welded.length; i++) {
    const a = kept.length > 0 ? kept[kept.length - 1] : welded[welded.length - 1];
    const p = welded[i];
    const b = welded[(i + 1) % welded.length];
    const dx = b[0] - a[0];
    const dy = b[1] - a[1];
    if (Math.abs((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) > COLLINEAR * Math.hypot(dx, dy)) kept.push(p);
  }
  return kept;
}

import initGeosJs from 'geos-wasm';
import { nested, quadrantSegments, signedArea } from './rings.mjs';

const geos = await initGeosJs();
const { Module } = geos;
const MULTI_POLYGON = 6;

/**
 * Moves the boundary outwards by each distance in turn (negative: inwards), round joins. The engine simplifies its
 * input by 1 % of the distance and offers no way to stop it, so its error does not fall with the chord.
 * @param {readonly import('./rings.mjs').Ring[]} rings
 * @param {readonly number[]} distances
 * @param {number} chord
 * @returns {import('./rings.mjs').Ring[]}
 */
export function offsets(rings, distances, chord) {
  let now = geometryOf(rings);
  for (const distance of distances) {
    const next = geos.GEOSBuffer(now, distance, quadrantSegments(Math.abs(distance), chord));
    geos.GEOSGeom_destroy(now);
    if (!next) throw new Error('GEOS could not offset the shape');
    now = next;
  }
  const out = ringsOf(now);
  geos.GEOSGeom_destroy(now);
  return out;
}

function geometryOf(rings) {
  const polygons = nested(rings).map(([outer, ...holes]) =>
    withPointers(holes.map(linear), (list) => geos.GEOSGeom_createPolygon(linear(outer), list, holes.length)),
  );
  if (polygons.length === 1) return polygons[0];
  return withPointers(polygons, (list) =>
    geos.GEOSGeom_createCollection(MULTI_POLYGON, list, polygons.length),
  );
}

/** Hands a list of pointers to a call; the geometries in it belong to what the call makes. */
function withPointers(pointers, call) {
  if (pointers.length === 0) return call(0);
  const list = Module._malloc(4 * pointers.length);
  for (let i = 0; i < pointers.length; i++) Module.setValue(list + 4 * i, pointers[i], 'i32');
  const made = call(list);
  Module._free(list);
  return made;
}

function linear(ring) {
  const size = ring.length + 1;
  const at = Module._malloc(16 * size);
  const flat = Module.HEAPF64.subarray(at / 8, at / 8 + 2 * size);
  for (let i = 0; i < size; i++) {
    const p = ring[i % ring.length];
    flat[2 * i] = p[0];
    flat[2 * i + 1] = p[1];
  }
  const sequence = geos.GEOSCoordSeq_copyFromBuffer(at, size, 0, 0);
  Module._free(at);
  return geos.GEOSGeom_createLinearRing(sequence);
}

function ringsOf(geometry) {
  const out = [];
  const parts = geos.GEOSGetNumGeometries(geometry);
  for (let i = 0; i < parts; i++) {
    const polygon = geos.GEOSGetGeometryN(geometry, i);
    if (geos.GEOSisEmpty(polygon)) continue;
    out.push(oriented(geos.GEOSGetExteriorRing(polygon), 1));
    const holes = geos.GEOSGetNumInteriorRings(polygon);
    for (let k = 0; k < holes; k++) out.push(oriented(geos.GEOSGetInteriorRingN(polygon, k), -1));
  }
  return out;
}

function oriented(linearRing, sense) {
  const size = geos.GEOSGetNumCoordinates(linearRing);
  const at = Module._malloc(16 * size);
  geos.GEOSCoordSeq_copyToBuffer(geos.GEOSGeom_getCoordSeq(linearRing), at, 0, 0);
  const flat = Module.HEAPF64.subarray(at / 8, at / 8 + 2 * size);
  const ring = [];
  for (let i = 0; i < size - 1; i++) ring.push([flat[2 * i], flat[2 * i + 1]]);
  Module._free(at);
  return signedArea([ring]) * sense < 0 ? ring.reverse() : ring;
}

import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import IsValidOp from 'jsts/org/locationtech/jts/operation/valid/IsValidOp.js';

const factory = new GeometryFactory();

/** JTS looks for this only where it has found no crossing. */
const TOUCHES = 'Ring Self-intersection';

/**
 * What JSTS says of one polygon: an outer ring and the rings of its holes.
 * @param {readonly import('./rings.mjs').Ring[]} rings
 * @returns {{ fault: string | null, area: number, length: number }} what is wrong with its topology, its area, mm2,
 *   and the length of its boundary, mm. A ring that touches itself in a point, and crosses nothing, is sound.
 */
export function judged([outer, ...holes]) {
  const polygon = factory.createPolygon(linear(outer), holes.map(linear));
  const fault = new IsValidOp(polygon).getValidationError()?.getMessage() ?? null;
  return { fault: fault === TOUCHES ? null : fault, area: polygon.getArea(), length: polygon.getLength() };
}

/** @param {import('./rings.mjs').Ring} ring */
function linear(ring) {
  const coordinates = ring.map(([x, y]) => new Coordinate(x, y));
  coordinates.push(new Coordinate(ring[0][0], ring[0][1]));
  return factory.createLinearRing(coordinates);
}

import InteriorPointArea from 'jsts/org/locationtech/jts/algorithm/InteriorPointArea.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import Polygonizer from 'jsts/org/locationtech/jts/operation/polygonize/Polygonizer.js';
import UnaryUnionOp from 'jsts/org/locationtech/jts/operation/union/UnaryUnionOp.js';

const factory = new GeometryFactory();

/**
 * Area enclosed by lines under the even-odd rule, by JSTS: the lines are cut at each other, lines drawn twice become
 * one, the faces between them are found, and a face counts if a ray from inside it crosses an odd number of lines.
 * @param {readonly import('./rings.mjs').Ring[]} lines not closed of themselves
 * @param {number} weld ends of lines this near are one
 * @param {number} grid points are moved to the nearest multiple of this, so that lines drawn twice are the same
 * @returns {number}
 */
export function parityArea(lines, weld, grid) {
  const snapped = welded(lines, weld)
    .map((line) => line.map(([x, y]) => new Coordinate(Math.round(x / grid) * grid, Math.round(y / grid) * grid)))
    .map((line) => line.filter((c, i) => i === 0 || !c.equals2D(line[i - 1])))
    .filter((line) => line.length > 1);
  const strings = snapped.map((line) => factory.createLineString(line));
  const noded = UnaryUnionOp.union(factory.createMultiLineString(strings));
  const sides = [];
  for (let i = 0; i < noded.getNumGeometries(); i++) {
    const points = noded.getGeometryN(i).getCoordinates();
    for (let k = 1; k < points.length; k++) sides.push([points[k - 1], points[k]]);
  }
  const polygonizer = new Polygonizer();
  polygonizer.add(noded);
  let sum = 0;
  for (const face of polygonizer.getPolygons().toArray())
    if (odd(InteriorPointArea.getInteriorPoint(face), sides)) sum += face.getArea();
  return sum;
}

function odd({ x, y }, sides) {
  let inside = false;
  for (const [a, b] of sides)
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  return inside;
}

/** The lines with each end moved onto the first end found within `weld` of it. */
function welded(lines, weld) {
  const ends = [];
  const moved = (p) => {
    const near = ends.find((q) => Math.hypot(q[0] - p[0], q[1] - p[1]) <= weld);
    if (!near) ends.push(p);
    return near ?? p;
  };
  return lines.map((line) => [moved(line[0]), ...line.slice(1, -1), moved(line.at(-1))]);
}

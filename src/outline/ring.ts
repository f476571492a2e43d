import { circle, type Region, reversedContour } from '../geometry/region.js';
import type { Values } from '../schema/parameter.js';
import { bad, type DrawnShape, length, margin, mm, size } from './shape.js';

export const ringShape: DrawnShape = {
  name: 'ring',
  title: 'Ring',
  parameters: [
    length('diameter', 'Outer diameter of the face.', '… across', 200),
    length('bore', 'Diameter of the opening in the middle.', 'an opening of … in the middle', 120),
    margin,
  ],
  face: (values) => ring(values, 0),
  inner: ring,
  deepest: (values) => (size(values, 'diameter') - size(values, 'bore')) / 4,
};

function ring(values: Values, m: number): Region {
  const outer = size(values, 'diameter') / 2;
  const bore = size(values, 'bore') / 2;
  if (bore >= outer) {
    throw bad('bore', `${mm(2 * bore)} is not smaller than the diameter, ${mm(2 * outer)}; make it smaller`);
  }
  return { contours: [circle(0, 0, outer - m), reversedContour(circle(0, 0, bore + m))] };
}

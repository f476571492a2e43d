import { circle } from '../geometry/region.js';
import { type DrawnShape, length, margin, size } from './shape.js';

export const circleShape: DrawnShape = {
  name: 'circle',
  title: 'Circle',
  parameters: [length('diameter', 'Diameter of the face.', '… across', 96), margin],
  face: (values) => ({ contours: [circle(0, 0, size(values, 'diameter') / 2)] }),
  inner: (values, m) => ({ contours: [circle(0, 0, size(values, 'diameter') / 2 - m)] }),
  deepest: (values) => size(values, 'diameter') / 2,
};

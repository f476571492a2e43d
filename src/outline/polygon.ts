import { polygon, type Region } from '../geometry/region.js';
import { cos, sin } from '../geometry/trig.js';
import type { Values } from '../schema/parameter.js';
import { type DrawnShape, length, margin, size } from './shape.js';

export const polygonShape: DrawnShape = {
  name: 'polygon',
  title: 'Regular polygon',
  parameters: [
    {
      kind: 'count',
      name: 'sides',
      meaning: 'Number of sides.',
      say: '… sides',
      default: 6,
      min: 3,
      max: 24,
    },
    length(
      'across',
      'Across the flats: the diameter of the circle that touches every side.',
      '… across the flats',
      100,
    ),
    {
      kind: 'angle',
      name: 'turn',
      meaning: 'Turn counter-clockwise; at 0 a side lies along the bottom.',
      say: 'turned …',
      default: 0,
      min: -360,
      max: 360,
    },
    margin,
  ],
  face: (values) => regular(values, 0),
  inner: regular,
  deepest: (values) => size(values, 'across') / 2,
};

function regular(values: Values, m: number): Region {
  const n = size(values, 'sides');
  const radius = (size(values, 'across') / 2 - m) / cos(Math.PI / n);
  const first = -Math.PI / 2 + Math.PI / n + size(values, 'turn');
  const points = Array.from({ length: n }, (_, i): [number, number] => {
    const a = first + (2 * Math.PI * i) / n;
    return [radius * cos(a), radius * sin(a)];
  });
  return { contours: [polygon(points)] };
}

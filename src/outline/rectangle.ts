import { bulgedContour, type Region } from '../geometry/region.js';
import type { Values } from '../schema/parameter.js';
import { bad, type DrawnShape, length, margin, mm, size } from './shape.js';

/** tan(90 degrees / 4) */
const QUARTER = Math.SQRT2 - 1;

export const rectangleShape: DrawnShape = {
  name: 'rectangle',
  title: 'Rectangle',
  parameters: [
    length('width', 'Width of the face.', '… wide', 130),
    length('height', 'Height of the face.', '… high', 130),
    length(
      'corner',
      'Radius of the rounded corners; 0 for square ones.',
      { say: 'corners of … radius', often: [0, 40], zero: 'no' },
      0,
      0,
    ),
    margin,
  ],
  face: (values) => rectangle(values, 0),
  inner: rectangle,
  deepest: (values) => Math.min(size(values, 'width'), size(values, 'height')) / 2,
};

function rectangle(values: Values, m: number): Region {
  const most = Math.min(size(values, 'width'), size(values, 'height')) / 2;
  const corner = size(values, 'corner');
  if (corner > most)
    throw bad('corner', `${mm(corner)} is more than half the shorter side; use ${mm(most)} at most`);
  const x = size(values, 'width') / 2 - m;
  const y = size(values, 'height') / 2 - m;
  const r = Math.max(0, corner - m);
  const at = (px: number, py: number, bulge: number): { x: number; y: number; bulge: number } => ({
    x: px,
    y: py,
    bulge,
  });
  const points =
    r > 0
      ? [
          at(x, -y + r, 0),
          at(x, y - r, QUARTER),
          at(x - r, y, 0),
          at(-x + r, y, QUARTER),
          at(-x, y - r, 0),
          at(-x, -y + r, QUARTER),
          at(-x + r, -y, 0),
          at(x - r, -y, QUARTER),
        ]
      : [at(-x, -y, 0), at(x, -y, 0), at(x, y, 0), at(-x, y, 0)];
  // A corner of half the side leaves no straight part between two arcs.
  const kept = points.filter((p, i) => {
    const q = points[(i + 1) % points.length]!;
    return p.bulge !== 0 || Math.abs(p.x - q.x) + Math.abs(p.y - q.y) > 1e-9;
  });
  return { contours: [bulgedContour(kept)] };
}

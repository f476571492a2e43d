import { bounds } from '../geometry/region.js';
import { placedRegion } from '../geometry/transform.js';
import { BadInput } from '../schema/fault.js';
import type { Values } from '../schema/parameter.js';
import { circleShape } from './circle.js';
import type { Outline, OutlineShape } from './outline.js';
import { polygonShape } from './polygon.js';
import { rectangleShape } from './rectangle.js';
import { ringShape } from './ring.js';
import { bad, type DrawnShape, mm, size } from './shape.js';
import { staveShape } from './stave.js';

const shapes: readonly DrawnShape[] = [circleShape, rectangleShape, polygonShape, staveShape, ringShape];

/** Every shape an outline may have. */
export const outlineShapes: readonly OutlineShape[] = shapes;

/** What is left inside the margin must be at least this wide, mm. */
const LEAST_LEFT = 1;

/**
 * The outline of the piece's face, centred on (0, 0). `values` are those of the shape's parameters: mm, radians.
 * Throws BadInput for an unknown shape, for sizes at odds and for a margin that leaves nothing.
 */
export function makeOutline(shape: string, values: Values): Outline {
  const drawn = shapes.find((s) => s.name === shape);
  if (!drawn) {
    const known = shapes.map((s) => s.name).join(', ');
    throw new BadInput([
      { where: 'outline.shape', message: `"${shape}" is not a shape; use one of ${known}` },
    ]);
  }
  const face = drawn.face(values);
  const margin = size(values, 'margin');
  const most = drawn.deepest(values) - LEAST_LEFT / 2;
  if (most < 0) throw bad('shape', `the ${shape} is under ${mm(LEAST_LEFT)} wide; make it larger`);
  if (margin > most)
    throw bad('margin', `${mm(margin)} leaves nothing of the ${shape}; use ${mm(floor(most))} at most`);
  const around = bounds(face.contours);
  const dx = centred(around.minX, around.maxX);
  const dy = centred(around.minY, around.maxY);
  const sizes = drawn.parameters
    .filter((p) => p.kind === 'length')
    .map((p) => [p.name, size(values, p.name)]);
  return {
    shape,
    face: placedRegion(face, dx, dy),
    inner: placedRegion(drawn.inner(values, margin), dx, dy),
    box: {
      minX: around.minX + dx,
      minY: around.minY + dy,
      maxX: around.maxX + dx,
      maxY: around.maxY + dy,
    },
    sizes: Object.fromEntries(sizes),
  };
}

/** The shift that centres a span; exactly 0 for a span centred already but for rounding. */
function centred(from: number, to: number): number {
  const shift = -(from + to) / 2;
  return Math.abs(shift) < 1e-9 ? 0 : shift;
}

/** Rounded down to a thousandth, so that the printed limit works. */
function floor(value: number): number {
  return Math.floor(value * 1000) / 1000;
}

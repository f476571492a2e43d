import { resolve, subtract, union } from '../../geometry/boolean.js';
import type { Edge } from '../../geometry/edge.js';
import type { Pen } from '../../geometry/pen.js';
import { parts, type Region } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import { Refusal } from '../../schema/fault.js';
import type { Parameter, Values } from '../../schema/parameter.js';
import { bad, length, mm, num } from '../values.js';
import { annulus, drawPiece } from './stage.js';

const EYES = { strap: 0, solid: 17 } as const;

/** How a closed curve becomes wood: a strap along it, or every second one of the fields that it makes. */
export const curveParameters = (style: 'strap' | 'solid'): readonly Parameter[] => [
  {
    kind: 'choice',
    name: 'style',
    meaning: 'What is let in.',
    say: 'a … figure',
    default: style,
    options: [
      { value: 'strap', meaning: 'a strap along the curve' },
      { value: 'solid', meaning: 'the fields within the curve, every second one where it crosses itself' },
    ],
  },
  length('strap', 'Width of the strap.', 'the strap … wide', 4.4, 0.2, 200),
  length(
    'eye',
    'Diameter that the fields of a solid curve leave free in the middle.',
    '… left free in the middle',
    EYES[style],
    0,
    3000,
  ),
];

/** The radius a curve must have so that strap or fields reach just to radius `outer`, mm. BadInput when they fill it. */
export function curveRadius(values: Values, outer: number): number {
  const name = values.style === 'strap' ? 'strap' : 'gap';
  const width = num(values, name);
  if (width >= outer) throw bad(name, `${mm(width)} fills the whole figure; make it less than ${mm(outer)}`);
  return values.style === 'strap' ? outer - width / 2 : outer + width / 2;
}

/** Draws a closed curve in its style. */
export function drawCurve(values: Values, path: readonly Edge[], pen: Pen): void {
  if (values.style === 'strap') drawPiece(pen, 'strap', curveStrap(path, num(values, 'strap')));
  else drawFields(values, path, pen);
}

/** The strap of one width, mm, along a closed curve. */
export function curveStrap(path: readonly Edge[], width: number): Region {
  return stroke(path, width, STYLE);
}

const STYLE = { closed: true, join: 'round' } as const;

/** Draws the fields within a closed curve, every second one where it crosses itself, with a gap between them. */
export function drawFields(values: Values, path: readonly Edge[], pen: Pen): void {
  const walls = curveStrap(path, num(values, 'gap'));
  const eye = num(values, 'eye') / 2;
  const taken = eye > 0 ? union([walls, annulus(eye, 0)]) : walls;
  const fields = parts(subtract(resolve([path], 'evenodd'), taken));
  if (fields.length === 0)
    throw new Refusal(
      'nothing-fits',
      `pattern.gap: ${mm(num(values, 'gap'))} leaves nothing of the fields within the curve; make it smaller`,
    );
  fields.forEach((contours, i) => {
    drawPiece(pen, `field ${i + 1}`, { contours });
  });
}

export function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

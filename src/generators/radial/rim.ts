import type { Pen } from '../../geometry/pen.js';
import type { Region } from '../../geometry/region.js';
import type { Parameter, Values } from '../../schema/parameter.js';
import { bad, length, num } from '../values.js';
import { annulus, drawPiece } from './stage.js';

/** Rings round a figure: how many, and how wide. Their walls are the figure's `gap`. */
export function rimParameters(rings: number): readonly Parameter[] {
  return [
    {
      kind: 'count',
      name: 'rings',
      meaning: 'Number of rings round the figure.',
      say: '… rings round it',
      zero: 'no',
      one: '… ring round it',
      default: rings,
      min: 0,
      max: 12,
    },
    length('ring', 'Width of a ring.', 'rings … wide', 4.2, 0.2),
  ];
}

/** The rings from the outside in, and the radius that they leave for the figure. */
export interface Rim {
  readonly rings: readonly Region[];
  readonly left: number;
}

/** The rim within radius `outer` of a figure that needs more than radius `inner`: BadInput when it has less. */
export function rimOf(values: Values, outer: number, inner: number): Rim {
  const count = num(values, 'rings');
  const ring = num(values, 'ring');
  const gap = num(values, 'gap');
  const left = outer - count * (ring + gap);
  if (left <= inner) {
    const most = Math.max(0, Math.ceil((outer - inner) / (ring + gap)) - 1);
    throw bad(
      'rings',
      `${count} leave no room for the figure round the eye; use ${most} at most, or narrower ones`,
    );
  }
  const rings = Array.from({ length: count }, (_, k) => {
    const r = outer - k * (ring + gap);
    return annulus(r, r - ring);
  });
  return { rings, left };
}

/** Draws the rim and gives the radius left for the figure. */
export function drawRim(values: Values, outer: number, inner: number, pen: Pen): number {
  const { rings, left } = rimOf(values, outer, inner);
  rings.forEach((region, k) => {
    drawPiece(pen, `ring ${k + 1}`, region);
  });
  return left;
}

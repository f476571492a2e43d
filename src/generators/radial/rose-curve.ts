import type { Vector } from '../../geometry/bezier.js';
import type { Edge } from '../../geometry/edge.js';
import { curveArcs } from '../../geometry/parametric.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Generator } from '../generator.js';
import { bad, length, num, seed, turn } from '../values.js';
import { curveParameters, curveRadius, drawCurve, greatestCommonDivisor } from './closed-curve.js';
import { UP } from './polar.js';
import { drawRim, rimParameters } from './rim.js';
import { size, stageOf } from './stage.js';

export const roseCurve: Generator = {
  name: 'rose-curve',
  title: 'Rose curve',
  family: 'radial',
  summary: 'The curve r = cos(n/d angle): n petals where n and d are odd, else 2n; solid or as a strap.',
  parameters: [
    {
      kind: 'count',
      name: 'n',
      meaning: 'Upper number of the ratio n/d.',
      say: 'a ratio of …',
      default: 5,
      min: 1,
      max: 24,
    },
    {
      kind: 'count',
      name: 'd',
      meaning: 'Lower number of the ratio n/d: the more, the more the petals overlap.',
      say: 'over …',
      default: 3,
      min: 1,
      max: 12,
    },
    ...curveParameters('solid'),
    size,
    ...rimParameters(0),
    length('gap', 'Width of the walls between fields and rings.', 'walls … wide', 4.2, 0.2),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    if (stage.bore > 0)
      throw bad('generator', 'a rose curve needs wood in the middle of the outline; use trochoid or petals');
    const outer = drawRim(values, stage.radius, num(values, 'strap') / 2, stage.pen);
    const rose = { n: num(values, 'n'), d: num(values, 'd') };
    const path = rosePath(rose, curveRadius(values, outer), num(values, 'turn') + UP);
    drawCurve(values, path, stage.pen);
  },
};

/** r = a cos(n/d angle). */
export interface Rose {
  readonly n: number;
  readonly d: number;
}

/** The curve once round, a petal's tip at radius a in direction `first`; it passes through the origin. */
export function rosePath({ n, d }: Rose, a: number, first: number): Edge[] {
  const common = greatestCommonDivisor(n, d);
  const k = n / d;
  const odd = ((n / common) * (d / common)) % 2 === 1;
  const end = ((odd ? 1 : 2) * Math.PI * d) / common;
  // From pole to tip the curve turns by 90 (1 + 1/k) degrees, most of it in the last quarter of the angle.
  const halfPetals = Math.round((2 * k * end) / Math.PI);
  const curve = {
    point(t: number): Vector {
      const r = a * cos(k * t);
      return [r * cos(t + first), r * sin(t + first)];
    },
    tangent(t: number): Vector {
      const r = cos(k * t);
      const dr = -k * sin(k * t);
      const c = cos(t + first);
      const s = sin(t + first);
      return [dr * c - r * s, dr * s + r * c];
    },
  };
  return curveArcs(curve, 0, end, halfPetals * 4 * Math.ceil(1 + 1 / k));
}

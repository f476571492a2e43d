import type { Vector } from '../../geometry/bezier.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { hull } from '../../geometry/hull.js';
import { offset } from '../../geometry/offset.js';
import { wholePower } from '../../geometry/power.js';
import { bounds, type Region } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, fieldOf, fillParameter, frameParameter } from '../field.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { type Fitted, largestIn } from './fit.js';
import { gosperPath } from './gosper-path.js';
import { cutStrap, type StrapStyle, strapAlong } from './tied.js';

/** 7^5 = 16,807 steps are more than a piece could hold. */
const MOST_ORDER = 5;

/** Parallel runs of the curve lie this far apart, in steps. */
const APART = Math.sqrt(3) / 2;

export const gosper: Generator = {
  name: 'gosper',
  title: 'Gosper curve',
  family: 'fields',
  summary:
    'One strap that winds through every place of a six-sided island with a ragged shore and never crosses itself.',
  parameters: [
    {
      kind: 'count',
      name: 'order',
      meaning: 'How often every step of a whole curve is made seven; 0 for as often as strap and gap allow.',
      say: 'divided to the depth …',
      zero: 'that fits',
      default: 0,
      min: 0,
      max: MOST_ORDER,
    },
    length(
      'strap',
      'Width of the strap; 0 for as wide as the gaps.',
      { say: 'a strap of … width', often: [0, 15], zero: "the gaps'" },
      0,
      0,
    ),
    length('gap', 'Least gap between neighbouring runs of the strap.', 'runs at least … apart', 4.2, 0.2),
    {
      kind: 'choice',
      name: 'turns',
      meaning: 'How the strap turns.',
      say: '… turns',
      default: 'round',
      options: [
        { value: 'round', meaning: 'in arcs' },
        { value: 'mitred', meaning: 'with corners' },
      ],
    },
    fillParameter,
    frameParameter,
    bandParameter,
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const field = fieldOf(outline, num(values, 'band'));
    const region = values.fill === 'whole' ? whole(values, field) : clipped(values, field);
    pen.piece('strap');
    drawRegion(pen, region);
  },
};

/** The path turned and moved so that its box is centred on (0, 0). */
function centredPath(order: number, angle: number): Vector[] {
  const c = cos(angle);
  const s = sin(angle);
  const path = gosperPath(order).map(([x, y]): Vector => [x * c - y * s, x * s + y * c]);
  const xs = path.map((p) => p[0]);
  const ys = path.map((p) => p[1]);
  const x0 = (Math.min(...xs) + Math.max(...xs)) / 2;
  const y0 = (Math.min(...ys) + Math.max(...ys)) / 2;
  return path.map(([x, y]): Vector => [x - x0, y - y0]);
}

function styleOf(values: Values, width: number): StrapStyle {
  return { width, turns: values.turns as StrapStyle['turns'] };
}

interface Laid {
  readonly at: Fitted;
  readonly path: readonly Vector[];
  readonly strap: number;
  /** Width of the gaps, mm. */
  readonly gap: number;
}

function laid(values: Values, field: Region, order: number): Laid {
  const path = centredPath(order, num(values, 'turn'));
  const shore = hull(path);
  const given = num(values, 'strap');
  if (given > 0) {
    const room = offset(field, -given / 2);
    const at = room.contours.length > 0 ? largestIn(room, shore) : { x: 0, y: 0, scale: 0 };
    return { at, path, strap: given, gap: at.scale * APART - given };
  }
  // Half of what parallel runs lie apart: the figure with its strap round it, which the hull's corners bound.
  const half = APART / 4;
  const around = shore.flatMap(([x, y]) => SIDES.map(([u, v]): Vector => [x + half * u, y + half * v]));
  const at = largestIn(field, hull(around));
  const strap = (at.scale * APART) / 2;
  return { at, path, strap, gap: strap };
}

/** A twelve-sided polygon round the unit circle. */
const SIDES: readonly Vector[] = Array.from({ length: 12 }, (_, k): Vector => {
  const r = 1 / cos(Math.PI / 12);
  return [r * cos((k * Math.PI) / 6), r * sin((k * Math.PI) / 6)];
});

function whole(values: Values, field: Region): Region {
  const asked = num(values, 'order');
  const gap = num(values, 'gap');
  let best: Laid | null = null;
  for (let k = asked || 1; k <= (asked || MOST_ORDER); k++) {
    const now = laid(values, field, k);
    if (now.at.scale > 0 && now.gap >= gap - 1e-9) best = now;
    else break;
  }
  if (!best) {
    if (asked > 0)
      throw bad(
        'order',
        `${asked} leaves gaps of less than ${mm(gap)}; use a lower order, or smaller strap and gap`,
      );
    throw new Refusal(
      'nothing-fits',
      `pattern.gap: straps with gaps of ${mm(gap)} leave no room for a curve in the outline; make strap and gap smaller`,
    );
  }
  const { at, path, strap } = best;
  const points = path.map(([x, y]): Vector => [at.x + at.scale * x, at.y + at.scale * y]);
  return strapAlong(points, styleOf(values, strap), false);
}

/** A curve larger than the field, cut by its edge. */
function clipped(values: Values, field: Region): Region {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const gap = num(values, 'gap');
  const strap = num(values, 'strap') || gap;
  const step = (strap + gap) / APART;
  const reach = Math.sqrt((maxX - minX) * (maxX - minX) + (maxY - minY) * (maxY - minY)) / 2 + strap;
  const steps = reach / step;
  // Every point within this many steps of the middle is visited: the island's inner radius, short of its ragged shore.
  let order = 1;
  while (order < MOST_ORDER && innerRadius(order) < steps) order++;
  if (innerRadius(order) < steps) {
    const least = Math.ceil(((reach / innerRadius(MOST_ORDER)) * APART - strap) * 100) / 100;
    throw new Refusal(
      'too-large',
      `pattern.gap: ${mm(gap)} makes more than ${wholePower(7, MOST_ORDER)} steps; use ${mm(least)} or more`,
    );
  }
  const points = centredPath(order, num(values, 'turn')).map(([x, y]): Vector => [x * step, y * step]);
  return cutStrap(points, styleOf(values, strap), gap, values.frame === true, field);
}

function innerRadius(order: number): number {
  return 0.45 * wholePower(Math.sqrt(7), order);
}

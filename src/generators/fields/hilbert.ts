import type { Vector } from '../../geometry/bezier.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { offset } from '../../geometry/offset.js';
import { wholePower } from '../../geometry/power.js';
import { bounds, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, fieldOf, fillParameter, frameParameter } from '../field.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed } from '../values.js';
import { type Fitted, largestIn } from './fit.js';
import { type Course, coursePath, courseSize, hilbertPath } from './hilbert-path.js';
import { cutStrap, type StrapStyle, strapAlong } from './tied.js';

/** Curves of a higher order have more corners than a piece could hold. */
const MOST_ORDER = 7;

/** Squares in a row or a column, at most. */
const MOST_COUNT = 8;

export const hilbert: Generator = {
  name: 'hilbert',
  title: 'Hilbert curve',
  family: 'fields',
  summary:
    'One strap that winds through every place of a square, or of a row of squares, and never crosses itself.',
  parameters: [
    {
      kind: 'count',
      name: 'order',
      meaning: 'How often the square is quartered; 0 for as often as strap and gap allow.',
      say: 'quartered to the depth …',
      zero: 'that fits',
      default: 0,
      min: 0,
      max: MOST_ORDER,
    },
    {
      kind: 'flag',
      name: 'closed',
      meaning: 'Whether the strap comes back to its start.',
      say: 'its ends …',
      words: ['joined', 'left open'],
      default: false,
    },
    length(
      'strap',
      'Width of the strap; 0 for as wide as the gaps.',
      { say: 'a strap of … width', often: [0, 15], zero: "the gaps'" },
      0,
      0,
    ),
    length('gap', 'Least gap between neighbouring runs of the strap.', 'runs at least … apart', 4, 0.2),
    {
      kind: 'choice',
      name: 'turns',
      meaning: 'How the strap turns.',
      say: '… turns',
      default: 'round',
      options: [
        { value: 'round', meaning: 'in quarter circles' },
        { value: 'mitred', meaning: 'square' },
      ],
    },
    { ...fillParameter, default: 'whole' },
    frameParameter,
    bandParameter,
    seed,
  ],
  draw(values, outline, pen) {
    const field = fieldOf(outline, num(values, 'band'));
    const region = values.fill === 'whole' ? whole(values, field) : clipped(values, field);
    pen.piece('strap');
    drawRegion(pen, region);
  },
};

function styleOf(values: Values, width: number): StrapStyle {
  return { width, turns: values.turns as StrapStyle['turns'] };
}

function whole(values: Values, field: Region): Region {
  const course = courseFor(values, field);
  const { at, pitch, strap } = laid(values, field, course);
  const gap = num(values, 'gap');
  if (pitch - strap < gap - 1e-9)
    throw bad(
      'order',
      `${course.order} leaves gaps of ${mm(Math.max(0, pitch - strap))}, less than ${mm(gap)}; use a lower order or a smaller gap`,
    );
  const points = coursePath(course).map(([x, y]): Vector => [at.x + x * pitch, at.y + y * pitch]);
  return strapAlong(points, styleOf(values, strap), course.closed);
}

/** The course that covers most of the field; a longer one only when it covers a good deal more. */
function courseFor(values: Values, field: Region): Course {
  const asked = num(values, 'order');
  const closed = values.closed === true;
  let best: { course: Course; covered: number } | null = null;
  for (let count = 1; count <= MOST_COUNT; count++)
    for (const lying of [false, true]) {
      const base: Course = { order: 0, count, closed, lying };
      const [wide, high] = courseSize(base);
      if (wide === high && lying) continue;
      const side = largestIn(field, box(wide, high)).scale;
      const order = asked || highest(values, side);
      const covered = side * side * wide * high;
      if (order > 0 && (!best || covered > 1.08 * best.covered))
        best = { course: { ...base, order }, covered };
    }
  if (best) return best.course;
  throw new Refusal(
    'nothing-fits',
    `pattern.gap: straps with gaps of ${mm(num(values, 'gap'))} leave no room for a curve in the outline; make strap and gap smaller`,
  );
}

/** The highest order at which a square of this side keeps strap and gap; 0 when none does. */
function highest(values: Values, side: number): number {
  const gap = num(values, 'gap');
  const given = num(values, 'strap');
  let order = 0;
  for (let k = 1; k <= MOST_ORDER; k++) {
    const pitch = given > 0 ? (side - given) / (wholePower(2, k) - 1) : side / (wholePower(2, k) - 0.5);
    if (pitch - (given || pitch / 2) >= gap) order = k;
  }
  return order;
}

/** Where the course's middle lies and how far apart its points are, mm. */
function laid(values: Values, field: Region, course: Course): { at: Fitted; pitch: number; strap: number } {
  const [nx, ny] = courseSize(course);
  const given = num(values, 'strap');
  // Its outermost points are half a strap inside the field; a strap as wide as the gaps is half a step.
  const room = given > 0 ? offset(field, -given / 2) : field;
  const at = largestIn(room, given > 0 ? box(nx - 1, ny - 1) : box(nx - 0.5, ny - 0.5));
  return { at, pitch: at.scale, strap: given || at.scale / 2 };
}

function box(wide: number, high: number): Vector[] {
  return [
    [-wide / 2, -high / 2],
    [wide / 2, -high / 2],
    [wide / 2, high / 2],
    [-wide / 2, high / 2],
  ];
}

/** A curve larger than the field, cut by its edge: the steps are stretched a little so that runs lie along its sides. */
function clipped(values: Values, field: Region): Region {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const [wide, high] = [maxX - minX, maxY - minY];
  const order = num(values, 'order');
  const gap = num(values, 'gap');
  const given = num(values, 'strap');
  const longer = Math.max(wide, high);
  const pitch = order === 0 ? gap + (given || gap) : longer / (wholePower(2, order) - 0.5);
  const strap = given || pitch / 2;
  if (pitch - strap < gap - 1e-9)
    throw bad(
      'order',
      `${order} leaves gaps of ${mm(Math.max(0, pitch - strap))}, less than ${mm(gap)}; use a lower order or a smaller gap`,
    );
  // Down, so that the gaps are never less than asked.
  const across = Math.floor((wide - strap) / pitch + 1e-9) + 1;
  const up = Math.floor((high - strap) / pitch + 1e-9) + 1;
  if (across < 3 || up < 3)
    throw bad('gap', `${mm(gap)} leaves room for less than 3 runs of the strap; make strap and gap smaller`);
  const covering = coveringOrder(Math.max(across, up), values, longer);
  const n = wholePower(2, covering);
  const stepX = (wide - strap) / (across - 1);
  const stepY = (high - strap) / (up - 1);
  const fromX = minX + strap / 2 - Math.floor((n - across) / 2) * stepX;
  const fromY = minY + strap / 2 - Math.floor((n - up) / 2) * stepY;
  const points = hilbertPath(covering).map(([x, y]): Vector => [fromX + x * stepX, fromY + y * stepY]);
  return cutStrap(points, styleOf(values, strap), gap, values.frame === true, field);
}

function coveringOrder(runs: number, values: Values, longer: number): number {
  let order = 1;
  while (wholePower(2, order) < runs) order++;
  if (order <= MOST_ORDER) return order;
  const strap = num(values, 'strap');
  const least = longer / wholePower(2, MOST_ORDER);
  const gap = Math.ceil((strap > 0 ? least - strap : least / 2) * 100) / 100;
  throw new Refusal(
    'too-large',
    `pattern.gap: ${mm(num(values, 'gap'))} makes more than ${wholePower(2, MOST_ORDER)} runs of the strap; use ${mm(gap)} or more`,
  );
}

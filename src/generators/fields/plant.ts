import { intersect, resolve } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { offset } from '../../geometry/offset.js';
import {
  bounds,
  type Contour,
  contains,
  contourArea,
  type Region,
  reversedContour,
} from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, fieldOf } from '../field.js';
import type { Generator } from '../generator.js';
import { random } from '../random.js';
import { length, mm, num, seed } from '../values.js';
import { budCount, grow, type Habit } from './growth.js';
import { outlinesOf } from './limb.js';
import { Room } from './room.js';

export const plant: Generator = {
  name: 'plant',
  title: 'Plant',
  family: 'fields',
  summary: 'A sprig or a tree that grows from the foot of the outline into what room there is.',
  parameters: [
    {
      kind: 'choice',
      name: 'form',
      meaning: 'How it grows.',
      say: 'a …',
      default: 'sprig',
      options: [
        { value: 'sprig', meaning: 'shoots along a stem, a leaf at its top' },
        { value: 'tree', meaning: 'a stem that forks in two, and again' },
      ],
    },
    {
      kind: 'count',
      name: 'depth',
      meaning:
        'How often shoots branch in turn: at 1 a sprig has leaves along its stem, at 2 leafy twigs; a tree forks once more.',
      say: 'branching … deep',
      default: 1,
      min: 1,
      max: 6,
    },
    {
      kind: 'count',
      name: 'nodes',
      meaning: "Pairs of shoots along a sprig's stems.",
      say: '… pairs of shoots to a stem',
      one: '… pair of shoots to a stem',
      default: 3,
      min: 1,
      max: 20,
    },
    {
      kind: 'angle',
      name: 'angle',
      meaning: 'Angle at which a shoot leaves its stem, or between the two branches of a fork.',
      say: 'shoots leaving at …',
      default: 58,
      min: 15,
      max: 85,
    },
    {
      kind: 'number',
      name: 'ratio',
      meaning: 'Length of a shoot as a share of that of its stem.',
      say: 'each … as long as its stem',
      default: 0.7,
      min: 0.2,
      max: 1,
    },
    {
      kind: 'choice',
      name: 'shoots',
      meaning: 'How shoots leave the stem of a sprig.',
      say: 'shoots in … order',
      default: 'pairs',
      options: [
        { value: 'pairs', meaning: 'two at a time, left and right' },
        { value: 'alternate', meaning: 'left and right by turns' },
      ],
    },
    {
      kind: 'number',
      name: 'leaf',
      meaning: 'Greatest width of a leaf as a share of its length; 0 for no leaves.',
      say: 'leaf width … of the length',
      zero: 'none',
      default: 0.24,
      min: 0,
      max: 0.8,
    },
    length('foot', 'Width of the stem at its foot.', 'the stem … wide at its foot', 7, 0.2),
    length('least', 'Width of the thinnest stem.', 'stems at least … wide', 4.2, 0.2),
    length(
      'gap',
      'Least gap between shoots, past where they leave their stem.',
      'shoots at least … apart',
      4.4,
      0.2,
    ),
    {
      kind: 'number',
      name: 'wild',
      meaning: 'How far lengths and angles stray by chance; 0 for a plant whose sides are alike.',
      say: 'growth astray by …',
      zero: 'nothing',
      default: 0,
      min: 0,
      max: 1,
    },
    bandParameter,
    seed,
  ],
  draw(values, outline, pen) {
    const field = fieldOf(outline, num(values, 'band'));
    const how = habitOf(values);
    refuseThicket(how);
    const chance = random(num(values, 'seed'));
    const { minX, maxX, minY, maxY } = bounds(field.contours);
    const x = (minX + maxX) / 2;
    const { y, height } = upright(field, x, minY, maxY);
    // The foot keeps half its width off the edge, as the top leaf does by its point.
    const limbs = grow(how, x, y + how.foot / 2, height - how.foot / 2, new Room(field, how.gap), chance);
    if (limbs.length < 2)
      throw new Refusal(
        'nothing-fits',
        `pattern.least: stems of ${mm(how.least)} with gaps of ${mm(how.gap)} find no room in the outline; make both smaller`,
      );
    pen.piece('plant');
    drawRegion(pen, smoothed(resolve(limbs.flatMap(outlinesOf), 'nonzero'), how, field));
  },
};

function habitOf(values: Values): Habit {
  const least = num(values, 'least');
  return {
    form: values.form as Habit['form'],
    depth: num(values, 'depth'),
    nodes: num(values, 'nodes'),
    angle: num(values, 'angle'),
    ratio: num(values, 'ratio'),
    alternate: values.form === 'sprig' && values.shoots === 'alternate',
    leaf: num(values, 'leaf'),
    foot: Math.max(num(values, 'foot'), least),
    least,
    gap: num(values, 'gap'),
    wild: num(values, 'wild'),
  };
}

/** More buds than these are more than a piece could hold. */
const MOST_BUDS = 4000;

function refuseThicket(how: Habit): void {
  const count = budCount(how);
  if (count <= MOST_BUDS) return;
  let depth = how.depth;
  while (budCount({ ...how, depth }) > MOST_BUDS) depth--;
  throw new Refusal(
    'too-large',
    `pattern.depth: ${how.depth} makes about ${count} shoots, more than ${MOST_BUDS}; use ${depth}, or fewer nodes`,
  );
}

/** The lowest stretch of the upright line at x that lies in the field, from its foot. */
function upright(field: Region, x: number, minY: number, maxY: number): { y: number; height: number } {
  const steps = 400;
  const at = (k: number): number => minY + ((maxY - minY) * (k + 0.5)) / steps;
  let first = 0;
  while (first < steps && !contains(field, x, at(first))) first++;
  let last = first;
  while (last + 1 < steps && contains(field, x, at(last + 1))) last++;
  const y = first === 0 ? minY : at(first);
  return { y, height: (last + 1 === steps ? maxY : at(last)) - y };
}

/** Forks filled to a soft throat and tips rounded, so that neither runs out thinner than wood and cutter bear. */
function smoothed(region: Region, { least, gap }: Habit, field: Region): Region {
  const throat = 0.45 * gap;
  const tip = 0.45 * least;
  const filled = offset(offset(region, throat), -throat);
  const kept = filled.contours.filter((c) => contourArea(c) > 0 || wide(reversedContour(c), 2 * gap));
  return intersect(offset(offset({ contours: kept }, -tip), tip), field);
}

/** Whether an opening holds a disc of this diameter; where shoots cross, narrower ones come about and are closed. */
function wide(opening: Contour, diameter: number): boolean {
  return offset({ contours: [opening] }, -diameter / 2).contours.length > 0;
}

import type { Pen } from '../../geometry/pen.js';
import type { Contour } from '../../geometry/region.js';
import type { BadInput } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { compassPetals, compassRadius, compassRim } from './compass-figure.js';
import {
  drop,
  heart,
  LEAST,
  petal,
  rhomb,
  widestDrop,
  widestHeart,
  widestPetal,
  widestRhomb,
} from './petal.js';
import { UP } from './polar.js';
import { drawRim, rimParameters } from './rim.js';
import { drawDisc, drawPiece, type Stage, size, stageOf } from './stage.js';

export const petals: Generator = {
  name: 'petals',
  title: 'Petals',
  family: 'radial',
  summary: 'Flowers: rows of lenses, drops, hearts or rhombs round a disc, or the compass-drawn flower.',
  parameters: [
    {
      kind: 'choice',
      name: 'shape',
      meaning: 'The shape of a petal.',
      say: '… petals',
      default: 'lens',
      options: [
        { value: 'lens', meaning: 'two arcs that meet in points' },
        { value: 'drop', meaning: 'a point inwards and a round end' },
        { value: 'heart', meaning: 'a point inwards and two lobes' },
        { value: 'rhomb', meaning: 'four straight sides' },
        { value: 'compass', meaning: 'lenses from the middle, as compasses step them round a circle' },
      ],
    },
    {
      kind: 'count',
      name: 'petals',
      meaning: 'Number of petals in the inmost row.',
      say: '… in the inmost row',
      default: 8,
      min: 3,
      max: 48,
    },
    {
      kind: 'count',
      name: 'rows',
      meaning: 'Number of rows of petals, one round another.',
      say: '… rows',
      one: '… row',
      default: 2,
      min: 1,
      max: 8,
    },
    {
      kind: 'count',
      name: 'more',
      meaning: 'How many more petals each row has than the row within it.',
      say: '… more in each row outwards',
      zero: 'no',
      default: 8,
      min: 0,
      max: 48,
    },
    {
      kind: 'flag',
      name: 'rim',
      meaning: 'Whether a compass flower of 6 petals or more has petals along its circle, too.',
      say: 'a compass flower … petals along its circle',
      words: ['with', 'without'],
      default: true,
    },
    size,
    ...rimParameters(0),
    length('gap', 'Width of the walls between petals, rows, rings and disc.', 'walls … wide', 4.2, 0.2),
    length(
      'eye',
      'Diameter of the opening that the petals leave in the middle, but for a compass flower.',
      '… left free in the middle',
      20,
      0,
      3000,
    ),
    length(
      'disc',
      'Diameter of the disc in the eye; 0 for none.',
      { say: '… disc in the eye', zero: 'no' },
      11,
      0,
    ),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    if (values.shape === 'compass') drawCompass(values, stage);
    else drawRows(values, stage);
  },
};

function drawCompass(values: Values, { radius, bore, pen }: Stage): void {
  if (bore > 0)
    throw bad('shape', 'a compass flower needs wood in the middle of the outline; use another shape');
  const n = num(values, 'petals');
  const gap = num(values, 'gap');
  const outer = drawRim(values, radius, 0, pen);
  const rim = values.rim === true && n >= 6;
  const figure = { n, gap, radius: compassRadius(n, outer, gap, rim) };
  const first = num(values, 'turn') + UP;
  const inner = compassPetals(figure, first);
  const along = rim ? compassRim(figure, first) : [];
  if (inner.length === 0 || (rim && along.length === 0))
    throw bad(
      'petals',
      `${n} compass petals are thinner than a gap of ${mm(gap)}; use fewer petals${rim ? ', none along the rim' : ''} or a smaller gap`,
    );
  drawAll(pen, 'petal', inner);
  drawAll(pen, 'rim petal', along);
}

function drawRows(values: Values, { radius, bore, pen }: Stage): void {
  const gap = num(values, 'gap');
  const rows = num(values, 'rows');
  const eye = Math.max(bore, num(values, 'eye') / 2);
  const disc = num(values, 'disc') / 2;
  if (eye >= radius)
    throw bad('eye', `${mm(2 * eye)} leaves no room for petals; make it less than ${mm(2 * radius)}`);
  if (disc > 0 && disc >= eye && bore === 0)
    throw bad('disc', `${mm(2 * disc)} fills the eye; make it less than ${mm(2 * eye)}`);
  const outer = drawRim(values, radius, eye, pen);
  const room = outer - eye - (rows - 1) * gap;
  if (room <= 0) {
    const most = Math.max(1, Math.ceil((outer - eye + gap) / gap) - 1);
    throw bad('rows', `${rows} rows leave no room for petals; use ${most} at most, or a smaller gap`);
  }
  // Rows grow outwards as 2 : 3 : 4 ..., so that their petals look alike.
  const shares = (rows * (rows + 3)) / 2;
  let from = eye;
  for (let k = 0; k < rows; k++) {
    const to = from + (room * (k + 2)) / shares;
    const n = num(values, 'petals') + k * num(values, 'more');
    const shape = shapeOf(values, n, from, to);
    const first = num(values, 'turn') + UP + (k % 2 === 1 ? Math.PI / n : 0);
    drawAll(
      pen,
      `petal ${k + 1}.`,
      Array.from({ length: n }, (_, i) => shape(first + (2 * Math.PI * i) / n)),
    );
    from = to + gap;
  }
  if (disc > 0 && bore === 0) drawDisc(pen, 'disc', disc);
}

function drawAll(pen: Pen, name: string, contours: readonly Contour[]): void {
  contours.forEach((c, i) => {
    drawPiece(pen, `${name} ${i + 1}`, { contours: [c] });
  });
}

/** The widest petal of its shape between two radii that n of leave room for. */
function shapeOf(values: Values, n: number, from: number, to: number): (angle: number) => Contour {
  const gap = num(values, 'gap');
  if (values.shape === 'drop') {
    const widest = widestDrop(n, from, to, gap);
    if (2 * widest.round < LEAST) throw crowded(n);
    return (angle) => drop(widest, angle);
  }
  if (values.shape === 'heart') {
    const widest = widestHeart(n, from, to, gap);
    if (2 * widest.lobe < LEAST) throw crowded(n);
    return (angle) => heart(widest, angle);
  }
  const [widest, figure] =
    values.shape === 'lens' ? [widestPetal(n, from, to, gap), petal] : [widestRhomb(n, from, to, gap), rhomb];
  if (widest < LEAST) throw crowded(n);
  return (angle) => figure(from, to, widest, angle);
}

function crowded(n: number): BadInput {
  return bad('petals', `a row of ${n} petals is too crowded; use fewer, a larger eye or a smaller gap`);
}

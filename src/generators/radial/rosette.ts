import { drawContour } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { type Contour, circle } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import type { BadInput } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, floor, length, mm, num, seed, turn } from '../values.js';
import { drop, LEAST, petal, widestDrop, widestPetal } from './petal.js';
import { drawRim, rimParameters } from './rim.js';
import { drawDisc, size, stageOf } from './stage.js';
import { drawSolid, drawStraps } from './star-figure.js';

export const rosette: Generator = {
  name: 'rosette',
  title: 'Rosette',
  family: 'radial',
  summary: 'Drops or petals round a disc, or a star polygon, within rings.',
  parameters: [
    {
      kind: 'choice',
      name: 'style',
      meaning: 'The figure within the rings.',
      say: '…',
      default: 'drops',
      options: [
        { value: 'drops', meaning: 'drops with a point inwards and a round end' },
        { value: 'petals', meaning: 'petals of two arcs' },
        { value: 'star', meaning: 'the outline of a star polygon, solid or nested' },
        { value: 'straps', meaning: 'the chords of a star polygon as straps' },
      ],
    },
    {
      kind: 'count',
      name: 'points',
      meaning: 'Number of points or petals.',
      say: '… points',
      default: 12,
      min: 3,
      max: 48,
    },
    {
      kind: 'count',
      name: 'step',
      meaning:
        'Points of a star are joined each to the one this many on; 0 for points of 45 degrees or a little more.',
      say: 'points of a star joined … on',
      zero: 'a fitting step',
      default: 0,
      min: 0,
      max: 23,
    },
    {
      ...size,
      meaning: 'Diameter of the whole rosette; 0 for the largest that fits the outline.',
      say: 'diameter …',
      zero: 'as large as fits',
    },
    ...rimParameters(1),
    length('gap', 'Width of the walls between rings, figure, petals and disc.', 'walls … wide', 4.2, 0.2),
    length(
      'eye',
      'Diameter of the opening in the middle of the figure; 0 for none.',
      { say: '… eye in the middle', zero: 'no' },
      17,
      0,
      3000,
    ),
    length(
      'disc',
      'Diameter of the disc in the eye; 0 for none.',
      { say: '… disc in the eye', zero: 'no' },
      15,
      0,
    ),
    length(
      'petal',
      'Width of a petal or drop; 0 for the widest that keeps the gap.',
      { say: 'petals of … width', often: [0, 30], zero: 'the greatest' },
      0,
      0,
    ),
    length(
      'pip',
      'Diameter of the discs set between the outer ends; 0 for none.',
      { say: '… discs between the outer ends', often: [0, 20], zero: 'no' },
      0,
      0,
    ),
    {
      kind: 'count',
      name: 'bands',
      meaning: 'Outlines nested round a solid star.',
      say: '… outlines round a solid star',
      zero: 'no',
      one: '… outline round a solid star',
      default: 0,
      min: 0,
      max: 12,
    },
    length('strap', 'Width of straps and of nested outlines.', 'straps … wide', 4.2, 0.2),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    const eye = Math.max(stage.bore, num(values, 'eye') / 2);
    const gap = num(values, 'gap');
    if (gap >= stage.radius)
      throw bad('gap', `${mm(gap)} leaves no room for the figure; make it less than ${mm(stage.radius)}`);
    if (stage.radius <= eye + gap) {
      const most = 2 * (stage.radius - gap);
      throw bad(
        'eye',
        `${mm(num(values, 'eye'))} leaves no room for the figure; make it less than ${mm(most)}`,
      );
    }
    const outer = drawRim(values, stage.radius, eye + gap, stage.pen);
    drawFigure(values, { inner: eye, outer, open: stage.bore > 0 }, stage.pen);
  },
};

/** Between which radii the figure lies, mm, and whether its middle is an opening in the wood. */
interface Room {
  readonly inner: number;
  readonly outer: number;
  readonly open: boolean;
}

function drawFigure(values: Values, room: Room, pen: Pen): void {
  const style = String(values.style);
  const n = num(values, 'points');
  const first = num(values, 'turn') + Math.PI / 2;
  if (style === 'drops' || style === 'petals') {
    const shape = style === 'drops' ? dropOf(values, room) : petalOf(values, room);
    for (let i = 0; i < n; i++) {
      pen.piece(`${style.slice(0, -1)} ${i + 1}`);
      drawContour(pen, shape(first + (2 * Math.PI * i) / n));
    }
  } else drawStar(values, room, pen);
  const disc = num(values, 'disc') / 2;
  if (disc > 0 && !room.open) {
    if (style !== 'straps' && disc >= room.inner)
      throw bad('disc', `${mm(2 * disc)} fills the eye; make it less than ${mm(2 * room.inner)}`);
    drawDisc(pen, 'disc', disc);
  }
  const pip = num(values, 'pip') / 2;
  if (pip === 0) return;
  for (let i = 0; i < n; i++) {
    const a = first + (Math.PI * (2 * i + 1)) / n;
    pen.piece(`pip ${i + 1}`);
    drawContour(pen, circle((room.outer - pip) * cos(a), (room.outer - pip) * sin(a), pip));
  }
}

function dropOf(values: Values, { inner, outer }: Room): (angle: number) => Contour {
  const widest = widestDrop(num(values, 'points'), inner, outer, num(values, 'gap'));
  if (widest.round < LEAST) throw crowded(values);
  const width = num(values, 'petal');
  const most = 2 * widest.round;
  if (width > most)
    throw bad('petal', `${mm(width)} leaves no gap between drops; use ${mm(floor(most))} at most`);
  const shape = { ...widest, round: width > 0 ? width / 2 : widest.round };
  return (angle) => drop(shape, angle);
}

function petalOf(values: Values, { inner, outer }: Room): (angle: number) => Contour {
  const widest = widestPetal(num(values, 'points'), inner, outer, num(values, 'gap'));
  if (widest < LEAST) throw crowded(values);
  const width = num(values, 'petal');
  if (width > widest)
    throw bad('petal', `${mm(width)} leaves no gap between petals; use ${mm(floor(widest))} at most`);
  return (angle) => petal(inner, outer, width || widest, angle);
}

function crowded(values: Values): BadInput {
  return bad(
    'points',
    `${num(values, 'points')} ${values.style} crowd the eye; use fewer points, a larger eye or a smaller gap`,
  );
}

function drawStar(values: Values, { inner: eye, outer, open }: Room, pen: Pen): void {
  if (open) throw bad('style', 'a star needs wood in the middle of the outline; use drops or petals');
  if (values.style === 'straps') drawStraps(values, outer, pen);
  else drawSolid(values, outer, eye, pen);
}

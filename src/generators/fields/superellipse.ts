import type { Pen } from '../../geometry/pen.js';
import { bounds, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, drawFilled, fieldOf, fillParameter } from '../field.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { superellipseContour } from './lame.js';
import { refuseFlood, type Steps } from './lattice.js';
import { laidFigures, type Setting } from './lay-figures.js';
import { drawNested, strapIn } from './nested.js';

export const superellipse: Generator = {
  name: 'superellipse',
  title: 'Superellipses',
  family: 'fields',
  summary:
    'Shapes between ellipse and rectangle, or four-pointed: nested in each other, or many side by side.',
  parameters: [
    {
      kind: 'choice',
      name: 'layout',
      meaning: 'How many there are.',
      say: '… layout',
      default: 'nested',
      options: [
        { value: 'nested', meaning: 'one, or several each within the next' },
        { value: 'field', meaning: 'many side by side' },
      ],
    },
    {
      kind: 'number',
      name: 'exponent',
      meaning:
        'Exponent of the curve: 2 for an ellipse, more for fuller corners, 1 for a diamond, less for hollow sides.',
      say: 'exponent …',
      default: 3,
      min: 0.5,
      max: 12,
    },
    {
      kind: 'choice',
      name: 'plug',
      meaning: 'What is let in.',
      say: '… let in',
      default: 'straps',
      options: [
        { value: 'straps', meaning: 'straps along the inside of the outlines' },
        { value: 'solid', meaning: 'the outlines filled' },
      ],
    },
    length(
      'width',
      'Width of each in a field, or of the outermost; 0 for one that suits.',
      { say: 'of … width', zero: 'fitting' },
      0,
      0,
      3000,
    ),
    length(
      'height',
      'Height likewise; 0 for one that suits.',
      { say: 'of … height', zero: 'fitting' },
      0,
      0,
      3000,
    ),
    {
      kind: 'count',
      name: 'rings',
      meaning: 'Number of nested straps, each one gap within the last; 0 for as many as there is room for.',
      say: 'nested straps numbering …',
      zero: 'as many as fit',
      default: 0,
      min: 0,
      max: 60,
    },
    length('strap', 'Width of the straps.', 'straps … wide', 4.8, 0.2),
    length('gap', 'Gap between nested straps and between neighbours in a field.', '… apart', 4.8, 0.2),
    {
      kind: 'choice',
      name: 'lattice',
      meaning: 'How a field is set.',
      say: '… lattice',
      default: 'square',
      options: [
        { value: 'square', meaning: 'in rows and columns' },
        { value: 'quincunx', meaning: 'with every other row moved by half a step' },
      ],
    },
    { ...fillParameter, default: 'whole' },
    {
      kind: 'choice',
      name: 'centre',
      meaning: 'What lies on the middle of a field.',
      say: 'the … on the middle',
      default: 'best',
      options: [
        { value: 'best', meaning: 'whatever lets in the most whole figures' },
        { value: 'figure', meaning: 'the middle of a figure' },
        { value: 'gap', meaning: 'the middle of a gap' },
      ],
    },
    bandParameter,
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const field = fieldOf(outline, num(values, 'band'));
    if (values.layout === 'field') drawField(values, field, pen);
    else drawNested(values, field, pen);
  },
};

/** Sizes of the figures of a field when none are given, mm, and the opening of those drawn as straps. */
const SIZE = 15;
const OPENING = 5.4;

function drawField(values: Values, field: Region, pen: Pen): void {
  const solid = values.plug === 'solid';
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const usual = solid ? SIZE : Math.max(SIZE, 2 * strap + OPENING);
  const wide = num(values, 'width') || num(values, 'height') || usual;
  const high = num(values, 'height') || wide;
  const outline: Region = { contours: [superellipseContour(wide / 2, high / 2, num(values, 'exponent'))] };
  const figure = solid ? outline : strapIn(outline, outline, strap);
  if (!solid && figure.contours.length === outline.contours.length)
    throw bad(
      'strap',
      `${mm(strap)} leaves no opening in figures of ${mm(Math.min(wide, high))}; make it narrower, or them larger`,
    );
  const steps: Steps = [
    [wide + gap, 0],
    [values.lattice === 'quincunx' ? (wide + gap) / 2 : 0, high + gap],
  ];
  refuseFlood(steps, bounds(field.contours), num(values, 'width') > 0 ? 'width' : 'gap', wide);
  const setting: Setting = {
    steps,
    centre: values.centre as Setting['centre'],
    turn: num(values, 'turn'),
    reach: Math.max(wide, high),
    name: 'figure',
  };
  const laid = laidFigures(setting, field, () => figure);
  if (drawFilled(pen, laid, field, values.fill as 'clip' | 'whole') === 0)
    throw new Refusal(
      'nothing-fits',
      `pattern.width: no whole figure of ${mm(wide)} by ${mm(high)} fits the outline; make it smaller`,
    );
}

import type { Parameter, Values } from '../../../schema/parameter.js';
import { length, num } from '../../values.js';
import { MOST_JOIN } from './gaps.js';
import type { ReadAs } from './options.js';
import { TOLERANCES } from './repair.js';

/** How a drawing's lines are to be read and mended. */
export const mendingParameters: readonly Parameter[] = [
  {
    kind: 'choice',
    name: 'lines',
    meaning: 'What the lines of an SVG are; those of a DXF are always outlines.',
    say: 'lines taken as …',
    default: 'strokes',
    options: [
      { value: 'strokes', meaning: 'bands as wide as they are drawn' },
      { value: 'outlines', meaning: 'the outlines of shapes, whatever their width' },
    ],
  },
  {
    kind: 'text',
    name: 'layer',
    meaning: 'The layers of a DXF to be read, with commas between; all that are shown when left empty.',
    say: 'layers … read from a DXF',
    zero: 'all',
    default: '',
    maxLength: 200,
  },
  length(
    'join',
    'Ends of outlines nearer than this are joined.',
    'ends within … joined',
    TOLERANCES.join,
    0,
    MOST_JOIN,
  ),
  length(
    'speck',
    'Shapes and holes smaller than this across are dropped.',
    'specks under … dropped',
    TOLERANCES.speck,
    0,
    10,
  ),
  length(
    'refit',
    'Short segments within this of a line or an arc become that line or arc; 0 keeps them as they are.',
    { say: 'short segments made one within …', zero: 'no distance' },
    TOLERANCES.refit,
    0,
    1,
  ),
];

/** The values of `mendingParameters`. */
export function asDrawn(values: Values): ReadAs {
  return {
    lines: values.lines === 'outlines' ? 'outlines' : 'strokes',
    layer: String(values.layer ?? ''),
    tolerances: { join: num(values, 'join'), speck: num(values, 'speck'), refit: num(values, 'refit') },
  };
}

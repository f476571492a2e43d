import { bounds, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, fieldOf } from '../field.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed } from '../values.js';
import { drawBands } from './bands.js';
import { type BreaksName, meetings } from './breaks.js';
import { fillingCells, fittedCells, type LaidCells } from './cells.js';
import { plaitStrands } from './plait.js';

export const knotGrid: Generator = {
  name: 'knot-grid',
  title: 'Interlaced knot',
  family: 'knots',
  summary:
    'Bands that pass over and under each other on a square grid, turned back here and there by breaks.',
  parameters: [
    length(
      'cell',
      'Size of a cell of the grid, about: whole cells fill the outline.',
      'cells about … wide',
      22,
      1,
    ),
    {
      kind: 'count',
      name: 'columns',
      meaning: 'Number of cells across; with rows, in place of the size of a cell; 0 for as many as fit.',
      say: 'numbering … across',
      zero: 'as many as fit',
      default: 0,
      min: 0,
      max: 60,
    },
    {
      kind: 'count',
      name: 'rows',
      meaning: 'Number of cells upwards; with columns, in place of the size of a cell; 0 for as many as fit.',
      say: 'numbering … upwards',
      zero: 'as many as fit',
      default: 0,
      min: 0,
      max: 60,
    },
    length('strap', 'Width of the bands.', 'bands … wide', 4.2, 0.2),
    length(
      'gap',
      'Width of the gaps where a band passes under another, and between bands at breaks.',
      'gaps … wide',
      4.2,
      0.2,
    ),
    {
      kind: 'choice',
      name: 'breaks',
      meaning: 'Where bands turn back instead of crossing.',
      say: 'breaks …',
      default: 'mirrored',
      options: [
        { value: 'none', meaning: 'only at the edge of the grid' },
        { value: 'regular', meaning: 'at every other cell along every so many rows and columns' },
        { value: 'chance', meaning: 'where the seed has it' },
        { value: 'mirrored', meaning: 'where the seed has it, alike on all sides of the middle' },
      ],
    },
    {
      kind: 'count',
      name: 'every',
      meaning: 'From one row or column with regular breaks to the next, in cells.',
      say: 'regular ones every … cells',
      one: 'regular ones every … cell',
      default: 2,
      min: 1,
      max: 60,
    },
    {
      kind: 'number',
      name: 'share',
      meaning: 'Share of the crossings that chance turns into breaks, percent.',
      say: '…% of the crossings broken by chance',
      often: [0, 60],
      default: 30,
      min: 0,
      max: 100,
    },
    {
      kind: 'choice',
      name: 'corners',
      meaning: 'How bands turn back at breaks and at the edge.',
      say: '… corners',
      default: 'round',
      options: [
        { value: 'round', meaning: 'in round bends' },
        { value: 'pointed', meaning: 'by corners' },
      ],
    },
    bandParameter,
    seed,
  ],
  draw(values, outline, pen) {
    const strap = num(values, 'strap');
    const gap = num(values, 'gap');
    const { cells, cell, corner } = lay(values, fieldOf(outline, num(values, 'band')));
    const breaks = {
      name: values.breaks as BreaksName,
      every: num(values, 'every'),
      share: num(values, 'share') / 100,
      seed: num(values, 'seed'),
    };
    const strands = plaitStrands(
      { cells, meeting: meetings(breaks, cells.columns, cells.rows) },
      {
        corner,
        cell,
        off: (strap + gap) / 2,
        pointed: values.corners === 'pointed',
      },
    );
    drawBands(pen, strands, strap, gap);
  },
};

/** More cells than this would take minutes to weave, and no outline holds them at a width that can be cut. */
const MOST_CELLS = 2500;

/** The cells on the piece. Throws BadInput when they are too small for the bands, or too many. */
function lay(values: Values, field: Region): LaidCells {
  const gap = num(values, 'gap');
  const [columns, rows] = [num(values, 'columns'), num(values, 'rows')];
  if ((columns === 0) !== (rows === 0))
    throw bad(columns === 0 ? 'columns' : 'rows', 'give both columns and rows, or neither');
  // From one crossing to the next a band needs its own width and the gap; in the tightest ring it must not fill the eye.
  const strap = num(values, 'strap');
  const least = Math.ceil(Math.max((strap + gap) * Math.SQRT2, 2.05 * strap + gap) * 100) / 100;
  if (columns > 0) {
    const laid = columns * rows > MOST_CELLS ? null : fittedCells(field, columns, rows, least, gap / 2);
    if (!laid)
      throw bad(
        'columns',
        `${columns} by ${rows} cells of at least ${mm(least)} do not fit; use fewer, or a narrower strap and gap`,
      );
    return laid;
  }
  const cell = num(values, 'cell');
  if (cell < least)
    throw bad('cell', `${mm(cell)} is too small for this strap and gap; use ${mm(least)} or more`);
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const count = ((maxX - minX) * (maxY - minY)) / (cell * cell);
  if (count > MOST_CELLS) {
    const large = Math.ceil(cell * Math.sqrt(count / MOST_CELLS) * 100) / 100;
    throw new Refusal(
      'too-large',
      `pattern.cell: ${mm(cell)} makes about ${Math.round(count)} cells, more than ${MOST_CELLS}; use ${mm(large)} or more`,
    );
  }
  const laid = fillingCells(field, cell, least, gap / 2);
  if (!laid)
    throw new Refusal(
      'nothing-fits',
      `pattern.cell: no whole cell of ${mm(cell)} fits the outline; make it smaller`,
    );
  return laid;
}

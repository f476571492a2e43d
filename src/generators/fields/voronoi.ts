import { drawRegion } from '../../geometry/draw-region.js';
import { offset } from '../../geometry/offset.js';
import type { Pen } from '../../geometry/pen.js';
import { area, bounds, type Region } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import {
  bandParameter,
  drawFilled,
  fieldOf,
  fillParameter,
  frameParameter,
  type Motif,
  placer,
} from '../field.js';
import type { Generator } from '../generator.js';
import { random } from '../random.js';
import { depth, insetTile } from '../tilings/inset.js';
import { clippedStraps, wholeStraps } from '../tilings/straps.js';
import type { LaidTile } from '../tilings/tile.js';
import { bad, length, mm, num, seed } from '../values.js';
import { flattened, type Ring, relaxed, strewn, voronoiCells } from './cells.js';

/** Openings narrower than this share of a strap are closed. */
const NARROW = 0.9;

/** No cell stays solid between straps. */
const NONE: ReadonlySet<LaidTile> = new Set();

export const voronoi: Generator = {
  name: 'voronoi',
  title: 'Voronoi cells',
  family: 'fields',
  summary:
    'Cells round strewn points, like foam or dry mud: the cells with walls between, or straps along the walls.',
  parameters: [
    {
      kind: 'count',
      name: 'cells',
      meaning: 'Number of cells in the field.',
      say: '… cells',
      default: 26,
      min: 2,
      max: 2000,
    },
    {
      kind: 'count',
      name: 'relax',
      meaning: 'How often the points are moved to the middles of their cells, which makes these more even.',
      say: 'evened out in … rounds',
      one: 'evened out in … round',
      default: 16,
      min: 0,
      max: 50,
    },
    {
      kind: 'choice',
      name: 'plug',
      meaning: 'What is let in.',
      say: '… let in',
      default: 'cells',
      options: [
        { value: 'cells', meaning: 'the cells, with walls between them' },
        { value: 'straps', meaning: 'straps of one width along the walls' },
      ],
    },
    length('wall', 'Width of the walls between cells.', 'walls … wide', 4.4, 0),
    length('strap', 'Width of the straps.', 'straps … wide', 4.4, 0.2),
    frameParameter,
    fillParameter,
    bandParameter,
    seed,
  ],
  draw(values, outline, pen) {
    const field = fieldOf(outline, num(values, 'band'));
    if (values.plug === 'straps') drawStraps(values, field, pen);
    else drawCells(values, field, pen);
  },
};

function drawCells(values: Values, field: Region, pen: Pen): void {
  const wall = num(values, 'wall');
  // Half a wall further out, so that cells at the edge keep as much of themselves as those amid others.
  const { cells, most } = cellsOf(values, field, offset(field, wall / 2));
  if (wall >= most)
    throw bad(
      'wall',
      `${mm(wall)} leaves nothing of the cells; make it less than ${mm(most)}, or fewer cells`,
    );
  const tiles = cells.map((c) => ({ name: c.name, region: insetTile(c.points, wall / 2) }));
  const laid = values.fill === 'whole' ? centred(tiles, field) : tiles;
  if (drawFilled(pen, laid, field, 'clip') === 0) throw nothingFits(values);
}

/** The whole tiles in the field, moved together to its middle where that leaves them in it. */
function centred(tiles: readonly Motif[], field: Region): readonly Motif[] {
  const place = placer(field);
  const whole = tiles.filter((t) => place(t.region) === 'inside');
  const around = bounds(field.contours);
  const box = bounds(whole.flatMap((t) => t.region.contours));
  const dx = (around.minX + around.maxX - box.minX - box.maxX) / 2;
  const dy = (around.minY + around.maxY - box.minY - box.maxY) / 2;
  const moved = whole.map((t) => ({ name: t.name, region: placedRegion(t.region, dx, dy) }));
  return moved.every((t) => place(t.region) === 'inside') ? moved : whole;
}

function drawStraps(values: Values, field: Region, pen: Pen): void {
  const strap = num(values, 'strap');
  const frame = values.fill === 'clip' && values.frame === true;
  // The middle of the frame's strap is the wall of the cells there.
  const room = frame ? offset(field, -strap / 2) : field;
  if (frame && offset(field, -strap).contours.length === 0)
    throw bad('strap', `${mm(strap)} fills the outline; make it narrower`);
  const { cells, most } = cellsOf(values, field, room);
  if (strap >= most)
    throw bad('strap', `${mm(strap)} closes every cell; make it less than ${mm(most)}, or fewer cells`);
  const straps =
    values.fill === 'clip'
      ? clippedStraps(cells, strap, frame, NARROW * strap, field)
      : wholeStraps(cells, NONE, strap, field);
  if (straps.contours.length === 0) throw nothingFits(values);
  pen.piece('straps');
  drawRegion(pen, straps);
}

interface Cells {
  /** They reach past the field, which cuts them. */
  readonly cells: LaidTile[];
  /** Width of a wall that leaves nothing of any, mm, rounded down. */
  readonly most: number;
}

/** The cells of sites relaxed in `room`. */
function cellsOf(values: Values, field: Region, room: Region): Cells {
  const asked = num(values, 'cells');
  // Cells left out for not being whole would be all along the edge, were there none beyond it.
  const wide = values.fill === 'whole' ? offset(room, Math.sqrt(area(room) / asked)) : room;
  const count = Math.round((asked * area(wide)) / area(room));
  const sites = relaxed(strewn(wide, count, random(num(values, 'seed'))), wide, num(values, 'relax'));
  const { minX, maxX, minY, maxY } = bounds(wide.contours);
  const past = Math.sqrt(area(field));
  const box: Ring = [
    [minX - past, minY - past],
    [maxX + past, minY - past],
    [maxX + past, maxY + past],
    [minX - past, maxY + past],
  ];
  const cells = voronoiCells(sites, [box]).flatMap((cell, i) =>
    cell.map((points) => ({ name: `cell ${i + 1}`, kind: 'cell', points })),
  );
  const within = voronoiCells(sites, flattened(wide)).flat();
  return { cells, most: Math.floor(200 * depth(within)) / 100 };
}

function nothingFits(values: Values): Refusal {
  return new Refusal(
    'nothing-fits',
    `pattern.cells: of ${num(values, 'cells')} cells no whole one fits the outline; use more, or the fill clip`,
  );
}

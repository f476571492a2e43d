import { intersect, resolve, subtract } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { offset } from '../../geometry/offset.js';
import {
  type Box,
  bounds,
  type Contour,
  parts,
  type Region,
  reversedContour,
} from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import type { Parameter, Values } from '../../schema/parameter.js';
import { bandParameter, fieldOf, fillParameter, frameParameter, placer } from '../field.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { type Point, refuseFlood } from './tile.js';
import { type ArrangementName, arrangement } from './truchet/arrangement.js';
import { figureOf, type Style } from './truchet/figure.js';
import { type Cell, type Grid, square } from './truchet/grid.js';

export const truchet: Generator = {
  name: 'truchet',
  title: 'Truchet tiles',
  family: 'tilings',
  summary:
    'Square tiles, each turned by chance or by rule, whose arcs or diagonals join into winding figures.',
  parameters: [
    {
      kind: 'choice',
      name: 'style',
      meaning: 'The figure of the tiles.',
      say: 'made of …',
      default: 'areas',
      options: [
        { value: 'arcs', meaning: 'straps along two quarter circles on each tile' },
        { value: 'areas', meaning: 'every other one of the areas between those quarter circles' },
        { value: 'diagonals', meaning: 'straps along a diagonal of each tile' },
        { value: 'halves', meaning: 'half of each tile, cut along a diagonal' },
      ],
    },
    {
      kind: 'choice',
      name: 'arrangement',
      meaning: 'Which way the tiles lie.',
      say: 'in … order',
      default: 'mirrored',
      options: [
        { value: 'chance', meaning: 'as the seed has it' },
        { value: 'mirrored', meaning: 'as the seed has it, mirrored to all sides of a corner on the middle' },
        { value: 'alike', meaning: 'all alike' },
        { value: 'rows', meaning: 'turned in every other row' },
        { value: 'circles', meaning: 'turned like a chequerboard: whole circles, or squares' },
      ],
    },
    length(
      'edge',
      "Length of the tiles' edges; 0 for a whole number of tiles across the outline, as small as strap and wall let them be.",
      { say: 'tiles of … edge', often: [0, 50], zero: 'the least' },
      0,
      0,
    ),
    length('strap', 'Width of the straps, and of the frame.', 'straps … wide', 4.1, 0.2),
    length(
      'wall',
      'Width of the walls between halves of tiles; between straps or areas when edge is 0.',
      'walls … wide',
      4.1,
      0,
    ),
    fillParameter,
    {
      ...frameParameter,
      meaning: 'Whether a strap runs all round, outside the tiles.',
      say: 'a strap … all round outside the tiles',
      words: ['runs', 'does not run'],
      default: true,
    } as Parameter,
    bandParameter,
    {
      kind: 'choice',
      name: 'centre',
      meaning: 'What lies on the middle of the outline.',
      say: 'one … on the middle',
      default: 'vertex',
      options: [
        { value: 'vertex', meaning: 'a corner where tiles meet' },
        { value: 'tile', meaning: 'the middle of a tile' },
      ],
    },
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const style = values.style as Style;
    const strap = num(values, 'strap');
    const whole = fieldOf(outline, num(values, 'band'));
    const field = values.frame === true ? offset(whole, -strap) : whole;
    if (field.contours.length === 0)
      throw bad('strap', `a frame of ${mm(strap)} fills the outline; make it narrower, or frame false`);
    const box = bounds(field.contours);
    const grid = gridOf(style, values, box);
    const within = tilesOn(values, grid, box, field);
    const ground =
      values.fill === 'clip'
        ? field
        : resolve(
            within.map((c) => square(grid, c)),
            'nonzero',
          );
    const figure = figureOf(style, values, grid, within);
    const around = values.fill === 'clip' ? whole : offset(ground, strap);
    const drawn = values.frame === true ? framed(figure, ground, around) : clipped(figure, ground);
    if (drawn.length === 0) throw nothingFits(grid.edge);
    drawn.forEach((contours, i) => {
      pen.piece(`${style} ${i + 1}`);
      drawRegion(pen, { contours });
    });
  },
};

type Centre = 'vertex' | 'tile';

function gridOf(style: Style, values: Values, box: Box): Grid {
  const centre = values.centre as Centre;
  if (values.arrangement === 'mirrored' && centre !== 'vertex')
    throw bad('centre', 'a mirrored arrangement has a corner on the middle; use vertex');
  return {
    edge: num(values, 'edge') || fittingEdge(leastEdge(style, values), box, centre),
    turn: num(values, 'turn'),
    middle: centre === 'tile' ? [0.5, 0.5] : [0, 0],
  };
}

/** The edge at which straps and walls have their widths, mm. */
function leastEdge(style: Style, values: Values): number {
  const strap = num(values, 'strap');
  const wall = num(values, 'wall');
  const least = {
    arcs: (strap + wall) * NARROWEST,
    areas: wall * NARROWEST,
    diagonals: (strap + wall) * Math.SQRT2,
    halves: 4 * wall,
  };
  return Math.max(1, least[style]);
}

/** 1 / (sqrt 2 - 1): a tile's edge over the distance between its arcs. */
const NARROWEST = 1 + Math.SQRT2;

/** The least edge that is not under `least` and of which a whole number fits across the box. */
function fittingEdge(least: number, box: Box, centre: Centre): number {
  const across = 2 * Math.min(-box.minX, box.maxX);
  const most = Math.floor(across / least + 1e-9);
  // A corner on the middle has as many tiles on its left as on its right.
  const count = centre === 'vertex' ? most - (most % 2) : most - 1 + (most % 2);
  return count > 0 ? across / count : least;
}

/** The tiles that meet the field, or only those that lie whole in it. */
function tilesOn(values: Values, grid: Grid, box: Box, field: Region): Cell[] {
  refuseFlood(grid.edge, 1, box);
  const lies = arrangement(values.arrangement as ArrangementName, num(values, 'seed'));
  const c = cos(grid.turn) / grid.edge;
  const s = sin(grid.turn) / grid.edge;
  const at = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].map((y): Point => [x * c + y * s + grid.middle[0], y * c - x * s + grid.middle[1]]),
  );
  const range = (k: 0 | 1): [number, number] => {
    const all = at.map((p) => p[k]);
    // A tile that only touches the box from outside does not meet it.
    return [Math.floor(Math.min(...all) + 1e-9), Math.ceil(Math.max(...all) - 1e-9)];
  };
  const [i0, i1] = range(0);
  const [j0, j1] = range(1);
  const place = placer(field);
  const asked = values.fill === 'clip' ? ['inside', 'across'] : ['inside'];
  const cells: Cell[] = [];
  for (let j = j0; j < j1; j++)
    for (let i = i0; i < i1; i++) {
      const cell = { i, j, quarters: lies(i, j) };
      if (asked.includes(place({ contours: [square(grid, cell)] }))) cells.push(cell);
    }
  if (cells.length === 0) throw nothingFits(grid.edge);
  return cells;
}

/** The parts of the figure that lie on the ground. */
function clipped(figure: readonly Region[], ground: Region): Contour[][] {
  const place = placer(ground);
  return figure.flatMap((r) => parts(place(r) === 'inside' ? r : intersect(r, ground)));
}

/** The parts of all that lies within `around` but for what the figure leaves open on the ground. */
function framed(figure: readonly Region[], ground: Region, around: Region): Contour[][] {
  const open = subtract(ground, { contours: figure.flatMap((r) => r.contours) });
  return parts({ contours: [...around.contours, ...open.contours.map(reversedContour)] });
}

function nothingFits(edge: number): Refusal {
  return new Refusal(
    'nothing-fits',
    `pattern.edge: no whole tile of edge ${mm(edge)} fits the outline; make it smaller`,
  );
}

import { intersect } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { bounds, polygon, type Region } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { apothem, insetPolygon } from './inset.js';
import { type LaidTile, type Lay, lay } from './lay.js';
import { placer } from './place.js';
import { clippedStraps, wholeStraps } from './straps.js';
import { type Tiling, tilings } from './tilings.js';

export const tiling: Generator = {
  name: 'tiling',
  title: 'Tiling',
  family: 'tilings',
  summary:
    'Uniform tilings of triangles, squares, hexagons and octagons, as straps along the edges or as tiles.',
  parameters: [
    {
      kind: 'choice',
      name: 'tiling',
      meaning: 'The tiling, by the numbers of sides of the tiles that meet at a corner.',
      default: '4.8.8',
      options: tilings.map((t) => ({ value: t.name, meaning: t.title })),
    },
    length('edge', "Length of the tiles' edges.", 13, 1),
    {
      kind: 'choice',
      name: 'plug',
      meaning: 'What is let in.',
      default: 'straps',
      options: [
        { value: 'straps', meaning: 'straps of one width along the edges' },
        { value: 'tiles', meaning: 'the tiles themselves, with walls between them' },
      ],
    },
    length('strap', 'Width of the straps.', 4.4, 0.2),
    length('wall', 'Width of the walls between tiles.', 4.4, 0),
    {
      kind: 'choice',
      name: 'tiles',
      meaning: 'Which tiles are let in, by their number of sides.',
      default: 'all',
      options: [
        { value: 'all', meaning: 'all of them' },
        ...['3', '4', '6', '8'].map((value) => ({ value, meaning: `those of ${value} sides` })),
      ],
    },
    {
      kind: 'choice',
      name: 'fill',
      meaning: 'What happens at the edge of the pattern.',
      default: 'clip',
      options: [
        { value: 'clip', meaning: 'tiles are cut off there' },
        { value: 'whole', meaning: 'only whole tiles are drawn' },
      ],
    },
    {
      kind: 'flag',
      name: 'frame',
      meaning: 'Whether clipped straps end in a strap all round.',
      default: true,
    },
    length(
      'band',
      'Height of a band across the middle that holds the pattern; 0 for the whole outline.',
      0,
      0,
      3000,
    ),
    {
      kind: 'choice',
      name: 'centre',
      meaning: 'What lies on the middle of the outline.',
      default: 'tile',
      options: [
        { value: 'tile', meaning: 'the middle of a tile (of the largest kind)' },
        { value: 'vertex', meaning: 'a corner where tiles meet' },
        { value: 'edge', meaning: 'the middle of an edge' },
      ],
    },
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const chosen = tilings.find((t) => t.name === values.tiling)!;
    const field = fieldOf(outline, num(values, 'band'));
    const how: Lay = {
      edge: num(values, 'edge'),
      turn: num(values, 'turn'),
      centre: values.centre as Lay['centre'],
    };
    const tiles = lay(chosen, how, bounds(field.contours));
    if (values.plug === 'straps') drawStraps(values, tiles, field, pen);
    else drawTiles(values, chosen, tiles, field, pen);
  },
};

/** The part of the outline that the pattern may fill. */
function fieldOf(outline: Outline, band: number): Region {
  if (band === 0) return outline.inner;
  const { minX, maxX, minY, maxY } = bounds(outline.inner.contours);
  const half = band / 2;
  if (half >= maxY && -half <= minY) return outline.inner;
  const strip = polygon([
    [minX - 1, -half],
    [maxX + 1, -half],
    [maxX + 1, half],
    [minX - 1, half],
  ]);
  return intersect(outline.inner, { contours: [strip] });
}

function drawStraps(values: Values, tiles: readonly LaidTile[], field: Region, pen: Pen): void {
  const strap = num(values, 'strap');
  const largest = Math.max(...tiles.map((t) => apothem(t.points)));
  if (strap >= 2 * largest)
    throw bad('strap', `${mm(strap)} closes every tile; make it less than ${mm(2 * largest)}`);
  const straps =
    values.fill === 'clip'
      ? clippedStraps(tiles, strap, values.frame === true, field)
      : wholeStraps(tiles, strap, field);
  if (straps.contours.length === 0) throw nothingFits(values);
  pen.piece('straps');
  drawRegion(pen, straps);
}

function drawTiles(
  values: Values,
  chosen: Tiling,
  tiles: readonly LaidTile[],
  field: Region,
  pen: Pen,
): void {
  const kinds = [...new Set(chosen.cell.map((t) => String(t.sides)))];
  const kind = String(values.tiles);
  if (kind !== 'all' && !kinds.includes(kind))
    throw bad('tiles', `${chosen.name} has no tiles of ${kind} sides; use all or ${kinds.join(' or ')}`);
  const wanted = tiles.filter((t) => kind === 'all' || String(t.sides) === kind);
  const wall = num(values, 'wall');
  const largest = Math.max(...wanted.map((t) => apothem(t.points)));
  if (wall >= 2 * largest)
    throw bad('wall', `${mm(wall)} leaves nothing of the tiles; make it less than ${mm(2 * largest)}`);
  const place = placer(field);
  let drawn = 0;
  for (const t of wanted) {
    const points = insetPolygon(t.points, wall / 2);
    const where = points && place(points);
    if (!points || where === 'outside' || (where === 'across' && values.fill === 'whole')) continue;
    const tile: Region = { contours: [polygon(points)] };
    const region = where === 'inside' ? tile : intersect(tile, field);
    if (region.contours.length === 0) continue;
    pen.piece(t.name);
    drawRegion(pen, region);
    drawn++;
  }
  if (drawn === 0) throw nothingFits(values);
}

function nothingFits(values: Values): Refusal {
  return new Refusal(
    'nothing-fits',
    `pattern.edge: no whole tile of edge ${mm(num(values, 'edge'))} fits the outline; make it smaller`,
  );
}

import type { Piece } from '../../geometry/artwork.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { bounds, type Region } from '../../geometry/region.js';
import { mirrorX, placedRegion } from '../../geometry/transform.js';
import { cos, sin } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import { shareThatFits } from '../fits.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { openDrawing } from './open.js';
import { asDrawn, mendingParameters } from './outlines/parameters.js';
import { repairRemarks } from './outlines/remarks.js';
import { ownSize, scaleRemarks } from './scale.js';

/** Drawings are first drawn this large, mm, to be measured: their curves are then true to a few millionths. */
const MEASURED = 400;

/** Smaller figures than this, mm, no cutter cuts. */
const LEAST_WIDTH = 1;

/** Room left so that a drawing fitted by chords lies inside by its curves too. */
const SNUG = 1 - 1e-3;

/** A figure that is too large by rounding alone, 3 nm on the largest face, fits. */
const ROUNDING = 1 - 1e-9;

/** Far larger than any outline, in shares of it. */
const TOO_LARGE = 4;

const place = (name: string, meaning: string, say: string) =>
  ({ kind: 'length', name, meaning, say, default: 0, min: -3000, max: 3000 }) as const;

export const drawing: Generator = {
  name: 'drawing',
  title: 'Drawing',
  family: 'drawing',
  summary:
    'An SVG or DXF drawing of your own: what is not white, or lies within closed outlines, becomes the figure.',
  parameters: [
    {
      kind: 'text',
      name: 'file',
      meaning: "The SVG or DXF file, by its path from the recipe's folder.",
      say: 'out of …',
      default: 'drawings/acorn.svg',
      maxLength: 200,
    },
    length(
      'width',
      "Width of the figure before it is turned; 0 for the drawing's own size.",
      { say: 'of … width', zero: 'its own' },
      0,
      0,
      3000,
    ),
    {
      kind: 'flag',
      name: 'fit',
      meaning: 'Draws it as large as the outline lets it.',
      say: 'drawn …',
      words: ['as large as fits', 'at that size'],
      default: false,
    },
    {
      kind: 'flag',
      name: 'mirror',
      meaning: 'Draws it left for right.',
      say: 'its left and right …',
      words: ['changed over', 'as they are'],
      default: false,
    },
    turn,
    place(
      'x',
      "Where the figure's middle lies, to the right of the outline's middle.",
      '… to the right of the middle',
    ),
    place('y', "Where the figure's middle lies, above the outline's middle.", '… above the middle'),
    ...mendingParameters,
    seed,
  ],
  draw(values, outline, pen, assets) {
    const width = num(values, 'width');
    if (values.fit === true && width > 0)
      throw bad('width', `${mm(width)} is given beside fit; leave one of them out`);
    if (width > 0 && width < LEAST_WIDTH)
      throw bad('width', `${mm(width)} is too small to cut; use ${mm(LEAST_WIDTH)} or more, or 0`);
    const source = openDrawing(assets, String(values.file), 'pattern.file', asDrawn(values));
    const at = { x: num(values, 'x'), y: num(values, 'y') };
    const placed = (pieces: readonly Piece[]): Placed =>
      placedAs(pieces, values.mirror === true, num(values, 'turn'));
    const room: Region = placedRegion(outline.inner, -at.x, -at.y);

    let scale = 1;
    if (width > 0 || values.fit === true) {
      const measure = MEASURED / source.extent;
      const face = bounds(room.contours);
      const across = width > 0 ? width : Math.max(face.maxX - face.minX, face.maxY - face.minY);
      const plain = source.figures(measure, across / source.extent);
      const box = boxOf(plain);
      const own = box.maxX - box.minX;
      scale = width > 0 ? (measure * width) / own : fittedScale(placed(plain).pieces, measure, room);
    }
    const figures = source.figures(scale);
    if (width === 0 && values.fit !== true)
      for (const remark of scaleRemarks(ownSize(source.unit, String(values.file), figures)))
        pen.remark(remark);
    const { pieces, place: placeOf } = placed(figures);
    const share = shareThatFits(regions(pieces), room);
    if (share < 1 && shareThatFits(shrunk(pieces), room) < 1) throw tooLarge(figures, share);
    for (const { name, region } of pieces) {
      pen.piece(name);
      drawRegion(pen, placedRegion(region, at.x, at.y));
    }
    for (const remark of repairRemarks(source.repairsAt(scale), (p) => {
      const [x, y] = placeOf(p);
      return [x + at.x, y + at.y];
    }))
      pen.remark(remark);
  },
};

/** Figures where they are drawn, and where places of the drawing come to. */
interface Placed {
  readonly pieces: Piece[];
  place(at: readonly [number, number]): readonly [number, number];
}

/** Mirrored, turned, and moved so that the box of all is about the origin. */
function placedAs(pieces: readonly Piece[], mirror: boolean, angle: number): Placed {
  const turned = pieces.map(({ name, region }) => ({
    name,
    region: placedRegion(mirror ? mirrorX(region) : region, 0, 0, angle),
  }));
  const { minX, maxX, minY, maxY } = boxOf(turned);
  const [mx, my] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const [c, s] = [cos(angle), sin(angle)];
  return {
    pieces: turned.map(({ name, region }) => ({ name, region: placedRegion(region, -mx, -my) })),
    place([px, y]) {
      const x = mirror ? -px : px;
      return [c * x - s * y - mx, s * x + c * y - my];
    },
  };
}

/** The scale at which the drawing just fits, from pieces drawn at another. */
function fittedScale(pieces: readonly Piece[], measure: number, room: Region): number {
  const own = boxOf(pieces);
  const all = bounds(room.contours);
  const large =
    TOO_LARGE *
    Math.max((all.maxX - all.minX) / (own.maxX - own.minX), (all.maxY - all.minY) / (own.maxY - own.minY));
  const share = shareThatFits(
    pieces.map((p) => placedRegion(p.region, 0, 0, 0, large)),
    room,
  );
  if (share < 1e-4)
    throw new Refusal(
      'too-wide',
      'pattern.fit: the figure fits the outline at this place at no size; move it with x and y',
    );
  return measure * large * share * SNUG;
}

function tooLarge(plain: readonly Piece[], share: number): Refusal {
  const { minX, maxX, minY, maxY } = boxOf(plain);
  const most = Math.floor((maxX - minX) * share * SNUG * 10) / 10;
  const size = `the figure, ${mm(maxX - minX)} wide and ${mm(maxY - minY)} high,`;
  return new Refusal(
    'too-wide',
    most > 0
      ? `pattern.width: ${size} does not fit the outline here; at a width of ${mm(most)} it would`
      : `pattern.width: ${size} fits the outline at this place at no size; move it with x and y`,
  );
}

function boxOf(pieces: readonly Piece[]): ReturnType<typeof bounds> {
  return bounds(pieces.flatMap((p) => p.region.contours));
}

function shrunk(pieces: readonly Piece[]): Region[] {
  return pieces.map((p) => placedRegion(p.region, 0, 0, 0, ROUNDING));
}

function regions(pieces: readonly Piece[]): Region[] {
  return pieces.map((p) => p.region);
}

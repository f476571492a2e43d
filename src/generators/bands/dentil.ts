import { union } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { polygon, type Region } from '../../geometry/region.js';
import { cos, sin, tan } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { length, mm, num } from '../values.js';
import { box, drawPiece, drawRails, layBand, stripe } from './band.js';
import { frameSides, hasCorners, squareOnly } from './frame.js';
import type { FrameSide } from './frame-track.js';
import { bandParameters } from './parameters.js';
import { noRoom } from './room.js';
import { drawFrameRails, frameDepth, sharpFrame } from './sharp-frame.js';
import { laid } from './track.js';

export const dentil: Generator = {
  name: 'dentil',
  title: 'Dentil band',
  family: 'bands',
  summary: 'A row of blocks, free or standing on a line, with square blocks at the corners.',
  parameters: bandParameters(
    [
      length('height', 'Height of the band.', 'the band … high', 12, 1, 500),
      length(
        'tooth',
        'Width of a block; blocks and gaps grow together until whole ones close.',
        'blocks … wide',
        6,
        0.2,
        500,
      ),
      length('gap', 'Field left between blocks.', 'blocks … apart', 4.4, 0.2, 500),
      length(
        'back',
        'Width of the line that the blocks stand on; 0 for blocks that stand free.',
        { say: '… line under the blocks', often: [0, 12], zero: 'no' },
        0,
        0,
        200,
      ),
      {
        kind: 'flag',
        name: 'hang',
        meaning:
          'Turns the blocks the other way: on a stave they hang from the line, round an edge they point outwards.',
        say: 'blocks standing …',
        words: ['the other way', 'the usual way'],
        default: false,
      },
    ],
    false,
  ),
  draw(values, outline, pen) {
    squareOnly(values, outline);
    if (hasCorners(outline) && values.across !== true) drawFrame(values, outline, pen);
    else drawRun(values, outline, pen);
  },
};

function drawRun(values: Values, outline: Outline, pen: Pen): void {
  const half = num(values, 'height') / 2;
  const tooth = num(values, 'tooth');
  const gap = num(values, 'gap');
  const back = backOf(values);
  const least = tooth + gap;
  // At free ends blocks without a line begin and end the band: half a gap less on either side.
  const band = layBand(values, outline, { half, repeat: 1, least, caps: back > 0 ? 0 : -gap / 2 });
  const { track } = band;
  const width = (tooth * track.repeat) / least;
  const [low, high] = values.hang === true ? [-half, half - back] : [-half + back, half];
  const teeth: Region[] = [];
  for (let k = 0; k < track.repeats; k++) {
    const middle = (k + 0.5) * track.repeat;
    teeth.push({ contours: [laid(track, box(middle - width / 2, middle + width / 2, low, high))] });
  }
  if (back === 0) {
    teeth.forEach((t, k) => {
      drawPiece(pen, band, `block ${k + 1}`, t);
    });
  } else {
    const line = values.hang === true ? stripe(band, half - back, half) : stripe(band, -half, -half + back);
    drawPiece(pen, band, 'blocks', union([line, ...teeth]));
  }
  drawRails(pen, band, values);
}

/** Width of the line under the blocks, mm. */
function backOf(values: Values): number {
  const back = num(values, 'back');
  const height = num(values, 'height');
  if (back > 0 && back >= height)
    throw new Refusal('no-room', `pattern.back: ${mm(back)} leaves no blocks; use less than ${mm(height)}`);
  return back;
}

/** Blocks along the sides of a frame, each side's alike, with a block in every corner. */
function drawFrame(values: Values, outline: Outline, pen: Pen): void {
  const height = num(values, 'height');
  const depth = frameDepth(values, outline);
  const outer = frameSides(outline, depth);
  if (!outer || !frameSides(outline, depth + height)) throw noRoom(2 * height, depth);
  const back = backOf(values);
  const hang = values.hang === true;
  // Blocks that point outwards from a line: the corner's reaches to the line's inner corner, or it would touch in a point.
  const rows = { low: hang ? 0 : back, high: hang ? height - back : height, corner: height };
  const blocks = outer.flatMap((side, i) => {
    const before = outer[(i + outer.length - 1) % outer.length]!;
    return frameBlocks(
      side,
      before,
      (2 * Math.PI) / outer.length,
      rows,
      num(values, 'tooth'),
      num(values, 'gap'),
    );
  });
  if (back === 0) {
    blocks.forEach((block, k) => {
      pen.piece(`block ${k + 1}`);
      drawRegion(pen, block);
    });
  } else {
    pen.piece('blocks');
    drawRegion(pen, union([sharpFrame(outline, depth + (hang ? height - back : 0), back), ...blocks]));
  }
  drawFrameRails(pen, values, outline, height);
}

/** The block in the corner before a side, then the side's own: between two depths, mm. */
function frameBlocks(
  side: FrameSide,
  before: FrameSide,
  turn: number,
  { low, high, corner: deep }: { low: number; high: number; corner: number },
  tooth: number,
  gap: number,
): Region[] {
  // Where the inner edges of two sides meet, along either from the corner; a blunt corner's block is a tooth wide.
  const inner = deep * tan(turn / 2);
  const end = Math.max(inner, tooth / 2);
  const at = pointOn(side, 0);
  const back = pointOn(before, before.length);
  const corner = polygon([
    at(low * tan(turn / 2), low),
    at(end, low),
    at(end, deep),
    ...(end > inner ? [at(inner, deep)] : []),
    ...(end > inner ? [back(-end, deep)] : []),
    back(-end, low),
  ]);
  const room = side.length - 2 * end;
  if (room < gap)
    throw new Refusal(
      'no-room',
      `pattern.height: blocks ${mm(high)} high leave no room along the side; use lower ones`,
    );
  const n = Math.floor((room - gap) / (tooth + gap) + 1e-9);
  const grown = room / (n * tooth + (n + 1) * gap);
  const blocks = Array.from({ length: n }, (_, k) => {
    const s = end + grown * (gap + k * (tooth + gap));
    return polygon([at(s, low), at(s + grown * tooth, low), at(s + grown * tooth, high), at(s, high)]);
  });
  return [corner, ...blocks].map((c) => ({ contours: [c] }));
}

/** Places by distance along a side from one of its points, and depth to its left. */
function pointOn(side: FrameSide, from: number): (along: number, depth: number) => [number, number] {
  const [c, n] = [cos(side.heading), sin(side.heading)];
  return (along, depth) => [
    side.start[0] + (from + along) * c - depth * n,
    side.start[1] + (from + along) * n + depth * c,
  ];
}

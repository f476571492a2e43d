import { intersect } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { type Edge, line } from '../../geometry/edge.js';
import type { Pen } from '../../geometry/pen.js';
import { stroke } from '../../geometry/stroke.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { length, num } from '../values.js';
import { drawPiece, drawRails, layBand } from './band.js';
import { squareOnly } from './frame.js';
import { keyColumns, keyCorners } from './key.js';
import { keyFrame } from './key-frame.js';
import { bandParameters } from './parameters.js';
import { drawFrameRails } from './sharp-frame.js';
import { ahead, before } from './strand.js';
import { laid } from './track.js';

export const meander: Generator = {
  name: 'meander',
  title: 'Meander band',
  family: 'bands',
  summary: 'The Greek key: one strap that winds in and out again, with true corners on a rectangle.',
  parameters: bandParameters(
    [
      {
        kind: 'count',
        name: 'turns',
        meaning: 'How often each key winds in before it winds out.',
        say: 'keys … turns deep',
        one: 'keys … turn deep',
        default: 1,
        min: 1,
        max: 4,
      },
      length(
        'strap',
        'Width of the strap; on a frame it grows a little with the keys.',
        'the strap … wide',
        4.2,
        0.2,
        200,
      ),
      length(
        'gap',
        'Least field between straps; it grows until whole keys close.',
        'at least … between straps',
        4.2,
        0.2,
        200,
      ),
    ],
    true,
  ),
  draw(values, outline, pen) {
    squareOnly(values, outline);
    if (outline.shape === 'rectangle' && values.across !== true) drawFrame(values, outline, pen);
    else drawRun(values, outline, pen);
  },
};

/** A key frame with a corner of its own kind. */
function drawFrame(values: Values, outline: Outline, pen: Pen): void {
  const { path, strap, height } = keyFrame(values, outline);
  pen.piece('key');
  drawRegion(pen, stroke(path, strap, { closed: true }));
  drawFrameRails(pen, values, outline, height);
}

function drawRun(values: Values, outline: Outline, pen: Pen): void {
  const turns = num(values, 'turns');
  const strap = num(values, 'strap');
  const pitch = strap + num(values, 'gap');
  const columns = keyColumns(turns);
  const half = turns * pitch + strap / 2;
  // The most keys that keep the gap where the track is tightest.
  const band = layBand(values, outline, { half, repeat: 1, least: columns * pitch, caps: strap / 2 });
  const { track } = band;
  const column = track.repeat / columns;
  const at = (k: number, x: number, y: number): [number, number] => [
    (k * columns + x) * column,
    (y - turns) * pitch,
  ];
  const keys = Array.from({ length: track.repeats }, (_, k) => k);
  const corners = keys.flatMap((k) => keyCorners(turns).map(([x, y]) => at(k, x, y)));
  const top = 2 * turns;
  if (track.ends === 'closed') corners.push(at(track.repeats, 0, 0));
  if (track.ends === 'free') corners.push(at(track.repeats, 0, 0), at(track.repeats, 0, top));
  if (track.ends === 'joint') {
    // A joint runs half way between two columns, where one line alone crosses it.
    corners.splice(0, 2, at(0, 0.5, top));
    corners.push(at(track.repeats, 0, 0), at(track.repeats, 0, top), at(track.repeats, 0.5, top));
  }
  const shift = track.ends === 'joint' ? -column / 2 : 0;
  const path = corners.slice(1).map((q, i): Edge => {
    const p = corners[i]!;
    return line(p[0] + shift, p[1], q[0] + shift, q[1]);
  });
  const onFace = laid(track, path);
  const whole = track.ends === 'joint' ? ahead(before(onFace, band.beyond), band.beyond) : onFace;
  const key = stroke(whole, strap, { closed: track.ends === 'closed' });
  // On a bent track the square corners of the strap reach over the margin by a hair.
  drawPiece(pen, band, 'key', track.ends === 'closed' ? intersect(key, outline.inner) : key);
  drawRails(pen, band, values);
}

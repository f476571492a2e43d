import { drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { polygon, type Region, reversedContour } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { num } from '../values.js';
import { cornerRoom, frameSides } from './frame.js';
import { noRoom } from './room.js';

/** How far inside the outline's inner edge a frame with sharp corners has its band: past its outer rails, mm. */
export function frameDepth(values: Values, outline: Outline): number {
  const rails = num(values, 'rails') * (num(values, 'rail') + num(values, 'lane'));
  return num(values, 'inset') + cornerRoom(outline) + rails;
}

/** A frame of one width with sharp corners: from `depth` to `depth + width` inside the outline's inner edge, mm. */
export function sharpFrame(outline: Outline, depth: number, width: number): Region {
  const outer = frameSides(outline, depth);
  const inner = frameSides(outline, depth + width);
  if (!outer || !inner) throw noRoom(depth + width, depth);
  const path = (sides: typeof outer) => polygon(sides.map((s) => [s.start[0], s.start[1]]));
  return { contours: [path(outer), reversedContour(path(inner))] };
}

/** Border lines round a frame whose band reaches from its depth to `height` further in. */
export function drawFrameRails(pen: Pen, values: Values, outline: Outline, height: number): void {
  const rail = num(values, 'rail');
  const lane = num(values, 'lane');
  const depth = frameDepth(values, outline);
  for (let k = 0; k < num(values, 'rails'); k++) {
    pen.piece(`outer rail ${k + 1}`);
    drawRegion(pen, sharpFrame(outline, depth - (k + 1) * (rail + lane), rail));
    pen.piece(`inner rail ${k + 1}`);
    drawRegion(pen, sharpFrame(outline, depth + height + lane + k * (rail + lane), rail));
  }
}

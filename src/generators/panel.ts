import { subtract } from '../geometry/boolean.js';
import { drawRegion } from '../geometry/draw-region.js';
import { offset } from '../geometry/offset.js';
import type { Generator } from './generator.js';
import { bad, length, mm, num, seed } from './values.js';

/** The plainest of figures, for layers: it takes the shape of what it is drawn in. */
export const panel: Generator = {
  name: 'panel',
  title: 'Panel or frame',
  family: 'fields',
  summary:
    'The whole area, solid or as a frame of one width: a ground to take figures out of, or a border line.',
  parameters: [
    length(
      'width',
      'Width of the frame; 0 for a solid panel.',
      { say: 'a frame of … width', zero: 'the full' },
      0,
      0,
    ),
    seed,
  ],
  draw(values, outline, pen) {
    const width = num(values, 'width');
    const opening = width > 0 ? offset(outline.inner, -width) : null;
    if (opening && opening.contours.length === 0)
      throw bad('width', `${mm(width)} leaves no opening; make it less, or 0 for a solid panel`);
    pen.piece('panel');
    drawRegion(pen, opening ? subtract(outline.inner, opening) : outline.inner);
  },
};

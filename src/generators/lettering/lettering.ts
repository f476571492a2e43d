import { drawRegion } from '../../geometry/draw-region.js';
import { Refusal } from '../../schema/fault.js';
import { shareThatFits } from '../fits.js';
import type { Generator } from '../generator.js';
import { recorder } from '../recorder.js';
import { bad, length, mm, num, seed } from '../values.js';
import { openFace } from './font.js';
import { drawLine, inkSpan, setLine } from './line.js';

export const lettering: Generator = {
  name: 'lettering',
  title: 'Lettering',
  family: 'lettering',
  summary: 'One line of text, centred in the outline.',
  parameters: [
    { kind: 'text', name: 'text', meaning: 'The text, one line.', default: '47', maxLength: 60 },
    length('height', 'Height of a flat capital letter.', 34, 2),
    {
      kind: 'length',
      name: 'tracking',
      meaning: 'Extra space between any two letters; negative for tighter.',
      default: 1,
      min: -50,
      max: 200,
    },
    {
      kind: 'choice',
      name: 'font',
      meaning: 'The letters.',
      default: 'varela-round',
      options: [{ value: 'varela-round', meaning: 'Varela Round: even strokes, rounded ends' }],
    },
    seed,
  ],
  draw(values, outline, pen, assets) {
    const text = String(values.text).normalize('NFC').trim();
    if (text === '') throw bad('text', 'is empty; give at least one letter');
    const face = openFace(String(values.font), assets);
    const height = num(values, 'height');
    const scale = height / face.capHeight;
    const line = setLine(face, text, num(values, 'tracking') / scale);
    const ink = inkSpan(line);
    if (!ink) throw bad('text', 'has nothing to draw; give at least one letter');
    const middle = (ink[0] + ink[1]) / 2;

    const drawn = recorder();
    drawLine(line, middle, -height / 2, scale, drawn);
    const { pieces } = drawn.artwork();
    const share = shareThatFits(
      pieces.map((p) => p.region),
      outline.inner,
    );
    if (share < 1) {
      const most = Math.floor(height * share * 10) / 10;
      throw new Refusal(
        'too-wide',
        most >= 2
          ? `pattern.height: letters of ${mm(height)} are too large for the outline; at ${mm(most)}, with tracking in proportion, they would fit`
          : 'pattern.text: does not fit the middle of the outline at any height; use a shorter text or another outline',
      );
    }
    for (const p of pieces) {
      pen.piece(p.name);
      drawRegion(pen, p.region);
    }
  },
};

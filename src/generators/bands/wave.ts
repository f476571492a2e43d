import { subtract } from '../../geometry/boolean.js';
import { circle } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num } from '../values.js';
import { drawPiece, drawRails, layBand } from './band.js';
import { widened } from './lean.js';
import { bandParameters, repeatParameter } from './parameters.js';
import { shortestWave, wavy, wholeStrand } from './strand.js';

export const wave: Generator = {
  name: 'wave',
  title: 'Wave band',
  family: 'bands',
  summary: 'A wavy line, or several side by side, with discs in the hollows.',
  parameters: bandParameters(
    [
      length('height', 'Height of the band.', 'the band … high', 15, 1, 500),
      repeatParameter(28),
      {
        kind: 'count',
        name: 'lines',
        meaning: 'Number of lines side by side.',
        say: '… lines side by side',
        one: '… line',
        default: 1,
        min: 1,
        max: 6,
      },
      length('strap', 'Width of a line.', 'lines … wide', 4.3, 0.2, 200),
      length('gap', 'Field left between lines.', 'lines … apart', 4.4, 0.2, 200),
      length(
        'disc',
        'Diameter of the discs set in the hollows of the wave; 0 for none.',
        { say: '… discs in the hollows', zero: 'no' },
        4.2,
        0,
        200,
      ),
    ],
    true,
  ),
  draw(given, outline, pen) {
    const values = widened(given, outline, num(given, 'height') / 2);
    const lines = num(values, 'lines');
    const strap = num(values, 'strap');
    const gap = num(values, 'gap');
    const half = num(values, 'height') / 2;
    const whole = lines * strap + (lines - 1) * gap;
    if (whole >= 2 * half)
      throw bad('height', `${mm(2 * half)} holds no wave of ${mm(whole)} in all; use more than ${mm(whole)}`);
    const least = Math.max(whole + gap, shortestWave(half - whole / 2, whole));
    const band = layBand(values, outline, { half, repeat: num(values, 'repeat'), least, depth: half / 2 });
    const { track } = band;
    const closed = track.ends === 'closed';
    // Round a frame a crest points out at every corner, where there is room for it.
    const phase = closed ? 0.5 : 0;
    const path = wholeStrand(band, wavy(track, half - whole / 2, phase));
    // Bands of falling width about one middle line, each with the next one's gap taken out, are lines in pairs.
    for (let k = 0; 2 * k < lines; k++) {
      const wide = whole - 2 * k * (strap + gap);
      const outer = stroke(path, wide, { closed });
      const hollow = wide - 2 * strap;
      drawPiece(
        pen,
        band,
        `wave ${k + 1}`,
        hollow > 1e-9 ? subtract(outer, stroke(path, hollow, { closed })) : outer,
      );
    }
    const disc = num(values, 'disc') / 2;
    if (disc > 0)
      for (let k = 2 * band.first; k <= 2 * band.last + 2; k++) {
        // A hollow opens on the side away from its crest; whole discs only, so none beyond free ends.
        if (closed && k === 2 * band.last + 2) continue;
        const t = (k % 2 === 0 ? -1 : 1) * (closed ? -1 : 1) * (half - disc);
        const [x, y] = track.spot((k * track.repeat) / 2, t).at;
        const beyond = track.ends === 'free' && (k === 0 || k === 2 * track.repeats);
        if (!beyond) drawPiece(pen, band, `disc ${k + 1}`, { contours: [circle(x, y, disc)] });
      }
    drawRails(pen, band, values);
  },
};

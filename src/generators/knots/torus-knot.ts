import type { Generator } from '../generator.js';
import { largestCircle } from '../middle.js';
import { bad, floor, length, mm, num, seed, turn } from '../values.js';
import { drawBands } from './bands.js';
import { innerBend, type RosetteKnot, rosetteStrands } from './rosette-strands.js';

/** Inner lobes have so many times the width of a band and a gap each. */
const EYE = 1.25;

export const torusKnot: Generator = {
  name: 'torus-knot',
  title: 'Rosette knot',
  family: 'knots',
  summary: 'Closed bands that wind round the middle in lobes, over and under each other by turns.',
  parameters: [
    {
      kind: 'count',
      name: 'strands',
      meaning: 'Number of bands abreast between the middle and the rim; turns round the middle.',
      say: '… bands abreast',
      default: 3,
      min: 2,
      max: 12,
    },
    {
      kind: 'count',
      name: 'lobes',
      meaning: 'Number of lobes round the rim.',
      say: '… lobes',
      default: 7,
      min: 2,
      max: 60,
    },
    length(
      'size',
      'Diameter of the whole knot; 0 for the largest that fits the outline.',
      { say: 'diameter …', zero: 'as large as fits' },
      0,
      0,
      3000,
    ),
    length(
      'eye',
      'Diameter of the opening in the middle; 0 for one that suits the lobes.',
      { say: '… eye in the middle', zero: 'a fitting' },
      0,
      0,
      3000,
    ),
    length('strap', 'Width of the bands.', 'bands … wide', 4, 0.2),
    length('gap', 'Width of the gaps where a band passes under another.', 'gaps … wide', 4.2, 0.2),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const fit = largestCircle(outline.inner);
    const strap = num(values, 'strap');
    const gap = num(values, 'gap');
    const strands = num(values, 'strands');
    const lobes = num(values, 'lobes');
    const size = num(values, 'size');
    if (size > 2 * fit.radius + 1e-9)
      throw bad('size', `${mm(size)} is too large for the outline; use ${mm(floor(2 * fit.radius))} at most`);
    const outer = (size || 2 * fit.radius) / 2 - strap / 2;
    // From the inmost band to the outmost there is a band and a gap for every strand but one.
    const most = outer - (strands - 1) * (strap + gap) - strap / 2;
    if (most <= fit.bore)
      throw bad(
        'strands',
        `${strands} with this strap and gap do not fit; use fewer, or make strap and gap less`,
      );
    const knot = (eye: number): RosetteKnot => ({
      strands,
      lobes,
      mean: (outer + eye + strap / 2) / 2,
      swing: (outer - eye - strap / 2) / 2,
      middle: [fit.x, fit.y],
      turn: num(values, 'turn') + Math.PI / 2,
    });
    const asked = num(values, 'eye') / 2;
    if (asked > most)
      throw bad('eye', `${mm(2 * asked)} leaves no room for the bands; use ${mm(floor(2 * most))} at most`);
    const least = (EYE * lobes * (strap + gap)) / (2 * Math.PI);
    if (asked === 0 && least > most)
      throw bad(
        'lobes',
        `${lobes} crowd the middle; use ${Math.floor((lobes * most) / least)} at most, or set eye`,
      );
    let eye = Math.max(fit.bore, asked || least);
    // The bend of an inner lobe leaves as much open as a gap does, if there is room.
    while (asked === 0 && innerBend(knot(eye)) < (strap + gap) / 2 && eye < most)
      eye = Math.min(most, eye + 0.5);
    const bend = innerBend(knot(eye));
    if (bend <= strap / 2)
      throw bad(
        'strap',
        `${mm(strap)} is too wide for the inner lobes' bends; use less than ${mm(floor(2 * bend))}, more strands or fewer lobes`,
      );
    drawBands(pen, rosetteStrands(knot(eye)), strap, gap);
  },
};

import type { Pen } from '../../geometry/pen.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, ceil, length, mm, num, seed, turn } from '../values.js';
import { drawRim, rimParameters } from './rim.js';
import { drawDisc, drawPiece, size, stageOf } from './stage.js';
import type { Star } from './star.js';
import { drawSolid, drawStraps, starOf, strapOpening } from './star-figure.js';
import { leastWovenRadius, wovenStraps } from './weave.js';

export const starPolygon: Generator = {
  name: 'star-polygon',
  title: 'Star polygon',
  family: 'radial',
  summary: 'The star polygon {points/step}: straps over and under each other, plain straps, or a solid star.',
  parameters: [
    {
      kind: 'choice',
      name: 'style',
      meaning: 'How the star is drawn.',
      say: '…',
      default: 'straps',
      options: [
        { value: 'woven', meaning: 'straps along the chords, over and under each other in turn' },
        { value: 'straps', meaning: 'straps along the chords, all in one plane' },
        { value: 'solid', meaning: 'the outline filled, within nested outlines' },
      ],
    },
    {
      kind: 'count',
      name: 'points',
      meaning: 'Number of points.',
      say: '… points',
      default: 7,
      min: 3,
      max: 48,
    },
    {
      kind: 'count',
      name: 'step',
      meaning:
        'Each point is joined to the one this many on; a step that shares a factor with the points makes several crossed stars; 0 for points of 45 degrees or a little more.',
      say: 'each point joined … on',
      zero: 'a fitting step',
      default: 2,
      min: 0,
      max: 23,
    },
    size,
    ...rimParameters(0),
    length('strap', 'Width of straps and of nested outlines.', 'straps … wide', 4.4, 0.2),
    length(
      'gap',
      'Width of the gaps at crossings, and of the walls to rings and between outlines.',
      'gaps and walls … wide',
      4.2,
      0.2,
    ),
    {
      kind: 'count',
      name: 'bands',
      meaning: 'Outlines nested round a solid star.',
      say: '… outlines round a solid star',
      zero: 'no',
      one: '… outline round a solid star',
      default: 1,
      min: 0,
      max: 12,
    },
    length(
      'eye',
      'Diameter of the opening in a solid star; 0 for none.',
      { say: '… eye in a solid star', zero: 'no' },
      0,
      0,
      3000,
    ),
    length(
      'disc',
      'Diameter of the disc in the middle; 0 for none.',
      { say: '… disc in the middle', zero: 'no' },
      0,
      0,
    ),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    const outer = drawRim(values, stage.radius, 0, stage.pen);
    const disc = num(values, 'disc') / 2;
    if (values.style === 'solid') {
      if (stage.bore > 0)
        throw bad('style', 'a solid star needs wood in the middle of the outline; use straps or woven');
      const eye = num(values, 'eye') / 2;
      if (disc > 0 && disc >= eye)
        throw bad('disc', `${mm(2 * disc)} fills the eye; make it less than ${mm(2 * eye)}`);
      drawSolid(values, outer, eye, stage.pen);
    } else {
      const open = strapOpening(values, starOf(values), outer);
      if (open <= stage.bore)
        throw bad(
          'step',
          `the star's opening of ${mm(2 * open)} is smaller than the outline's of ${mm(2 * stage.bore)}; use a smaller step or a narrower strap`,
        );
      if (values.style === 'straps') drawStraps(values, outer, stage.pen);
      else drawWoven(values, outer, stage.pen);
    }
    if (disc > 0 && stage.bore === 0) drawDisc(stage.pen, 'disc', disc);
  },
};

function drawWoven(values: Values, radius: number, pen: Pen): void {
  const star = starOf(values);
  const width = num(values, 'strap');
  const gap = num(values, 'gap');
  checkCrossings(star, radius, width, gap);
  const pieces = wovenStraps({ star, radius, turn: num(values, 'turn'), width, gap });
  pieces.forEach((p, i) => {
    drawPiece(pen, `strap ${i + 1}`, p);
  });
}

/** Throws BadInput where a strap would dip under the next before it has passed wholly over the last. */
function checkCrossings(star: Star, radius: number, width: number, gap: number): void {
  const least = leastWovenRadius(star, width, gap);
  if (radius >= least) return;
  throw bad(
    'style',
    `the crossings of {${star.n}/${star.m}} are too near each other to weave straps of ${mm(width)} with gaps of ${mm(gap)}; that needs a star of ${mm(ceil(2 * least))}: use style "straps", a smaller step or a narrower strap`,
  );
}

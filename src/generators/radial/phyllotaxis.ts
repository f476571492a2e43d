import { type Contour, circle } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { drop, rhomb } from './petal.js';
import { polar, UP } from './polar.js';
import { drawRim, rimParameters } from './rim.js';
import { placedSeeds, type Seed } from './seeds.js';
import { drawPiece, size, stageOf } from './stage.js';

export const phyllotaxis: Generator = {
  name: 'phyllotaxis',
  title: 'Phyllotaxis',
  family: 'radial',
  summary: 'Seeds set each a golden angle on from the last, as in a sunflower: discs, drops or rhombs.',
  parameters: [
    {
      kind: 'choice',
      name: 'shape',
      meaning: 'The shape of a seed.',
      say: 'each a …',
      default: 'disc',
      options: [
        { value: 'disc', meaning: 'discs' },
        { value: 'drop', meaning: 'drops with their points inwards' },
        { value: 'rhomb', meaning: 'rhombs that point outwards' },
      ],
    },
    length('inner', 'Length of a seed at the middle.', '… long at the middle', 4.6, 0.2, 200),
    length('outer', 'Length of a seed at the outer edge.', '… long at the outer edge', 6.4, 0.2, 200),
    length('gap', 'Least width of the walls between seeds, and to rings.', 'walls at least … wide', 4.2, 0.2),
    {
      kind: 'choice',
      name: 'hand',
      meaning: 'Which way the seeds follow each other.',
      say: 'winding to the …',
      default: 'left',
      options: [
        { value: 'left', meaning: 'counter-clockwise' },
        { value: 'right', meaning: 'clockwise' },
      ],
    },
    length('eye', 'Diameter that stays free in the middle.', '… left free in the middle', 0, 0, 3000),
    size,
    ...rimParameters(0),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    const eye = Math.max(stage.bore, num(values, 'eye') / 2);
    const outer = drawRim(values, stage.radius, eye, stage.pen);
    const room = {
      eye,
      outer,
      gap: num(values, 'gap'),
      size0: num(values, 'inner') / 2,
      size1: num(values, 'outer') / 2,
    };
    if (Math.max(room.size0, room.size1) > outer)
      throw bad('outer', `seeds are larger than the figure; make them ${mm(2 * outer)} at most`);
    const hand = values.hand === 'left' ? 1 : -1;
    const seeds = placedSeeds(room);
    if (seeds.length === 0)
      throw new Refusal(
        'nothing-fits',
        'pattern.inner: no seed fits round the eye; make seeds or eye smaller',
      );
    seeds.forEach((s, i) => {
      const angle = num(values, 'turn') + UP + hand * s.angle;
      drawPiece(stage.pen, `seed ${i + 1}`, { contours: [figure(String(values.shape), s, angle)] });
    });
  },
};

function figure(shape: string, { radius, size: half }: Seed, angle: number): Contour {
  const from = radius - half;
  const to = radius + half;
  if (shape === 'drop') return drop({ from, to, round: 0.62 * half }, angle);
  if (shape === 'rhomb') return rhomb(from, to, 1.3 * half, angle);
  return circle(...polar(radius, angle), half);
}

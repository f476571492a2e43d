import { subtract, union } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { parts, type Region } from '../../geometry/region.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, floor, length, mm, num, seed, turn } from '../values.js';
import { UP } from './polar.js';
import { drawRim, rimParameters } from './rim.js';
import { type Spiral, spiralBand, spiralSpacing } from './spiral.js';
import { annulus, drawDisc, drawPiece, size, stageOf } from './stage.js';

export const spiralArms: Generator = {
  name: 'spiral-arms',
  title: 'Spiral arms',
  family: 'radial',
  summary: 'Spiral arms about the middle, of one width or tapering, or the solid blades between them.',
  parameters: [
    {
      kind: 'choice',
      name: 'style',
      meaning: 'What is let in.',
      say: '… let in',
      default: 'blades',
      options: [
        { value: 'blades', meaning: 'blades that fill the circle but for the walls between them' },
        { value: 'arms', meaning: 'arms with round ends' },
      ],
    },
    {
      kind: 'choice',
      name: 'spiral',
      meaning: 'The kind of spiral.',
      say: '… spirals',
      default: 'logarithmic',
      options: [
        { value: 'archimedean', meaning: 'the distance between turns stays the same' },
        { value: 'logarithmic', meaning: 'the angle to the circles stays the same' },
      ],
    },
    {
      kind: 'count',
      name: 'arms',
      meaning: 'Number of arms or blades.',
      say: '… all round',
      one: 'only …',
      default: 6,
      min: 1,
      max: 60,
    },
    {
      kind: 'angle',
      name: 'sweep',
      meaning: 'How far an arm goes round from its inner to its outer end, counter-clockwise.',
      say: 'each sweeping …',
      often: [-360, 360],
      default: 80,
      min: -3600,
      max: 3600,
    },
    length('strap', 'Width of arms at their outer ends.', 'arms … wide at their outer ends', 6, 0.2, 200),
    {
      kind: 'number',
      name: 'taper',
      meaning: 'Width of arms at their inner ends as a share of that at their outer ends.',
      say: 'their inner ends … of that',
      default: 0.75,
      min: 0.1,
      max: 2,
    },
    length(
      'corner',
      'Radius to which the corners of blades are rounded; 0 for sharp ones.',
      { say: 'blade corners of … radius', zero: 'no' },
      2.1,
      0,
      100,
    ),
    length(
      'eye',
      'Diameter of the opening that arms or blades leave in the middle.',
      '… left free in the middle',
      26,
      0,
      3000,
    ),
    length(
      'disc',
      'Diameter of the disc in the eye; 0 for none.',
      { say: '… disc in the eye', zero: 'no' },
      17,
      0,
    ),
    size,
    ...rimParameters(0),
    length(
      'gap',
      'Width of the walls between blades, to rings, and the least between arms.',
      'walls … wide',
      4.2,
      0.2,
    ),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    const eye = Math.max(stage.bore, num(values, 'eye') / 2);
    const disc = num(values, 'disc') / 2;
    if (disc > 0 && disc >= eye && stage.bore === 0)
      throw bad('disc', `${mm(2 * disc)} fills the eye; make it less than ${mm(2 * eye)}`);
    const outer = drawRim(values, stage.radius, eye, stage.pen);
    const draw = values.style === 'arms' ? arms : blades;
    draw(values, eye, outer).forEach((region, i) => {
      drawPiece(stage.pen, `${values.style === 'arms' ? 'arm' : 'blade'} ${i + 1}`, region);
    });
    if (disc > 0 && stage.bore === 0) drawDisc(stage.pen, 'disc', disc);
  },
};

function arms(values: Values, eye: number, outer: number): Region[] {
  const half1 = num(values, 'strap') / 2;
  const half0 = half1 * num(values, 'taper');
  const from = eye + half0;
  const to = outer - half1;
  if (to <= from)
    throw bad('strap', `${mm(2 * half1)} leaves no length of the arms; make it narrower, or the eye smaller`);
  const spiral = spiralOf(values, from, to);
  checkSpacing(values, spiral, 2 * half0);
  return around(values).map((angle) => spiralBand(spiral, angle, { half0, half1, round: true }));
}

function blades(values: Values, eye: number, outer: number): Region[] {
  const gap = num(values, 'gap');
  const n = num(values, 'arms');
  const spiral = spiralOf(values, Math.max(eye, SHORTEST), outer);
  checkSpacing(values, spiral, 0);
  const walls = around(values).map((angle) =>
    spiralBand(spiral, angle, { half0: gap / 2, half1: gap / 2, round: false }),
  );
  const cut = subtract(annulus(outer, eye), union(walls));
  const left = parts(cut).map((contours) => rounded({ contours }, num(values, 'corner')));
  if (left.length < n) throw bad('eye', `${mm(2 * eye)} lets blades run into each other; make it larger`);
  return left;
}

/** The blade with its corners rounded: all that a disc of that radius reaches within it. */
function rounded(blade: Region, radius: number): Region {
  const core = offset(blade, -radius);
  if (core.contours.length === 0)
    throw bad('corner', `${mm(radius)} is more than half the width of a blade; make it smaller, or 0`);
  return offset(core, radius);
}

/** The eye's radius is at least this for blades, mm: a spiral needs somewhere to begin. */
const SHORTEST = 1;

function spiralOf(values: Values, from: number, to: number): Spiral {
  return {
    kind: values.spiral === 'logarithmic' ? 'logarithmic' : 'archimedean',
    from,
    to,
    sweep: num(values, 'sweep'),
  };
}

/** Directions in which the arms begin. */
function around(values: Values): number[] {
  const n = num(values, 'arms');
  return Array.from({ length: n }, (_, i) => num(values, 'turn') + UP + (2 * Math.PI * i) / n);
}

/** Throws BadInput where neighbours come nearer at their inner ends than a gap, beside `width` of wood. */
function checkSpacing(values: Values, spiral: Spiral, width: number): void {
  const n = num(values, 'arms');
  const gap = num(values, 'gap');
  const spacing = spiralSpacing(spiral, n);
  if (spacing > width + gap) return;
  const most = floor((spacing * n) / (width + gap + 0.01));
  throw bad(
    'arms',
    most >= 1
      ? `${n} crowd the eye; use ${Math.floor(most)} at most, a larger eye or less sweep`
      : `even one lies too near its own next turn; use less sweep or a larger eye`,
  );
}

import { subtract } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { circle } from '../../geometry/region.js';
import type { Values } from '../../schema/parameter.js';
import { bad, mm, num } from '../values.js';
import { innerRadius, nestedDepth, nestedStars, type Star, sideDistance, starStraps } from './star.js';

/** The star polygon that `points` and `step` ask for; a step of 0 picks one. */
export function starOf(values: Values): Star {
  const n = num(values, 'points');
  const given = num(values, 'step');
  const most = Math.ceil(n / 2) - 1;
  if (given > most) throw bad('step', `${given} is too far for ${n} points; use ${most} at most`);
  // 180 (n - 2m) / n >= 45 degrees when m <= 3n / 8; five points make a star only at m = 2.
  return { n, m: given || Math.min(most, Math.max(n >= 5 ? 2 : 1, Math.floor((3 * n) / 8))) };
}

/** Draws the chords of the star as straps of width `strap`; `disc` must fit their opening. Gives its inradius, mm. */
export function drawStraps(values: Values, radius: number, pen: Pen): number {
  const star = starOf(values);
  const open = strapOpening(values, star, radius);
  pen.piece('star');
  drawRegion(pen, starStraps(star, radius, num(values, 'turn'), num(values, 'strap')));
  return open;
}

/** Inradius of the opening in the middle of the star's straps, mm. Throws BadInput when strap or disc fill it. */
export function strapOpening(values: Values, star: Star, radius: number): number {
  const strap = num(values, 'strap');
  const side = sideDistance(star, radius);
  if (strap >= side) throw bad('strap', `${mm(strap)} fills the star; make it less than ${mm(side)}`);
  const most = 2 * (side - strap);
  if (num(values, 'disc') >= most)
    throw bad('disc', `fills the middle of the star; make it less than ${mm(most)}`);
  return side - strap;
}

/** Draws a solid star with an eye of radius `eye`, within `bands` nested outlines. */
export function drawSolid(values: Values, radius: number, eye: number, pen: Pen): void {
  const star = starOf(values);
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const bands = num(values, 'bands');
  const side = sideDistance(star, radius);
  const depth = nestedDepth(bands, strap, gap);
  if (depth >= side)
    throw bad(
      'bands',
      `${bands} nested outlines fill the star; use ${Math.ceil(side / (strap + gap)) - 1} at most`,
    );
  const core = innerRadius(star, (radius * (side - depth)) / side);
  if (eye >= core) throw bad('eye', `${mm(2 * eye)} cuts the star apart; make it less than ${mm(2 * core)}`);
  const solid = nestedStars(star, radius, num(values, 'turn'), bands, strap, gap);
  pen.piece('star');
  drawRegion(pen, eye > 0 ? subtract(solid, { contours: [circle(0, 0, eye)] }) : solid);
}

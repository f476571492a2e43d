import { subtract } from '../../geometry/boolean.js';
import { drawContour, drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { circle, reversedContour } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { largestCircle } from '../middle.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { petal, widestPetal } from './petals.js';
import { innerRadius, nestedDepth, nestedStars, type Star, sideDistance, starStraps } from './star.js';

export const rosette: Generator = {
  name: 'rosette',
  title: 'Rosette',
  family: 'radial',
  summary: 'A star polygon or a ring of petals about a disc, within rings.',
  parameters: [
    {
      kind: 'choice',
      name: 'style',
      meaning: 'The figure within the rings.',
      default: 'petals',
      options: [
        { value: 'petals', meaning: 'petals of two arcs, all round' },
        { value: 'star', meaning: 'the outline of a star polygon, solid or nested' },
        { value: 'straps', meaning: 'the chords of a star polygon as straps' },
      ],
    },
    { kind: 'count', name: 'points', meaning: 'Number of points or petals.', default: 12, min: 3, max: 48 },
    {
      kind: 'count',
      name: 'step',
      meaning:
        'Points of a star are joined each to the one this many on; 0 for points of 45 degrees or a little more.',
      default: 0,
      min: 0,
      max: 23,
    },
    length('size', 'Diameter of the whole rosette; 0 for the largest that fits the outline.', 0, 0, 3000),
    {
      kind: 'count',
      name: 'rings',
      meaning: 'Number of rings round the figure.',
      default: 1,
      min: 0,
      max: 12,
    },
    length('ring', 'Width of a ring.', 4.2, 0.2),
    length('gap', 'Width of the walls between rings, figure, petals and disc.', 4.2, 0.2),
    length('eye', 'Diameter of the opening in the middle of the figure; 0 for none.', 20, 0),
    length('disc', 'Diameter of the disc in the eye; 0 for none.', 11, 0),
    length('petal', 'Width of a petal; 0 for the widest that keeps the gap.', 0, 0),
    length('pip', 'Diameter of the discs set between the tips; 0 for none.', 5.2, 0),
    {
      kind: 'count',
      name: 'bands',
      meaning: 'Outlines nested round a solid star.',
      default: 0,
      min: 0,
      max: 12,
    },
    length('strap', 'Width of straps and of nested outlines.', 4.2, 0.2),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const fit = largestCircle(outline.inner);
    if (!fit)
      throw bad('generator', 'a rosette needs wood in the middle of the outline; choose another shape');
    const size = num(values, 'size');
    if (size > 2 * fit.radius + 1e-9)
      throw bad(
        'size',
        `${mm(size)} is too large for the outline; use ${mm(Math.floor(200 * fit.radius) / 100)} at most`,
      );
    const outer = size === 0 ? fit.radius : size / 2;
    const at = moved(pen, fit.x, fit.y);
    drawFigure(values, drawRings(values, outer, at), at);
  },
};

/** Draws the rings from the outside in and gives the radius left for the figure. */
function drawRings(values: Values, outer: number, pen: Pen): number {
  const rings = num(values, 'rings');
  const ring = num(values, 'ring');
  const gap = num(values, 'gap');
  const eye = num(values, 'eye') / 2;
  const left = outer - rings * (ring + gap);
  if (left <= eye + gap) {
    const room = outer - eye - gap;
    throw bad(
      'rings',
      `${rings} rings leave no room for the figure round the eye; use ${Math.max(0, Math.ceil(room / (ring + gap)) - 1)} at most, or narrower ones`,
    );
  }
  for (let k = 0; k < rings; k++) {
    const r = outer - k * (ring + gap);
    pen.piece(`ring ${k + 1}`);
    drawContour(pen, circle(0, 0, r));
    drawContour(pen, reversedContour(circle(0, 0, r - ring)));
  }
  return left;
}

function drawFigure(values: Values, radius: number, pen: Pen): void {
  const n = num(values, 'points');
  const gap = num(values, 'gap');
  const eye = num(values, 'eye') / 2;
  const disc = num(values, 'disc') / 2;
  const angle = num(values, 'turn');
  if (disc > 0 && disc >= eye)
    throw bad('disc', `${mm(2 * disc)} fills the eye; make it less than ${mm(2 * eye)}`);
  if (values.style === 'petals') {
    const most = widestPetal(n, eye, radius, gap);
    const width = num(values, 'petal') || most;
    if (width < 0.2 || most < 0.2)
      throw bad('points', `${n} petals crowd the eye; use fewer points, a larger eye or a smaller gap`);
    if (width > radius - eye)
      throw bad('petal', `${mm(width)} is wider than the petal is long; use ${mm(radius - eye)} at most`);
    for (let i = 0; i < n; i++) {
      pen.piece(`petal ${i + 1}`);
      drawContour(pen, petal(eye, radius, width, angle + Math.PI / 2 + (2 * Math.PI * i) / n));
    }
  } else drawStar(values, radius, pen);
  if (disc > 0) {
    pen.piece('disc');
    drawContour(pen, circle(0, 0, disc));
  }
  const pip = num(values, 'pip') / 2;
  if (pip === 0) return;
  for (let i = 0; i < n; i++) {
    const a = angle + Math.PI / 2 + (Math.PI * (2 * i + 1)) / n;
    pen.piece(`pip ${i + 1}`);
    drawContour(pen, circle((radius - pip) * cos(a), (radius - pip) * sin(a), pip));
  }
}

function drawStar(values: Values, radius: number, pen: Pen): void {
  const star = starOf(values);
  const angle = num(values, 'turn');
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const bands = num(values, 'bands');
  const eye = num(values, 'eye') / 2;
  const side = sideDistance(star, radius);
  if (values.style === 'straps') {
    if (strap >= side) throw bad('strap', `${mm(strap)} fills the star; make it less than ${mm(side)}`);
    pen.piece('star');
    drawRegion(pen, starStraps(star, radius, angle, strap));
    return;
  }
  const depth = nestedDepth(bands, strap, gap);
  if (depth >= side)
    throw bad(
      'bands',
      `${bands} nested outlines fill the star; use ${Math.ceil(side / (strap + gap)) - 1} at most`,
    );
  const core = innerRadius(star, (radius * (side - depth)) / side);
  if (eye >= core) throw bad('eye', `${mm(2 * eye)} cuts the star apart; make it less than ${mm(2 * core)}`);
  const solid = nestedStars(star, radius, angle, bands, strap, gap);
  pen.piece('star');
  drawRegion(pen, eye > 0 ? subtract(solid, { contours: [circle(0, 0, eye)] }) : solid);
}

function starOf(values: Values): Star {
  const n = num(values, 'points');
  const given = num(values, 'step');
  const most = Math.ceil(n / 2) - 1;
  if (given > most) throw bad('step', `${given} is too far for ${n} points; use ${most} at most`);
  // 180 (n - 2m) / n >= 45 degrees when m <= 3n / 8; five points make a star only at m = 2.
  return { n, m: given || Math.min(most, Math.max(n >= 5 ? 2 : 1, Math.floor((3 * n) / 8))) };
}

/** A pen that draws moved by (dx, dy). */
function moved(pen: Pen, dx: number, dy: number): Pen {
  return {
    piece: (name) => pen.piece(name),
    move: (x, y) => pen.move(x + dx, y + dy),
    line: (x, y) => pen.line(x + dx, y + dy),
    arc: (x, y, bulge) => pen.arc(x + dx, y + dy, bulge),
    quadratic: (cx, cy, x, y) => pen.quadratic(cx + dx, cy + dy, x + dx, y + dy),
    cubic: (ax, ay, bx, by, x, y) => pen.cubic(ax + dx, ay + dy, bx + dx, by + dy, x + dx, y + dy),
    close: () => pen.close(),
  };
}

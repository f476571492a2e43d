import { subtract } from '../../geometry/boolean.js';
import { drawContour, drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { type Contour, circle, reversedContour } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import type { BadInput } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { largestCircle } from '../middle.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { drop, petal, widestDrop, widestPetal } from './petals.js';
import { innerRadius, nestedDepth, nestedStars, type Star, sideDistance, starStraps } from './star.js';

export const rosette: Generator = {
  name: 'rosette',
  title: 'Rosette',
  family: 'radial',
  summary: 'Drops or petals round a disc, or a star polygon, within rings.',
  parameters: [
    {
      kind: 'choice',
      name: 'style',
      meaning: 'The figure within the rings.',
      default: 'drops',
      options: [
        { value: 'drops', meaning: 'drops with a point inwards and a round end' },
        { value: 'petals', meaning: 'petals of two arcs' },
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
    length('eye', 'Diameter of the opening in the middle of the figure; 0 for none.', 17, 0, 3000),
    length('disc', 'Diameter of the disc in the eye; 0 for none.', 15, 0),
    length('petal', 'Width of a petal or drop; 0 for the widest that keeps the gap.', 0, 0),
    length('pip', 'Diameter of the discs set between the outer ends; 0 for none.', 0, 0),
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
    const size = num(values, 'size');
    if (size > 2 * fit.radius + 1e-9)
      throw bad('size', `${mm(size)} is too large for the outline; use ${mm(floor(2 * fit.radius))} at most`);
    const at = moved(pen, fit.x, fit.y);
    const outer = drawRings(values, size === 0 ? fit.radius : size / 2, fit.bore, at);
    drawFigure(values, { inner: Math.max(fit.bore, num(values, 'eye') / 2), outer, open: fit.bore > 0 }, at);
  },
};

/** Between which radii the figure lies, mm, and whether its middle is an opening in the wood. */
interface Room {
  readonly inner: number;
  readonly outer: number;
  readonly open: boolean;
}

/** Draws the rings from the outside in and gives the radius left for the figure. */
function drawRings(values: Values, outer: number, bore: number, pen: Pen): number {
  const rings = num(values, 'rings');
  const ring = num(values, 'ring');
  const gap = num(values, 'gap');
  const left = outer - rings * (ring + gap);
  const inner = Math.max(bore, num(values, 'eye') / 2) + gap;
  if (outer <= inner) {
    const most = 2 * (outer - gap);
    throw bad(
      'eye',
      `${mm(num(values, 'eye'))} leaves no room for the figure; make it less than ${mm(most)}`,
    );
  }
  if (left <= inner) {
    const most = Math.ceil((outer - inner) / (ring + gap)) - 1;
    throw bad(
      'rings',
      `${rings} leave no room for the figure round the eye; use ${most} at most, or narrower ones`,
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

function drawFigure(values: Values, room: Room, pen: Pen): void {
  const style = String(values.style);
  const n = num(values, 'points');
  const first = num(values, 'turn') + Math.PI / 2;
  if (style === 'drops' || style === 'petals') {
    const shape = style === 'drops' ? dropOf(values, room) : petalOf(values, room);
    for (let i = 0; i < n; i++) {
      pen.piece(`${style.slice(0, -1)} ${i + 1}`);
      drawContour(pen, shape(first + (2 * Math.PI * i) / n));
    }
  } else drawStar(values, room, pen);
  const disc = num(values, 'disc') / 2;
  if (disc > 0 && !room.open) {
    if (style !== 'straps' && disc >= room.inner)
      throw bad('disc', `${mm(2 * disc)} fills the eye; make it less than ${mm(2 * room.inner)}`);
    pen.piece('disc');
    drawContour(pen, circle(0, 0, disc));
  }
  const pip = num(values, 'pip') / 2;
  if (pip === 0) return;
  for (let i = 0; i < n; i++) {
    const a = first + (Math.PI * (2 * i + 1)) / n;
    pen.piece(`pip ${i + 1}`);
    drawContour(pen, circle((room.outer - pip) * cos(a), (room.outer - pip) * sin(a), pip));
  }
}

function dropOf(values: Values, { inner, outer }: Room): (angle: number) => Contour {
  const widest = widestDrop(num(values, 'points'), inner, outer, num(values, 'gap'));
  if (widest.round < LEAST) throw crowded(values);
  const width = num(values, 'petal');
  const most = 2 * widest.round;
  if (width > most)
    throw bad('petal', `${mm(width)} leaves no gap between drops; use ${mm(floor(most))} at most`);
  const shape = { ...widest, round: width > 0 ? width / 2 : widest.round };
  return (angle) => drop(shape, angle);
}

function petalOf(values: Values, { inner, outer }: Room): (angle: number) => Contour {
  const widest = widestPetal(num(values, 'points'), inner, outer, num(values, 'gap'));
  if (widest < LEAST) throw crowded(values);
  const width = num(values, 'petal');
  if (width > widest)
    throw bad('petal', `${mm(width)} leaves no gap between petals; use ${mm(floor(widest))} at most`);
  return (angle) => petal(inner, outer, width || widest, angle);
}

/** Narrower petals than this are no petals, mm. */
const LEAST = 0.2;

function crowded(values: Values): BadInput {
  return bad(
    'points',
    `${num(values, 'points')} ${values.style} crowd the eye; use fewer points, a larger eye or a smaller gap`,
  );
}

/** Rounded down to a hundredth, so that a printed limit works. */
function floor(value: number): number {
  return Math.floor(value * 100) / 100;
}

function drawStar(values: Values, { inner: eye, outer: radius, open }: Room, pen: Pen): void {
  if (open) throw bad('style', 'a star needs wood in the middle of the outline; use drops or petals');
  const star = starOf(values);
  const angle = num(values, 'turn');
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const bands = num(values, 'bands');
  const side = sideDistance(star, radius);
  if (values.style === 'straps') {
    if (strap >= side) throw bad('strap', `${mm(strap)} fills the star; make it less than ${mm(side)}`);
    const most = 2 * (side - strap);
    if (num(values, 'disc') >= most)
      throw bad('disc', `fills the middle of the star; make it less than ${mm(most)}`);
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

import type { Vector } from '../../geometry/bezier.js';
import { type Box, bounds, circle, polygon, type Region, reversedContour } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, drawFilled, fieldOf, fillParameter } from '../field.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { type LatticeKind, reduced, refuseFlood, type Steps, scaled, unitLattice } from './lattice.js';
import { laidFigures, type Setting } from './lay-figures.js';

/** Size of dots when none is given, mm; a ring's opening is as wide as suits a cutter of 1/8 in. */
const SIZE = 8;
const OPENING = 4.8;

export const dots: Generator = {
  name: 'dots',
  title: 'Dots',
  family: 'fields',
  summary: 'Discs, squares or rings on any lattice, all of a size or fading across the piece.',
  parameters: [
    {
      kind: 'choice',
      name: 'lattice',
      meaning: 'How the dots are set.',
      say: '… lattice',
      default: 'hexagonal',
      options: [
        { value: 'square', meaning: 'in rows and columns' },
        { value: 'hexagonal', meaning: 'each amid six others' },
        { value: 'quincunx', meaning: 'in rows that alternate, each amid four others' },
        { value: 'oblique', meaning: 'along two directions under any angle' },
      ],
    },
    {
      kind: 'choice',
      name: 'shape',
      meaning: 'Shape of the dots.',
      say: 'each a …',
      default: 'disc',
      options: [
        { value: 'disc', meaning: 'discs' },
        { value: 'square', meaning: 'squares' },
        { value: 'diamond', meaning: 'squares set on a corner' },
        { value: 'ring', meaning: 'rings' },
      ],
    },
    length(
      'size',
      'Size of the dots across; 0 for one that suits the shape.',
      { say: 'each of … size', often: [0, 30], zero: 'fitting' },
      0,
      0,
    ),
    length('gap', 'Least gap between neighbours.', 'at least … apart', 5, 0.2),
    length('ring', 'Width of the rings.', 'rings … wide', 4.2, 0.2),
    {
      kind: 'choice',
      name: 'fade',
      meaning: 'Along what the size changes.',
      say: 'fading …',
      default: 'even',
      options: [
        { value: 'even', meaning: 'nothing: all are of one size' },
        { value: 'across', meaning: 'from left to right' },
        { value: 'up', meaning: 'from bottom to top' },
        { value: 'out', meaning: 'from the middle outwards' },
      ],
    },
    length('to', 'Size that the dots fade to.', 'fading to …', 5.6, 0.2),
    {
      kind: 'angle',
      name: 'angle',
      meaning: 'Angle between the two directions of an oblique lattice.',
      say: 'oblique rows … apart',
      default: 70,
      min: 15,
      max: 165,
    },
    {
      kind: 'number',
      name: 'ratio',
      meaning: 'Second step of an oblique lattice as a share of the first.',
      say: 'their second step … of the first',
      default: 1,
      min: 0.25,
      max: 4,
    },
    { ...fillParameter, default: 'whole' },
    {
      kind: 'choice',
      name: 'centre',
      meaning: 'What lies on the middle of the outline.',
      say: 'the … on the middle',
      default: 'best',
      options: [
        { value: 'best', meaning: 'whatever lets in the most whole dots' },
        { value: 'figure', meaning: 'a dot' },
        { value: 'gap', meaning: 'the middle between four dots, or three' },
      ],
    },
    bandParameter,
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const field = fieldOf(outline, num(values, 'band'));
    const box = bounds(field.contours);
    const sizes = sizesOf(values, box);
    const unit = unitLattice(values.lattice as LatticeKind, num(values, 'angle'), num(values, 'ratio'));
    const pitch = pitchOf(unit, String(values.shape), sizes.largest, num(values, 'gap'));
    const steps = scaled(unit, pitch);
    refuseFlood(steps, box, 'size', sizes.largest);
    const setting: Setting = {
      steps,
      centre: values.centre as Setting['centre'],
      turn: num(values, 'turn'),
      reach: sizes.largest,
      name: 'dot',
    };
    const laid = laidFigures(setting, field, (x, y) => dot(values, sizes.at(x, y)));
    if (drawFilled(pen, laid, field, values.fill as 'clip' | 'whole') === 0)
      throw new Refusal(
        'nothing-fits',
        `pattern.size: no whole dot of ${mm(sizes.largest)} fits the outline; make it smaller`,
      );
  },
};

interface Sizes {
  readonly largest: number;
  at(x: number, y: number): number;
}

/** How large a dot is where; refuses rings that would close. */
function sizesOf(values: Values, box: Box): Sizes {
  const ring = 2 * num(values, 'ring');
  const rings = values.shape === 'ring';
  const first = num(values, 'size') || (rings ? ring + OPENING : SIZE);
  const last = values.fade === 'even' ? first : num(values, 'to');
  if (rings && first <= ring)
    throw bad('size', `${mm(first)} leaves no opening in a ring; make it more than ${mm(ring)}`);
  if (rings && last <= ring)
    throw bad('to', `${mm(last)} leaves no opening in a ring; make it more than ${mm(ring)}`);
  const x0 = (box.minX + box.maxX) / 2;
  const y0 = (box.minY + box.maxY) / 2;
  const wide = box.maxX - box.minX;
  const high = box.maxY - box.minY;
  const share = (x: number, y: number): number => {
    if (values.fade === 'across') return (x - box.minX) / wide;
    if (values.fade === 'up') return (y - box.minY) / high;
    // By the ellipse in the box, so that a long piece fades to both its ends.
    const u = (2 * (x - x0)) / wide;
    const v = (2 * (y - y0)) / high;
    return Math.sqrt(u * u + v * v);
  };
  return {
    largest: Math.max(first, last),
    at: (x, y) => first + (last - first) * Math.min(1, Math.max(0, share(x, y))),
  };
}

function dot(values: Values, size: number): Region {
  const r = size / 2;
  const disc = circle(0, 0, r);
  if (values.shape === 'disc') return { contours: [disc] };
  if (values.shape === 'ring')
    return { contours: [disc, reversedContour(circle(0, 0, r - num(values, 'ring')))] };
  const square: Vector[] = [[-r, -r], [r, -r], [r, r], [-r, r]]; // biome-ignore format: four corners
  const diamond: Vector[] = [[-r, 0], [0, -r], [r, 0], [0, r]]; // biome-ignore format: four corners
  return { contours: [polygon(values.shape === 'square' ? square : diamond)] };
}

/** Step of the lattice at which no two dots come nearer than the gap, mm: by bisection. */
function pitchOf(unit: Steps, shape: string, size: number, gap: number): number {
  const [a, b] = reduced(unit);
  const near: Vector[] = [];
  for (let i = -2; i <= 2; i++)
    for (let j = 0; j <= 2; j++)
      if (i !== 0 || j !== 0) near.push([i * a[0] + j * b[0], i * a[1] + j * b[1]]);
  const clear = (pitch: number): boolean =>
    near.every(([x, y]) => between(shape, x * pitch, y * pitch, size) >= gap);
  let lo = 0;
  let hi = 2 * (size + gap);
  while (hi - lo > 1e-9) {
    const mid = (lo + hi) / 2;
    if (clear(mid)) hi = mid;
    else lo = mid;
  }
  return hi;
}

/** Distance between two dots that lie (x, y) apart, mm; negative or 0 when they meet. */
function between(shape: string, x: number, y: number, size: number): number {
  if (shape === 'disc' || shape === 'ring') return Math.sqrt(x * x + y * y) - size;
  const k = Math.SQRT1_2;
  const [u, v, side] = shape === 'square' ? [x, y, size] : [(x + y) * k, (y - x) * k, size * k];
  const dx = Math.max(0, Math.abs(u) - side);
  const dy = Math.max(0, Math.abs(v) - side);
  return Math.sqrt(dx * dx + dy * dy);
}

import { bounds, type Region } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import { Refusal } from '../../schema/fault.js';
import type { Parameter, Values } from '../../schema/parameter.js';
import { drawFilled, type Motif } from '../field.js';
import type { Generator } from '../generator.js';
import { largestCircle } from '../middle.js';
import { bad, ceil, length, mm, num, seed, turn } from '../values.js';
import { LEAST } from './petal.js';
import { UP } from './polar.js';
import { rimOf, rimParameters } from './rim.js';
import { annulus, checkedRadius, size } from './stage.js';
import { type Ray, sunRay } from './sun-ray.js';

const parameters: readonly Parameter[] = [
  {
    kind: 'choice',
    name: 'part',
    meaning: 'How much of the sun is drawn, and where its middle lies.',
    say: 'the … sun',
    default: 'whole',
    options: [
      { value: 'whole', meaning: 'the whole sun about the middle of the outline' },
      { value: 'half', meaning: 'the upper half, its middle at the bottom edge' },
      { value: 'quarter', meaning: 'a quarter, its middle at the lower left corner' },
    ],
  },
  {
    kind: 'count',
    name: 'rays',
    meaning:
      'Number of rays all round; a half or quarter has its share of them, made odd so that its two sides are alike.',
    say: '… rays all round',
    default: 12,
    min: 2,
    max: 120,
  },
  {
    kind: 'choice',
    name: 'ray',
    meaning: 'How a ray runs outwards.',
    say: 'rays …',
    default: 'widening',
    options: [
      { value: 'widening', meaning: 'it widens, with walls of one width between rays' },
      { value: 'even', meaning: 'it stays as wide as at its inner end' },
      { value: 'tapering', meaning: 'it narrows to a round tip' },
    ],
  },
  {
    kind: 'number',
    name: 'tip',
    meaning: 'Width of the tip of a tapering ray as a share of its inner end.',
    say: 'tapering tips … of the width',
    default: 0.75,
    min: 0.1,
    max: 1,
  },
  {
    kind: 'number',
    name: 'short',
    meaning: 'Length of every second ray as a share of the others; 1 for rays all alike.',
    say: 'every second ray … as long',
    default: 0.7,
    min: 0.1,
    max: 1,
  },
  {
    kind: 'choice',
    name: 'wavy',
    meaning: 'Which rays are wavy.',
    say: '… of the rays wavy',
    default: 'none',
    options: [
      { value: 'none', meaning: 'none of them' },
      { value: 'second', meaning: 'every second one, which are the short ones' },
      { value: 'all', meaning: 'all of them' },
    ],
  },
  length('wave', 'How far wavy rays swing to either side.', 'swinging … to either side', 2, 0, 100),
  {
    kind: 'count',
    name: 'swings',
    meaning: 'Number of swings of a wavy ray.',
    say: '… swings to a wavy ray',
    one: '… swing to a wavy ray',
    default: 3,
    min: 1,
    max: 12,
  },
  {
    kind: 'choice',
    name: 'reach',
    meaning: 'Where the long rays end.',
    say: 'long rays ending on the …',
    default: 'circle',
    options: [
      { value: 'circle', meaning: 'on a circle about the middle' },
      { value: 'outline', meaning: "at the outline's margin; there are no rings then" },
    ],
  },
  size,
  ...rimParameters(0),
  length('gap', 'Width of the walls between rays, hub and rings.', 'walls … wide', 4.2, 0.2),
  length(
    'hub',
    'Diameter of the disc in the middle; 0 for none.',
    { say: '… hub in the middle', zero: 'no' },
    30,
    0,
  ),
  turn,
  seed,
];

export const sunburst: Generator = {
  name: 'sunburst',
  title: 'Sunburst',
  family: 'radial',
  summary: 'A sun of straight or wavy rays round a hub, long and short by turns; whole, half or a quarter.',
  parameters,
  draw(values, outline, pen) {
    const sun = sunOf(values, outline);
    const drawn = drawFilled(pen, motifs(values, sun), outline.inner, 'clip');
    if (drawn === 0)
      throw new Refusal('nothing-fits', 'pattern.part: nothing of the sun lies in the outline; use "whole"');
  },
};

interface Sun {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly bore: number;
  /** Where the long rays end: the radius, or beyond the outline. */
  readonly reach: number;
  /** Direction of the first ray, and from each to the next, radians. */
  readonly first: number;
  readonly step: number;
  readonly rays: number;
}

function sunOf(values: Values, outline: Outline): Sun {
  const box = bounds(outline.inner.contours);
  const wide = box.maxX - box.minX;
  const high = box.maxY - box.minY;
  const far = 2 * (wide + high);
  const all = num(values, 'rays');
  if (values.part === 'whole') {
    if (num(values, 'short') < 1 && all % 2 === 1)
      throw bad('rays', `${all} cannot be long and short by turns; use ${all + 1}, or set short to 1`);
    const { x, y, radius, bore } = largestCircle(outline.inner);
    return sized(values, { x, y, bore, first: UP, step: (2 * Math.PI) / all, rays: all }, radius, far);
  }
  const half = values.part === 'half';
  const rays = nearestOdd(all / (half ? 2 : 4));
  const step = (half ? Math.PI : Math.PI / 2) / rays;
  const x = half ? (box.minX + box.maxX) / 2 : box.minX;
  const at = { x, y: box.minY, bore: 0, first: step / 2, step, rays };
  return sized(values, at, Math.min(half ? wide / 2 : wide, high), far);
}

/** The nearest odd number, the smaller of two as near. */
function nearestOdd(n: number): number {
  return 2 * Math.ceil((n - 1) / 2 - 0.5) + 1;
}

function sized(values: Values, at: Omit<Sun, 'radius' | 'reach'>, most: number, far: number): Sun {
  const radius = checkedRadius(values, most);
  const first = at.first + num(values, 'turn');
  return { ...at, first, radius, reach: values.reach === 'outline' ? far : radius };
}

/** Hub, rays and rings, placed on the outline. */
function motifs(values: Values, sun: Sun): Motif[] {
  const gap = num(values, 'gap');
  const hub = num(values, 'hub') / 2;
  const circle = values.reach === 'circle';
  const from = innerEnd(values, sun);
  const rim = circle ? rimOf(values, sun.radius, from) : { rings: [], left: sun.radius };
  if (from + gap >= rim.left)
    throw bad('hub', `${mm(2 * hub)} leaves no room for rays; make it smaller, or the rays fewer`);
  const long = rayOf(values, sun, from, circle ? rim.left : sun.reach, values.wavy === 'all');
  const reach = from + (rim.left - from) * num(values, 'short');
  const short =
    num(values, 'short') < 1 || values.wavy === 'second'
      ? rayOf(values, sun, from, reach, values.wavy !== 'none')
      : long;
  const rays = Array.from({ length: sun.rays }, (_, i) => ({
    name: `ray ${i + 1}`,
    region: { contours: [sunRay(i % 2 === 0 ? long : short, sun.first + i * sun.step)] },
  }));
  const disc = hub > 0 && sun.bore === 0 ? [{ name: 'hub', region: annulus(hub, 0) }] : [];
  const rings = rim.rings.map((region, k) => ({ name: `ring ${k + 1}`, region }));
  return [...rings, ...rays, ...disc].map(({ name, region }) => ({ name, region: at(region, sun) }));
}

function at(region: Region, { x, y }: Sun): Region {
  return x === 0 && y === 0 ? region : placedRegion(region, x, y);
}

/** Half the width that a ray may have at its corners at a radius, so that walls of one gap lie between neighbours. */
function halfAt(radius: number, step: number, gap: number): number {
  // The corner lies on the circle, half a gap off the line midway between two rays.
  const sine = gap / 2 / radius;
  return radius * (sin(step / 2) * Math.sqrt(1 - sine * sine) - cos(step / 2) * sine);
}

/** The radius at which rays begin: a gap from the hub, and where they have some width. */
function innerEnd(values: Values, { bore, step }: Sun): number {
  const gap = num(values, 'gap');
  const hub = num(values, 'hub') / 2;
  if (hub > 0 || bore > 0) return Math.max(bore, hub + gap);
  // With no hub, as far in as a ray is as wide as a wall.
  return ((gap / 2) * (1 + cos(step / 2))) / sin(step / 2);
}

function rayOf(values: Values, sun: Sun, from: number, to: number, wavy: boolean): Ray {
  const gap = num(values, 'gap');
  const half0 = halfAt(from, sun.step, gap);
  if (2 * half0 < LEAST) {
    const beta = sun.step / 2;
    const needs = ((LEAST / 2 + (gap / 2) * cos(beta)) / (sin(beta) * cos(beta)) - gap) * 2;
    throw bad('rays', `${sun.rays} rays crowd the hub; use fewer, or a hub of ${mm(ceil(needs))} at least`);
  }
  const half1 =
    values.ray === 'tapering'
      ? num(values, 'tip') * half0
      : values.ray === 'even'
        ? half0
        : halfAt(to, sun.step, gap);
  return {
    from,
    to,
    half0,
    half1,
    wave: wavy ? num(values, 'wave') : 0,
    swings: num(values, 'swings'),
    round: values.ray !== 'widening',
  };
}

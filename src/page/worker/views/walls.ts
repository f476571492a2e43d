import { cos, sin } from '../../../geometry/trig.js';
import { fieldWalls, plugLimbs, type ThinWall } from '../../../inspect/sums/walls/walls.js';
import type { Job } from '../../../output/job.js';
import { DARK, PALE } from '../../../output/wood-looks.js';
import { lengthText, numberText, type Units } from '../../../schema/units.js';
import { lookOf } from '../figure.js';
import { pathOf } from '../path.js';
import type { Label, Shape, View } from '../protocol.js';
import { faceShape, viewOf } from './view.js';

/** So many of each are labelled with their thickness: more would hide the drawing. */
const LABELLED = 8;

/** Thin walls of field and thin limbs of plug, and how the grain of both runs. */
export function wallsView(job: Job, units: Units): View {
  const { recipe, outline, inlays } = job;
  const { box } = outline;
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const walls = inlays.flatMap(({ pair }) => fieldWalls(recipe, outline, pair));
  const limbs = inlays.flatMap(({ pair }) => plugLimbs(recipe, pair));
  const shapes: Shape[] = [
    faceShape(outline),
    ...inlays.map(({ pair }) => ({ d: pathOf(pair.pocket.contours), look: 'plain' })),
    ...bands(walls, 'wall'),
    ...bands(limbs, 'limb'),
    { d: arrow(recipe.woods.fieldGrain, size * 0.46, 0), look: 'grain-field' },
    { d: arrow(recipe.woods.plugGrain, size * 0.3, size * 0.02), look: 'grain-plug' },
  ];
  const field = lookOf(recipe.woods.field, PALE, recipe.woods.own);
  const plug = lookOf(inlays[0]!.wood, DARK, recipe.woods.own);
  return viewOf('walls', outline, {
    shapes,
    labels: [...labels(walls, size, units), ...labels(limbs, size, units)],
    key: [
      { look: 'wall', text: 'thin wall of field' },
      { look: 'limb', text: 'thin limb of plug' },
      { look: 'grain-field', text: `grain of ${field.name}` },
      { look: 'grain-plug', text: `grain of ${plug.name}` },
    ],
    says: [said(walls, 'wall of field', units), said(limbs, 'limb of plug', units)].join(' '),
  });
}

function bands(all: readonly ThinWall[], look: string): Shape[] {
  return all
    .filter((w) => w.bands.contours.length > 0)
    .map((w) => ({ d: pathOf(w.bands.contours), look: w.slender ? `${look} slender` : look }));
}

function labels(all: readonly ThinWall[], size: number, units: Units): Label[] {
  return all.slice(0, LABELLED).map(({ least: { at, width } }) => ({
    x: at[0],
    y: -at[1],
    text: numberText(units === 'in' ? width / 25.4 : width, units === 'in' ? 3 : 2),
    size: size * 0.022,
  }));
}

function said(all: readonly ThinWall[], what: string, units: Units): string {
  if (all.length === 0) return `No ${what} is thin for its height.`;
  const least = all.reduce((a, b) => (b.least.width < a.least.width ? b : a)).least;
  const slender = all.filter((w) => w.slender).length;
  return `The thinnest ${what} is ${lengthText(least.width, units)}, ${numberText(least.slenderness, 1)} times as high as thick${
    slender > 0 ? `; ${slender} ${slender === 1 ? 'is' : 'are'} too slender for how the grain runs there` : ''
  }.`;
}

/** A line with a head at both ends, through the middle or beside it; grain has no sense. */
function arrow(angle: number, half: number, aside: number): string {
  const [c, s] = [cos(angle), -sin(angle)];
  const to = (along: number, off: number): string =>
    `${numberText(c * along - s * (off + aside), 3)} ${numberText(s * along + c * (off + aside), 3)}`;
  const head = half * 0.06;
  const end = (k: 1 | -1): string =>
    `M${to(k * (half - head), head * 0.5)}L${to(k * half, 0)}L${to(k * (half - head), -head * 0.5)}`;
  return `M${to(-half, 0)}L${to(half, 0)}${end(1)}${end(-1)}`;
}

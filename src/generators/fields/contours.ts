import { resolve, union } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { offset } from '../../geometry/offset.js';
import type { Pen } from '../../geometry/pen.js';
import {
  bounds,
  type Contour,
  contourArea,
  parts,
  type Region,
  reversedContour,
} from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, fieldOf, fillParameter, frameParameter, placer } from '../field.js';
import type { Generator } from '../generator.js';
import { length, mm, num, seed, turn } from '../values.js';
import { type Edging, framed } from './framed.js';
import { levelContours, type Samples, sampled } from './level.js';
import { evenLevels } from './levels.js';
import { cone, plus, rolling, type Surface, slope } from './smooth.js';

export const contours: Generator = {
  name: 'contours',
  title: 'Contour lines',
  family: 'fields',
  summary: 'Lines of equal height: growth rings of a log, ripples in sand, or hills on a map.',
  parameters: [
    {
      kind: 'choice',
      name: 'ground',
      meaning: 'What the lines run over.',
      say: 'over …',
      default: 'rings',
      options: [
        { value: 'rings', meaning: 'the growth rings of a log, wandering' },
        { value: 'waves', meaning: 'ripples that run side by side, wandering' },
        { value: 'hills', meaning: 'hills and hollows' },
      ],
    },
    {
      kind: 'choice',
      name: 'plug',
      meaning: 'What is let in.',
      say: '… let in',
      default: 'lines',
      options: [
        { value: 'lines', meaning: 'straps of one width along the lines' },
        { value: 'steps', meaning: 'every other step between neighbouring lines' },
      ],
    },
    length('strap', 'Width of the straps; least width of the steps.', 'straps … wide', 4.4, 0.2),
    length(
      'gap',
      'Least gap between neighbouring straps or steps, where the ground is steepest.',
      'at least … apart',
      4.2,
      0.2,
    ),
    length('grain', 'Distance of one bend or hill from the next.', 'a bend or hill every …', 38, 5),
    {
      kind: 'number',
      name: 'wander',
      meaning: 'How far rings and waves wander; 0 for circles and straight lines.',
      say: 'wandering by …',
      zero: 'nothing',
      default: 0.5,
      min: 0,
      max: 1.5,
    },
    {
      kind: 'number',
      name: 'pith',
      meaning:
        'Where the rings start: 0 in the middle of the outline, -1 at its bottom, 1 at its top, or beyond.',
      say: 'rings starting … of the way up from the middle',
      often: [-2, 2],
      default: -0.35,
      min: -3,
      max: 3,
    },
    fillParameter,
    frameParameter,
    bandParameter,
    {
      ...turn,
      meaning: 'Direction in which waves run, counter-clockwise from the right.',
      say: 'waves running at …',
    },
    seed,
  ],
  draw(values, outline, pen) {
    const field = fieldOf(outline, num(values, 'band'));
    const lines = values.plug === 'lines';
    const strap = num(values, 'strap');
    const gap = num(values, 'gap');
    const surface = surfaceOf(values, field);
    // Far enough past the field that a strap along the edge of the samples never shows.
    const samples = sampledRound(surface, field, strap + gap, num(values, 'grain'));
    const pitch = lines ? strap + gap : Math.max(strap, gap);
    const levels = evenLevels(surface, samples, field, pitch);
    const narrow = lines ? (strap + gap) / 2 : pitch / 2;
    const wide = levels
      .flatMap((level) => levelContours(surface, samples, level))
      .filter((c) => isWide(c, 2 * narrow));
    checkNumber(wide, pitch);
    const loops = wide.filter(
      (c) => offset({ contours: [counterClockwise(c)] }, -narrow).contours.length > 0,
    );
    if (lines) drawLines(values, loops, field, pen);
    else drawSteps(values, loops, field, pen);
  },
};

function surfaceOf(values: Values, field: Region): Surface {
  const grain = num(values, 'grain');
  const rough = rolling(num(values, 'seed'), grain);
  if (values.ground === 'hills') return rough;
  const wander = num(values, 'wander') * grain;
  const angle = num(values, 'turn');
  if (values.ground === 'waves') return plus(slope(-sin(angle), cos(angle)), wander, rough);
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const y = (minY + maxY) / 2 + (num(values, 'pith') * (maxY - minY)) / 2;
  return plus(cone((minX + maxX) / 2, y, num(values, 'strap')), wander, rough);
}

/** More samples than these take too long to follow. */
const MOST_SAMPLES = 150_000;

function sampledRound(surface: Surface, field: Region, past: number, grain: number): Samples {
  const box = bounds(field.contours);
  const cell = grain / 16;
  const d = past + 3 * cell;
  const [wide, high] = [box.maxX - box.minX + 2 * d, box.maxY - box.minY + 2 * d];
  if ((wide * high) / (cell * cell) > MOST_SAMPLES)
    throw new Refusal(
      'too-large',
      `pattern.grain: ${mm(grain)} makes too many bends for the outline; use ${mm(Math.ceil(17 * Math.sqrt((wide * high) / MOST_SAMPLES)))} or more`,
    );
  return sampled(
    surface,
    { minX: box.minX - d, maxX: box.maxX + d, minY: box.minY - d, maxY: box.maxY + d },
    cell,
  );
}

/** Lines of more arcs than these together take too long to draw and to cut: some ten seconds. */
const MOST_ARCS = 36_000;

function checkNumber(loops: readonly Contour[], pitch: number): void {
  const arcs = loops.reduce((sum, c) => sum + c.length, 0);
  if (arcs <= MOST_ARCS) return;
  // As many arcs a line, and the fewer lines the further apart.
  const least = Math.ceil((pitch * arcs * 11) / MOST_ARCS) / 10;
  throw new Refusal(
    'too-large',
    `pattern.gap: lines ${mm(pitch)} apart are too many for the outline; use strap and gap of ${mm(least)} or more together`,
  );
}

/** Can a disc of this diameter lie within the loop's box? Smaller loops leave nothing, and may be too small to fit arcs to. */
function isWide(loop: Contour, diameter: number): boolean {
  const { minX, maxX, minY, maxY } = bounds([loop]);
  return maxX - minX > diameter && maxY - minY > diameter;
}

function drawLines(values: Values, loops: readonly Contour[], field: Region, pen: Pen): void {
  const straps = loops.map((c) => along(c, num(values, 'strap')));
  if (values.fill === 'whole') {
    const place = placer(field);
    drawParts(
      straps.filter((s) => place(s) === 'inside'),
      'line',
      values,
      pen,
    );
  } else drawParts([framed(union(straps), edging(values), field)], 'line', values, pen);
}

function drawSteps(values: Values, loops: readonly Contour[], field: Region, pen: Pen): void {
  const steps = resolve(loops, 'evenodd');
  if (values.fill === 'whole') {
    const place = placer(field);
    const each = parts(steps).map((contours) => ({ contours }));
    drawParts(
      each.filter((s) => place(s) === 'inside'),
      'step',
      values,
      pen,
    );
  } else drawParts([framed(steps, edging(values), field)], 'step', values, pen);
}

/** All places within half the width of a closed line. */
function along(line: Contour, width: number): Region {
  const within: Region = { contours: [counterClockwise(line)] };
  const holes = offset(within, -width / 2).contours.map(reversedContour);
  return { contours: [...offset(within, width / 2).contours, ...holes] };
}

function counterClockwise(line: Contour): Contour {
  return contourArea(line) > 0 ? line : reversedContour(line);
}

function edging(values: Values): Edging {
  return { strap: num(values, 'strap'), gap: num(values, 'gap'), frame: values.frame === true, round: true };
}

/** Every part of the regions as a piece. */
function drawParts(regions: readonly Region[], name: string, values: Values, pen: Pen): void {
  const all = regions.flatMap((r) => parts(r));
  if (all.length === 0)
    throw new Refusal(
      'nothing-fits',
      `pattern.gap: no ${name} with gaps of ${mm(num(values, 'gap'))} fits the outline; make strap and gap smaller, or the fill clip`,
    );
  all.forEach((contours, i) => {
    pen.piece(`${name} ${i + 1}`);
    drawRegion(pen, { contours });
  });
}

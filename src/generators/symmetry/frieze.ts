import { union } from '../../geometry/boolean.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { bounds, parts, type Region } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import type { Assets, Generator } from '../generator.js';
import { largestCircle } from '../middle.js';
import { bad, length, mm, num, seed } from '../values.js';
import { apart } from './clearance.js';
import { friezeGroups } from './friezes.js';
import { chosenMotif, drawingParameter, motifParameter } from './motifs.js';
import { placeParameter, shiftParameters } from './place.js';
import { round } from './round.js';
import { across, type Laid, type Rails } from './run.js';
import type { Frieze } from './strip.js';

export const frieze: Generator = {
  name: 'frieze',
  title: 'Frieze',
  family: 'symmetry',
  summary: 'A motif repeated along a band by any of the 7 frieze groups, straight or round a circle.',
  parameters: [
    {
      kind: 'choice',
      name: 'group',
      meaning: 'The symmetry group, by its short name in the International Tables.',
      say: 'group …',
      default: 'p2',
      options: friezeGroups.map(({ name, meaning }) => ({ value: name, meaning })),
    },
    motifParameter,
    drawingParameter,
    {
      kind: 'choice',
      name: 'run',
      meaning: 'Which way the frieze runs.',
      say: 'running …',
      default: 'auto',
      options: [
        { value: 'auto', meaning: 'round on circles and rings, across elsewhere' },
        { value: 'across', meaning: 'straight across the outline' },
        { value: 'round', meaning: 'round a circle, bent but for the motifs themselves' },
      ],
    },
    length(
      'height',
      'Height of the band that holds the motifs, without its rails; 0 for one that suits the outline.',
      { say: 'a band of … height', zero: 'fitting' },
      0,
      0,
    ),
    length(
      'level',
      'How far a straight frieze lies above the middle of the outline.',
      '… above the middle',
      0,
      -1000,
    ),
    length(
      'diameter',
      'Outer diameter of a round frieze with its rails; 0 for the largest that fits.',
      { say: 'a round frieze of … diameter', zero: 'the largest' },
      0,
      0,
      3000,
    ),
    length(
      'repeat',
      'Length after which the frieze repeats, adjusted so that whole repeats fill its run; 0 for one that suits.',
      { say: 'repeating after …', zero: 'a fitting length' },
      0,
      0,
    ),
    placeParameter,
    length(
      'size',
      'Longer side of the motif; 0 for the largest that keeps the gap.',
      { say: 'motif of … size', zero: 'the largest' },
      0,
      0,
    ),
    length('gap', 'Width of the walls between figures when the size is 0.', 'walls … wide', 4.4, 0),
    ...shiftParameters,
    length(
      'rail',
      'Width of the border lines along both sides; 0 for none.',
      { say: '… border lines', zero: 'no' },
      4.2,
      0,
    ),
    length(
      'wall',
      'Width of the walls between the band and its border lines.',
      'walls … wide beside border lines',
      4.4,
      0,
    ),
    seed,
  ],
  draw(values, outline, pen, assets) {
    const { motifs, rails } = laid(values, outline, assets);
    figures(motifs).forEach((region, i) => {
      pen.piece(`figure ${i + 1}`);
      drawRegion(pen, region);
    });
    rails.forEach((region, i) => {
      pen.piece(`rail ${i + 1}`);
      drawRegion(pen, region);
    });
  },
};

function laid(values: Values, outline: Outline, assets: Assets): Laid {
  const asked = { repeat: num(values, 'repeat'), size: num(values, 'size') };
  const rails = { width: num(values, 'rail'), gap: num(values, 'wall') };
  const isRound =
    values.run === 'auto' ? outline.shape === 'circle' || outline.shape === 'ring' : values.run === 'round';
  const { region: motif, seam } = chosenMotif(values, assets);
  const f: Frieze = {
    group: friezeGroups.find((g) => g.name === values.group)!,
    motif,
    seam,
    height: num(values, 'height') || suits(outline, isRound, rails, num(values, 'diameter') / 2),
    gap: num(values, 'gap'),
    place: String(values.place),
    shift: [num(values, 'x'), num(values, 'y')],
    lean: num(values, 'lean'),
  };
  if (!isRound) return across(f, asked, rails, num(values, 'level'), outline.inner);
  const at = largestCircle(outline.inner);
  const diameter = num(values, 'diameter');
  if (diameter > 2 * at.radius + 1e-9)
    throw bad(
      'diameter',
      `${mm(diameter)} is too large for the outline; use ${mm(Math.floor(200 * at.radius) / 100)} at most`,
    );
  return round(f, asked, rails, at, diameter / 2 || at.radius);
}

/** A height that is enough for handsome motifs on small work, mm. */
const ENOUGH = 22;

/** Height of the band where the user leaves it open, mm: a good share of what the outline holds, and no more than enough. */
function suits(outline: Outline, isRound: boolean, rails: Rails, asked: number): number {
  const beside = rails.width > 0 ? 2 * (rails.width + rails.gap) : 0;
  const { minY, maxY } = bounds(outline.inner.contours);
  const { radius, bore } = largestCircle(outline.inner);
  const outer = asked || radius;
  const room = isRound ? outer - bore - beside : maxY - minY - beside;
  const most = isRound && bore === 0 ? Math.min(room, SHARE * outer) : room;
  if (most < 1)
    throw bad('rail', 'the border lines leave no room for the band; make them narrower, or 0 for none');
  return Math.min(ENOUGH, most);
}

/** Height of a round frieze over its radius: more would crowd the motifs at its inner side. */
const SHARE = 0.38;

/** Copies that touch become one figure. */
function figures(motifs: readonly Region[]): Region[] {
  const touch = motifs.some((a, i) => motifs.some((b, j) => j > i && !apart(a, b, 0)));
  return touch ? parts(union(motifs)).map((contours) => ({ contours })) : [...motifs];
}

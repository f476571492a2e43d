import { drawRegion } from '../../geometry/draw-region.js';
import { offset } from '../../geometry/offset.js';
import type { Pen } from '../../geometry/pen.js';
import { bounds, flatten, type Region, reversedContour } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bad, mm, num } from '../values.js';
import { type Fitted, largestIn } from './fit.js';
import { superellipseContour } from './lame.js';
import { turned } from './lattice.js';

/** Figures are fitted at this size, mm, and scaled; how far their flattened curves may stray then, and in a first look. */
const DRAWN = 100;
const CHORD = 0.002;
const ROUGHLY = 0.2;

/** A superellipse and straps along its inside, each everywhere one gap within the last. */
export function drawNested(values: Values, field: Region, pen: Pen): void {
  const angle = num(values, 'turn');
  const shape = (wide: number, high: number): Region => ({
    contours: [superellipseContour(wide / 2, high / 2, num(values, 'exponent'))],
  });
  const fitOf = (wide: number, high: number, chord: number): Fitted =>
    largestIn(
      field,
      flatten(shape(wide, high).contours[0]!, chord).map((p) => turned(p, angle)),
    );
  const [wide, high] = proportionIn(values, field, (w, h) => fitOf(w, h, ROUGHLY));
  const at = fitOf(wide, high, CHORD);
  const scale = scaleOf(values, at, wide, high);
  const base = placedRegion(shape(scale * wide, scale * high), at.x, at.y, angle);
  const strap = num(values, 'strap');
  const pitch = strap + num(values, 'gap');
  const rings = num(values, 'rings') || ringsIn(base, strap, num(values, 'gap'));
  for (let k = 0; k < rings; k++) {
    const figure = offset(base, -k * pitch);
    if (figure.contours.length === 0)
      throw bad(
        'rings',
        `${rings} do not fit within each other; use ${k} at most, or narrower straps and gaps`,
      );
    pen.piece(`ring ${k + 1}`);
    const filled = values.plug === 'solid' && k === rings - 1;
    drawRegion(pen, filled ? figure : strapIn(figure, base, k * pitch + strap));
  }
}

/** As many straps as leave an opening a gap wide in the middle; one at least. */
function ringsIn(base: Region, strap: number, gap: number): number {
  let rings = 1;
  while (offset(base, -(rings * (strap + gap) + strap + gap / 2)).contours.length > 0) rings++;
  return rings;
}

/** Heights in shares of what the field's own proportion gives, tried for the one that covers most. */
const PROPORTIONS = [1, 0.7, 0.8, 0.9, 1.1, 1.25, 1.4, 1.6, 1.8];

/**
 * Width and height of the figure, the larger DRAWN: as given, in the field's proportion where one is not, and when
 * neither is, in the proportion that covers most.
 */
function proportionIn(
  values: Values,
  field: Region,
  fitOf: (w: number, h: number) => Fitted,
): [number, number] {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const own = (maxY - minY) / (maxX - minX);
  const sized = (proportion: number): [number, number] =>
    proportion > 1 ? [DRAWN / proportion, DRAWN] : [DRAWN, DRAWN * proportion];
  const width = num(values, 'width');
  const height = num(values, 'height');
  if (width > 0 && height > 0) return sized(height / width);
  if (width > 0 || height > 0) return sized(own);
  const covered = PROPORTIONS.map((p) => {
    const [w, h] = sized(own * p);
    const { scale } = fitOf(w, h);
    return scale * scale * w * h;
  });
  const most = Math.max(...covered);
  // The field's own comes first, and stays unless another is better by more than a trifle.
  return sized(own * PROPORTIONS[covered.findIndex((c) => c >= 0.99 * most)]!);
}

/** How many times its drawn size the figure gets: as given, else as large as fits. */
function scaleOf(values: Values, { scale }: Fitted, wide: number, high: number): number {
  if (scale === 0)
    throw new Refusal(
      'nothing-fits',
      'pattern.layout: the outline has no room for one figure in its middle; use layout "field"',
    );
  const name = num(values, 'width') > 0 ? 'width' : 'height';
  const given = num(values, name);
  const drawn = name === 'width' ? wide : high;
  // The curve itself may stray outside its chords.
  const most = scale * (1 - (2 * CHORD) / Math.min(wide, high));
  if (given === 0) return most;
  if (given > most * drawn + 0.01)
    throw bad(
      name,
      `${mm(given)} is too large for the outline; use ${mm(Math.floor(most * drawn * 100) / 100)} at most, the other in proportion`,
    );
  return given / drawn;
}

/** The figure less what lies `depth` mm inside `base`. */
export function strapIn(figure: Region, base: Region, depth: number): Region {
  return { contours: [...figure.contours, ...offset(base, -depth).contours.map(reversedContour)] };
}

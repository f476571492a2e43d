import {
  type Contour,
  circle,
  contourArea,
  distanceToBoundary,
  polygon,
  reversedContour,
} from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import { MM_PER, type Units } from './format.js';
import type { Job } from './job.js';
import { type Label, numbersOf } from './numbers.js';

/** Border round the outline's box that holds the reference square with room to spare, mm. */
export const MARKS_BORDER = 16;

/** Marks of one drawing, mm, y up, the sheet's middle at (0, 0). */
export interface Marks {
  /** The face's edge. */
  readonly outline: readonly Contour[];
  /** Lower left corner of the outline's box: a circle and two lines crossing in it. */
  readonly datum: {
    readonly circle: Contour;
    readonly lines: readonly (readonly [number, number, number, number])[];
  };
  /** A square of known size, to check that a drawing came in at true scale. */
  readonly square: Contour;
  /** Words in the square. Never mirrored. */
  readonly label: Label;
  /** Numbers in the parts; none where there are none. Never mirrored. */
  readonly numbers?: readonly Label[];
  /** Holes to be drilled a little way in, that tell the steps of a coupon apart; other drawings have none. */
  readonly dots?: readonly Contour[];
}

/** The marks of the pocket's drawing, or mirrored (x -> -x, words excepted) for a plug on a carrier. */
export function marksOf(job: Job, mirrored: boolean): Marks {
  const side = referenceSide(job.recipe.units);
  const { minX, minY, maxX } = job.outline.box;
  const { square, label } = squareAt(
    maxX - side,
    minY - (job.sheet.border + side) / 2,
    job.sheet,
    job.recipe.units,
  );
  const arm = datumArm(job);
  const m = mirrored ? -1 : 1;
  const turn = (c: Contour): Contour => (mirrored ? mirrorX({ contours: [c] }).contours[0]! : c);
  return {
    outline: job.outline.face.contours.map(turn),
    datum: {
      circle: turn(circle(minX, minY, arm / 2)),
      lines: [
        [m * (minX - arm), minY, m * (minX + arm), minY],
        [m * minX, minY - arm, m * minX, minY + arm],
      ],
    },
    square: outward(turn(square)),
    label: { ...label, x: m * label.x },
    numbers: numbersOf(job.islands, mirrored),
  };
}

/** The reference square with its lower left corner at (x, y) or just beside, and the words in it. */
export function squareAt(
  x: number,
  y: number,
  sheet: { readonly width: number; readonly height: number },
  units: Units,
): Pick<Marks, 'square' | 'label'> {
  const side = referenceSide(units);
  // The square stands on whole millimetres or sixteenths of an inch of the sheet, so that it can be measured exactly.
  const step = units === 'mm' ? 1 : 25.4 / 16;
  const snap = (v: number, half: number): number => Math.floor((v + half) / step + 1e-9) * step - half;
  const left = snap(x, sheet.width / 2);
  const low = snap(y, sheet.height / 2);
  const square = polygon([
    [left, low],
    [left + side, low],
    [left + side, low + side],
    [left, low + side],
  ]);
  const text = units === 'mm' ? '10 mm' : '1/2 in';
  return { square, label: { text, x: left + side / 2, y: low + side / 2, height: side / 6 } };
}

/** Side of the reference square, mm: 10 mm, or half an inch. */
export function referenceSide(units: 'mm' | 'in'): number {
  return units === 'mm' ? 10 : MM_PER.in / 2;
}

/** Length of the datum's arms, mm: 3, less where the pattern comes near, so that they never lie on it. */
function datumArm(job: Job): number {
  const { minX, minY } = job.outline.box;
  const further = job.inlays.slice(1).map((i) => i.safe);
  const near = [job.safe, ...further].map((s) => distanceToBoundary(s.region, minX, minY));
  const room = Math.min(...near) - job.recipe.fit.clearance;
  return Math.min(3, 0.6 * room);
}

function outward(c: Contour): Contour {
  return contourArea(c) < 0 ? reversedContour(c) : c;
}

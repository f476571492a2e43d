import {
  type Contour,
  circle,
  contourArea,
  distanceToBoundary,
  polygon,
  reversedContour,
} from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import { MM_PER } from './format.js';
import type { Job } from './job.js';

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
  /** Words in the square, centred on (x, y); the height is that of a capital letter. Never mirrored. */
  readonly label: { readonly text: string; readonly x: number; readonly y: number; readonly height: number };
}

/** The marks of the pocket's drawing, or mirrored (x -> -x, words excepted) for a plug on a carrier. */
export function marksOf(job: Job, mirrored: boolean): Marks {
  const side = referenceSide(job.recipe.units);
  const { minX, minY, maxX } = job.outline.box;
  // The square stands on whole millimetres or sixteenths of an inch of the sheet, so that it can be measured exactly.
  const step = job.recipe.units === 'mm' ? 1 : 25.4 / 16;
  const snap = (v: number, half: number): number => Math.floor((v + half) / step + 1e-9) * step - half;
  const left = snap(maxX - side, job.sheet.width / 2);
  const low = snap(minY - (job.sheet.border + side) / 2, job.sheet.height / 2);
  const square = polygon([
    [left, low],
    [left + side, low],
    [left + side, low + side],
    [left, low + side],
  ]);
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
    label: {
      text: job.recipe.units === 'mm' ? '10 mm' : '1/2 in',
      x: m * (left + side / 2),
      y: low + side / 2,
      height: side / 6,
    },
  };
}

/** Side of the reference square, mm: 10 mm, or half an inch. */
export function referenceSide(units: 'mm' | 'in'): number {
  return units === 'mm' ? 10 : MM_PER.in / 2;
}

/** Length of the datum's arms, mm: 3, less where the pattern comes near, so that they never lie on it. */
function datumArm(job: Job): number {
  const room =
    distanceToBoundary(job.safe.region, job.outline.box.minX, job.outline.box.minY) -
    job.recipe.fit.clearance;
  return Math.min(3, 0.6 * room);
}

function outward(c: Contour): Contour {
  return contourArea(c) < 0 ? reversedContour(c) : c;
}

import type { Edge } from '../../src/geometry/edge.js';
import type { Contour } from '../../src/geometry/region.js';
import { type Hard, R } from './hard-shapes.js';

/** Area and length of a boundary, mm2 and mm. */
export interface Measured {
  readonly area: number;
  readonly length: number;
}

/**
 * Outlines whose every corner takes an arc and nothing else happens: their answers have a closed form. A corner of angle a loses
 * r^2 (cot(a/2) - (pi - a)/2) of area (a concave one gains it) and r (2 cot(a/2) - (pi - a)) of length. Of a square:
 * s^2 - (4 - pi) r^2.
 */
const CORNERS_ONLY = [
  /^needle 8/,
  /^needle hole$/,
  /^comb, .* 2r (\+|- 1e-9)/,
  /^carpet 2/,
  /^plus 3/,
  /^dragon 9/,
  /^nested 100 deep(, gaps 2r)?$/,
  /^star /,
  /^huge/,
  /^collinear/,
  /repeated/,
];

/** The plain figure that is left of others, by name. */
const LEFT: [RegExp, (d: number) => Measured][] = [
  [/^(disc|ends|hole) of r - (1e-6|0.001|0.000001)$/, () => NOTHING],
  [/^disc of r/, (d) => disc(R + d)],
  [/^ends of r/, (d) => rounded(20, 2 * (R + d), Math.max(R, R + d))],
  [/^corners of r/, (d) => rounded(20, 12, Math.max(R, R + d))],
  [/^(needle (0.001|1)|sliver|plus 4|spiral, band|tiny star)/, () => NOTHING],
  [/^(slit .* wide inside|tiny hole)$/, () => rounded(30, 30, R)],
  [/^(spike|tiny beside|repeated)/, () => rounded(20, 20, R)],
  [/^the same square twice/, () => rounded(10, 10, R)],
  [/^a square in the corner/, () => rounded(20, 20, R)],
  [/^bars 2r (\+|- 1e-9|- 0.000001)/, () => times(2, rounded(10, 20, R))],
  // Parted on the middle line by a disc of r and a spare 0.003 mm: what each side gives up.
  [/^bars 2r - 0.001/, (d) => times(2, rounded(10 - (GIVEN - R - d / 2), 20, R))],
  [/^tiles .*(edges|1e-9|apart)$/, tiles],
  [
    /^a disc that fills/,
    () =>
      sum(disc(20), sum(disc(10 - GIVEN), { area: -disc(10 + GIVEN).area, length: disc(10 + GIVEN).length })),
  ],
  // Two bars of 40 by 6: twelve corners, four of them concave.
  [/^bars that cross$/, () => ({ area: 2 * 240 - 36 - 4 * AREA, length: 160 - 12 * LENGTH })],
];

/** What a side gives up to a gap that was nothing, mm. */
const GIVEN = R + 0.003;
const NOTHING: Measured = { area: 0, length: 0 };
const AREA = R * R * (1 - Math.PI / 4);
const LENGTH = R * (2 - Math.PI / 2);

function disc(r: number): Measured {
  return { area: Math.PI * r * r, length: 2 * Math.PI * r };
}

function rounded(width: number, height: number, r: number): Measured {
  return {
    area: width * height - (4 - Math.PI) * r * r,
    length: 2 * (width + height) - (8 - 2 * Math.PI) * r,
  };
}

/** Nine tiles of 10 mm with nothing between: all that is left is 30 mm less two gaps each way. */
function tiles(): Measured {
  const widths = [10 - GIVEN, 10 - 2 * GIVEN, 10 - GIVEN];
  return widths.flatMap((w) => widths.map((h) => rounded(w, h, R))).reduce(sum);
}

function times(k: number, m: Measured): Measured {
  return { area: k * m.area, length: k * m.length };
}

/** What the pass leaves of an outline by a closed form, or null where none is known. */
export function closedForm(hard: Hard): Measured | null {
  const hair = / ([+-]) (\d\S*)/.exec(hard.name);
  const d = hair ? Number(hair[1] + hair[2]!) : 0;
  if (hard.name.startsWith('hole of r'))
    return d < -1e-9
      ? rounded(30, 30, R)
      : sum(rounded(30, 30, R), { area: -disc(R + d).area, length: disc(R + d).length });
  const left = LEFT.find(([name]) => name.test(hard.name));
  if (left) return left[1](d);
  if (!CORNERS_ONLY.some((name) => name.test(hard.name))) return null;
  return hard.pieces
    .flatMap((p) => p.region.contours)
    .map(cornersRounded)
    .reduce(sum);
}

function sum(a: Measured, b: Measured): Measured {
  return { area: a.area + b.area, length: a.length + b.length };
}

/** A polygon with an arc in every corner; counter-clockwise, or clockwise and then a hole. */
function cornersRounded(contour: Contour): Measured {
  const sides = contour.filter((e) => sideLength(e) > 1e-7);
  const { x0, y0 } = sides[0]!;
  let area = 0;
  let length = 0;
  sides.forEach((e, i) => {
    const f = sides[(i + 1) % sides.length]!;
    // From a corner of its own: far from the origin the products would lose all digits.
    area += ((e.x0 - x0) * (e.y1 - y0) - (e.x1 - x0) * (e.y0 - y0)) / 2;
    length += sideLength(e);
    const turn = Math.atan2(
      (e.x1 - e.x0) * (f.y1 - f.y0) - (e.y1 - e.y0) * (f.x1 - f.x0),
      (e.x1 - e.x0) * (f.x1 - f.x0) + (e.y1 - e.y0) * (f.y1 - f.y0),
    );
    area -= Math.sign(turn) * R * R * (Math.tan(Math.abs(turn) / 2) - Math.abs(turn) / 2);
    length -= R * (2 * Math.tan(Math.abs(turn) / 2) - Math.abs(turn));
  });
  return { area, length };
}

function sideLength(e: Edge): number {
  return Math.hypot(e.x1 - e.x0, e.y1 - e.y0);
}

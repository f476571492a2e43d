import type { Pair } from '../../src/fit/pair.js';
import { bulgedContour, type Contour } from '../../src/geometry/region.js';

/** A square about (0, 0) with rounded corners, counter-clockwise, mm. */
export function roundedSquare(side: number, r: number): Contour {
  const bulge = Math.SQRT2 - 1;
  const [far, near] = [side / 2, side / 2 - r];
  return bulgedContour([
    { x: -near, y: -far, bulge: 0 },
    { x: near, y: -far, bulge },
    { x: far, y: -near, bulge: 0 },
    { x: far, y: near, bulge },
    { x: near, y: far, bulge: 0 },
    { x: -near, y: far, bulge },
    { x: -far, y: near, bulge: 0 },
    { x: -far, y: -near, bulge },
  ]);
}

/** Pocket and plug alike. */
export function squarePair(side: number, r: number): Pair {
  const region = { contours: [roundedSquare(side, r)] };
  return { pocket: region, plug: { contours: [roundedSquare(side, r)] }, mirrored: false };
}

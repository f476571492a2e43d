import { drawContour, drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { circle, type Region, reversedContour } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import type { Outline } from '../../outline/outline.js';
import type { LengthParameter, Values } from '../../schema/parameter.js';
import { largestCircle } from '../middle.js';
import { bad, floor, length, mm, num } from '../values.js';

/** Where a radial figure stands, mm: about the origin of `pen`, which is the middle of the outline's largest circle. */
export interface Stage {
  readonly radius: number;
  /** Radius of what must stay free in the middle: the opening of a ring; else 0. */
  readonly bore: number;
  readonly pen: Pen;
}

export const size: LengthParameter = length(
  'size',
  'Diameter of the whole figure; 0 for the largest that fits the outline.',
  { say: 'diameter …', zero: 'as large as fits' },
  0,
  0,
  3000,
);

/** The stage for a figure of the asked `size`. Throws BadInput for one that does not fit. */
export function stageOf(values: Values, outline: Outline, pen: Pen): Stage {
  const fit = largestCircle(outline.inner);
  const radius = checkedRadius(values, fit.radius);
  if (radius <= fit.bore)
    throw bad(
      'size',
      `${mm(2 * radius)} is no larger than the opening in the outline; use more than ${mm(2 * fit.bore)}`,
    );
  return { radius, bore: fit.bore, pen: moved(pen, fit.x, fit.y) };
}

/** Half the asked size, or the most that fits. */
export function checkedRadius(values: Values, most: number): number {
  const asked = num(values, 'size');
  if (asked > 2 * most + 1e-9)
    throw bad('size', `${mm(asked)} is too large for the outline; use ${mm(floor(2 * most))} at most`);
  return asked === 0 ? most : asked / 2;
}

/** A pen that draws moved by (dx, dy). */
function moved(pen: Pen, dx: number, dy: number): Pen {
  return {
    piece: (name) => pen.piece(name),
    move: (x, y) => pen.move(x + dx, y + dy),
    line: (x, y) => pen.line(x + dx, y + dy),
    arc: (x, y, bulge) => pen.arc(x + dx, y + dy, bulge),
    quadratic: (cx, cy, x, y) => pen.quadratic(cx + dx, cy + dy, x + dx, y + dy),
    region: (region) => pen.region(placedRegion(region, dx, dy)),
    cubic: (ax, ay, bx, by, x, y) => pen.cubic(ax + dx, ay + dy, bx + dx, by + dy, x + dx, y + dy),
    close: () => pen.close(),
    remark: (r) => pen.remark(r.at ? { ...r, at: [r.at[0] + dx, r.at[1] + dy] } : r),
  };
}

/** The disc of radius `outer` about the origin, less that of radius `inner`; the whole disc when that is 0 or less. */
export function annulus(outer: number, inner: number): Region {
  const rim = circle(0, 0, outer);
  return { contours: inner > 0 ? [rim, reversedContour(circle(0, 0, inner))] : [rim] };
}

export function drawPiece(pen: Pen, name: string, region: Region): void {
  pen.piece(name);
  drawRegion(pen, region);
}

export function drawDisc(pen: Pen, name: string, radius: number): void {
  pen.piece(name);
  drawContour(pen, circle(0, 0, radius));
}

import { bulge } from './edge.js';
import type { Pen } from './pen.js';
import type { Contour, Region } from './region.js';

/** Draws one contour to a pen, as it is. */
export function drawContour(pen: Pen, contour: Contour): void {
  const first = contour[0];
  if (!first) return;
  pen.move(first.x0, first.y0);
  for (const e of contour) {
    if (e.r === 0) pen.line(e.x1, e.y1);
    else pen.arc(e.x1, e.y1, bulge(e));
  }
  pen.close();
}

/** Draws a sound region to a pen. */
export function drawRegion(pen: Pen, region: Region): void {
  pen.region(region);
}

import type { Point } from './camera.js';

/** A dimension's line on the screen: path data of line and arrow heads, and where its words stand. */
export interface Dimension {
  readonly line: string;
  readonly heads: string;
  readonly words: Point;
}

/** Length and half width of an arrow's head, pixels. */
const HEAD = 9;
const HALF = 3;
/** Shorter than this the arrows stand outside and point inwards. */
const SHORT = 3 * HEAD;
/** How far a tail runs on outside. */
const TAIL = 20;
/** From the line to the middle of its words. */
const OFF = 16;

/** The dimension from one screen point to another; words stand beside its middle, above rather than below. */
export function dimension([x0, y0]: Point, [x1, y1]: Point): Dimension {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const length = Math.sqrt(dx * dx + dy * dy);
  const [ux, uy] = length > 1e-9 ? [dx / length, dy / length] : [1, 0];
  const inside = length >= SHORT;
  const out = inside ? 0 : TAIL;
  const line = `M${x0 - out * ux} ${y0 - out * uy}L${x1 + out * ux} ${y1 + out * uy}`;
  const way = inside ? 1 : -1;
  const heads = head(x0, y0, way * ux, way * uy) + head(x1, y1, -way * ux, -way * uy);
  const up = ux >= 0 ? 1 : -1;
  return { line, heads, words: [(x0 + x1) / 2 + up * OFF * uy, (y0 + y1) / 2 - up * OFF * ux] };
}

/** An arrow's head whose point lies at x, y and whose shaft leaves along u. */
function head(x: number, y: number, ux: number, uy: number): string {
  const [bx, by] = [x + HEAD * ux, y + HEAD * uy];
  return `M${x} ${y}L${bx - HALF * uy} ${by + HALF * ux}L${bx + HALF * uy} ${by - HALF * ux}Z`;
}

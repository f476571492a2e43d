import { arc, type Edge } from '../../geometry/edge.js';
import { type Region, reversedContour } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';

/**
 * A rigid motion of the plane: (x, y) -> (xx x + xy y + dx, yx x + yy y + dy). Its matrix is a rotation
 * (determinant 1) or a reflection (-1); dx and dy in mm.
 */
export interface Isometry {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
  readonly dx: number;
  readonly dy: number;
}

export type Point = readonly [number, number];

/** Turned counter-clockwise about (0, 0), radians, then moved. */
export function turned(angle: number, dx = 0, dy = 0): Isometry {
  const c = cos(angle);
  const s = sin(angle);
  return { xx: c, xy: -s, yx: s, yy: c, dx, dy };
}

export function isReflection(m: Isometry): boolean {
  return m.xx * m.yy - m.xy * m.yx < 0;
}

export function image(m: Isometry, [x, y]: Point): Point {
  return [m.xx * x + m.xy * y + m.dx, m.yx * x + m.yy * y + m.dy];
}

/** First `b`, then `a`. */
export function after(a: Isometry, b: Isometry): Isometry {
  const [dx, dy] = image(a, [b.dx, b.dy]);
  return {
    xx: a.xx * b.xx + a.xy * b.yx,
    xy: a.xx * b.xy + a.xy * b.yy,
    yx: a.yx * b.xx + a.yy * b.yx,
    yy: a.yx * b.xy + a.yy * b.yy,
    dx,
    dy,
  };
}

/** The image of a region; contours of a reflected one are reversed so that inside stays on the left. */
export function imageOf(m: Isometry, region: Region): Region {
  const flips = isReflection(m);
  const edge = (e: Edge): Edge => {
    const [x0, y0] = image(m, [e.x0, e.y0]);
    const [x1, y1] = image(m, [e.x1, e.y1]);
    const [cx, cy] = e.r === 0 ? [0, 0] : image(m, [e.cx, e.cy]);
    return arc(x0, y0, x1, y1, cx, cy, flips ? -e.r : e.r);
  };
  return {
    contours: region.contours.map((c) => {
      const moved = c.map(edge);
      return flips ? reversedContour(moved) : moved;
    }),
  };
}

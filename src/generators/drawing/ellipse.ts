import type { Vector } from '../../geometry/bezier.js';
import { atan2, cos, radians, sin } from '../../geometry/trig.js';
import type { EllipseArc } from './outline-path.js';

/**
 * The arc that a path's A command draws, from its ends to its centre: SVG 2, "Elliptical arc implementation notes"
 * (appendix B.2.4 and B.2.5 there; F.6 in SVG 1.1). Null when the arc is a straight line (a radius is 0).
 * @param turn of the ellipse's first axis, degrees
 */
export function arcBetween(
  start: Vector,
  end: Vector,
  radiusX: number,
  radiusY: number,
  turn: number,
  large: boolean,
  positive: boolean,
): EllipseArc | null {
  let rx = Math.abs(radiusX);
  let ry = Math.abs(radiusY);
  if (rx === 0 || ry === 0) return null;
  const angle = radians(turn % 360);
  const c = cos(angle);
  const s = sin(angle);
  // Half the way from end to start, in the ellipse's own directions.
  const hx = (start[0] - end[0]) / 2;
  const hy = (start[1] - end[1]) / 2;
  const x = c * hx + s * hy;
  const y = c * hy - s * hx;
  // Radii too short to reach are made just long enough.
  const short = (x / rx) * (x / rx) + (y / ry) * (y / ry);
  if (short > 1) {
    rx *= Math.sqrt(short);
    ry *= Math.sqrt(short);
  }
  const away = short >= 1 ? 0 : Math.sqrt((1 - short) / short) * (large === positive ? -1 : 1);
  const cx = (away * rx * y) / ry;
  const cy = (-away * ry * x) / rx;
  const from = atan2((y - cy) / ry, (x - cx) / rx);
  const to = atan2((-y - cy) / ry, (-x - cx) / rx);
  let by = to - from;
  if (positive && by <= 0) by += 2 * Math.PI;
  if (!positive && by >= 0) by -= 2 * Math.PI;
  return {
    centre: [c * cx - s * cy + (start[0] + end[0]) / 2, s * cx + c * cy + (start[1] + end[1]) / 2],
    u: [rx * c, rx * s],
    v: [-ry * s, ry * c],
    from,
    by,
  };
}

/** The point of an arc at parameter t. */
export function arcPoint({ centre, u, v }: EllipseArc, t: number): Vector {
  const c = cos(t);
  const s = sin(t);
  return [centre[0] + u[0] * c + v[0] * s, centre[1] + u[1] * c + v[1] * s];
}

/** Its derivative by t. */
export function arcTangent({ u, v }: EllipseArc, t: number): Vector {
  const c = cos(t);
  const s = sin(t);
  return [v[0] * c - u[0] * s, v[1] * c - u[1] * s];
}

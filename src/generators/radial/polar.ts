import { cos, sin } from '../../geometry/trig.js';

/** The direction of up, where a figure's first point looks, radians. */
export const UP = Math.PI / 2;

export function polar(radius: number, angle: number): [number, number] {
  return [radius * cos(angle), radius * sin(angle)];
}

/** The point (x, y) of a frame whose x axis looks in direction `angle`. */
export function turned([x, y]: readonly [number, number], angle: number): [number, number] {
  const c = cos(angle);
  const s = sin(angle);
  return [x * c - y * s, x * s + y * c];
}

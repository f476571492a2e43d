import { fromFace } from '../bowl/face.js';
import { toSpace } from '../bowl/stave.js';
import type { Vessel } from '../bowl/vessel.js';

/** A matrix of 4 by 4, column by column. */
export type Matrix = [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];

/**
 * From the drawn face of the first stave to the vessel: u, v and the height above the face to x, y, z. The first stave
 * stands in front, towards -y; x is to the right as one looks at it from there.
 */
export function frameOf(vessel: Vessel): Matrix {
  const at = (u: number, v: number, w: number): [number, number, number] => {
    const { across, out, up } = toSpace(vessel.stave, fromFace(vessel, u, v, -w));
    return [across, -out, up];
  };
  const o = at(0, 0, 0);
  const column = (p: readonly number[]): [number, number, number] => [
    p[0]! - o[0],
    p[1]! - o[1],
    p[2]! - o[2],
  ];
  return [...column(at(1, 0, 0)), 0, ...column(at(0, 1, 0)), 0, ...column(at(0, 0, 1)), 0, ...o, 1];
}

/** By how many degrees a stave of a number (from 1) is turned about the axis from the first, counter-clockwise from above. */
export function turnOf({ stave }: Vessel, number: number): number {
  return ((number - 1) * 360) / stave.sides;
}

import { atan, cos, sin, tan } from '../geometry/trig.js';

/*
 * Compound angles of a shell of N flat staves that all slope alike. `slope` is measured from the horizontal: a quarter
 * turn is an upright box, 0 a flat frame. Radians throughout. The formulas stand in saw manuals' tables of compound
 * cuts; their derivation is in Snyder and Gottesman, Compound-Angle Joinery (2014).
 */

export interface Angles {
  /** What the saw's fence is turned by, from square across the stave. */
  readonly miter: number;
  /** What the blade is tilted by, from square to the face. */
  readonly bevel: number;
  /** Between the inner faces of neighbouring staves. */
  readonly dihedral: number;
  /** Half of what the unrolled faces of a stave turn by: its edges lean by this from its middle line. */
  readonly taper: number;
}

/** `sides` 3 or more, `slope` over 0 and up to a quarter turn. */
export function anglesOf(sides: number, slope: number): Angles {
  const half = Math.PI / sides;
  const miter = atan(cos(slope) * tan(half));
  const bevel = asin(sin(slope) * sin(half));
  return { miter, bevel, dihedral: Math.PI - 2 * bevel, taper: miter };
}

function asin(x: number): number {
  return atan(x / Math.sqrt((1 - x) * (1 + x)));
}

/**
 * How far the last joint gapes over `across` mm of joint, when every one of `faces` joint faces is off by `error`
 * radians the same way: the errors add up round the shell.
 */
export function lastGap(error: number, faces: number, across: number): number {
  return across * tan(faces * error);
}

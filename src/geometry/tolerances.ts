/** Every tolerance of the kernel, with its reason. Millimetres unless the name says otherwise. */

/** Points closer than this are one point. A cutter's step is some 0.005 mm; arithmetic here errs by about 1e-12. */
export const SAME_POINT = 1e-7;

/**
 * A ball may press this far into a boundary before the boundary counts as nearer. Well above the rounding of
 * coordinates up to a few metres (1e-13), and small enough that neighbours which only graze stay whole.
 */
export const GRAZE = 2e-11;

/** A turn smaller than this (radians) is no corner. A written file may show 0.1 degree = 1.7e-3; this is far below. */
export const SMOOTH = 1e-5;

/** Offset pieces whose ends lie within this are the same joint: a turn under SMOOTH leaves ends r * SMOOTH apart. */
export const JOINT = 2e-4;

/** Radius of an offset arc under which it is a point: what is left when an arc of exactly r is moved in by r. */
export const NO_RADIUS = 1e-7;

/** How far a fitted arc may stray from the curve it stands for (design: curves follow their source to 0.002 mm). */
export const CURVE_FIT = 0.0015;

/** Extra radius given to discs that open or bridge a place, so that the result clears the rule it was made for. */
export const SPARE = 0.003;

/** A place narrower than asked by no more than this counts as wide enough; a fifth of what the proof forgives. */
export const TIGHT = 1e-4;

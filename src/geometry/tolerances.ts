/** Every tolerance of the kernel, with its reason. Millimetres unless the name says otherwise. */

/** Points closer than this are one point. A cutter's step is some 0.005 mm; arithmetic here errs by about 1e-12. */
export const SAME_POINT = 1e-7;

/** A ball may press this far into a boundary before the boundary counts as nearer. Tangent neighbours err by 1e-12. */
export const GRAZE = 1e-9;

/** Tangents closer than this (radians) meet smoothly; 0.1 degree is what a written file may show, this is far below. */
export const SMOOTH = 1e-6;

/** How far a fitted arc may stray from the curve it stands for (design: curves follow their source to 0.002 mm). */
export const CURVE_FIT = 0.0015;

/** Extra radius given to discs that open or bridge a place, so that the result clears the rule it was made for. */
export const SPARE = 0.003;

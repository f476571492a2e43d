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

/** Joints that turn by less than this (radians) pass for smooth where edges are made to meet; the cutter pass takes twice that. */
export const SMOOTH_JOINT = 5e-4;

/** Each further try at a degenerate place forgives this much more of GRAZE ... */
export const GRAZE_STEP = 30;

/** ... and takes a radius larger by this hair, mm: three or more edges at one distance then no longer coincide. */
export const HAIR = 3.1e-6;

/**
 * How far apart the ends of offset pieces of one joint can lie, mm: a turn under SMOOTH leaves them r * SMOOTH apart,
 * and edges that dip into each other by `graze` do so over a length of 2 sqrt(graze r) or so.
 */
export function jointWithin(r: number, graze: number): number {
  return 2 * r * SMOOTH + 5 * Math.sqrt(graze * r);
}

/** A point this near to an edge lies on it, in booleans. Crossings of near-tangent edges are this sure, sideways. */
export const ON_EDGE = 1e-9;

/** Cuts this near to each other are one. Along near-tangent edges a crossing is only sure to about 1e-8. */
export const ONE_NODE = 2e-7;

/** Radius of an offset arc under which it is a point: what is left when an arc of exactly r is moved in by r. */
export const NO_RADIUS = 1e-7;

/**
 * Arcs of a smaller bulge are straight: they turn by less than SMOOTH (4 times the bulge), and their centre would be so
 * far away that its coordinates could not tell the arc's ends apart.
 */
export const STRAIGHT_BULGE = SMOOTH / 4;

/** How far a fitted arc may stray from the curve it stands for (design: curves follow their source to 0.002 mm). */
export const CURVE_FIT = 0.0015;

/** Extra radius given to discs that open or bridge a place, so that the result clears the rule it was made for. */
export const SPARE = 0.003;

/** A place narrower than asked by no more than this counts as wide enough; a fifth of what the proof forgives. */
export const TIGHT = 1e-4;

/**
 * Edges shorter than this are crumbs and are left out, their neighbours meeting half way: a coordinate written to a
 * millionth of the unit could not hold their direction. Moves nothing by more than half of it.
 */
export const CRUMB = 0.001;

import type { Figure } from './figure.js';

/**
 * Strengths at 12 % moisture content, kPa; null where no figure is known. They are averages of clear, straight-grained
 * samples; single pieces stray by about a quarter (the handbook's coefficients of variation, from memory).
 */
export interface Strength {
  /** Perpendicular to the grain, the stress at which the wood stops springing back (the proportional limit). */
  readonly compression: Figure | null;
  /** Parallel to the grain. */
  readonly shear: Figure | null;
  /** Perpendicular to the grain: what splits the wood. */
  readonly tension: Figure | null;
}

/**
 * How much each wood moves with moisture.
 *
 * `shrinkage`: green to ovendry, % of the green dimension (Wood Handbook table 4-3, imported woods table 4-4).
 * `change`: dimensional-change coefficient, the part of its size a piece grows per 1 % of moisture content, between
 * 6 and 14 % (Wood Handbook table 13-5). Four decimals are the precision its authors justify, and no one figure
 * foretells one board.
 */
export interface Movement {
  readonly shrinkage: { readonly radial: Figure; readonly tangential: Figure };
  readonly change: { readonly radial: Figure; readonly tangential: Figure };
}

/**
 * Lightness L* (CIE: 0 black, 100 white) of a finished face, fresh and after some years of indoor light.
 *
 * All from memory, stated for comparing woods with one another; no measurement stands behind them, and boards of one
 * wood differ by 8 either way. Most woods darken; walnut fades.
 */
export interface Lightness {
  readonly fresh: number;
  readonly aged: number;
}

import { inRange, overZero } from './range.js';

/**
 * Young's modulus, N/mm2. Cemented carbide about 580 GPa and high-speed steel about 200 GPa: a calculator's page of low
 * authority; carbide lies between 550 and 650 by its cobalt (from memory).
 */
export const YOUNGS = { carbide: 580_000, steel: 200_000 } as const;

/**
 * A fluted cutter bends like a plain rod of 0.8 of its diameter, two flutes or four: Kops and Vo, CIRP Annals 39(1), 1990
 * (its abstract, published); a tool maker's training page says 0.7 to 0.8.
 */
export const FLUTED = 0.8;

/** A cutter as it stands out of its collet, mm. */
export interface Rod {
  readonly diameter: number;
  /** Flute length; what stands out beyond it is shank. */
  readonly flute: number;
  /** Of the shank. */
  readonly shank: number;
  /** From the collet's face to the tip. */
  readonly stickout: number;
  /** Young's modulus, N/mm2. */
  readonly youngs: number;
}

/**
 * How far the cutter is pushed aside at a place `above` its tip (mm), by a side force (N) at its tip, mm. Estimate:
 * cantilever of two thicknesses, by virtual work,
 *
 *   d(a) = F / E x integral from a to L of s (s - a) / I(s) ds,   I = pi D^4 / 64,
 *
 * s from the tip. For one thickness and a = 0 it is the textbook's F L^3 / (3 E I). The whole force is put at the tip,
 * which overstates; collet, spindle and machine are taken as rigid, which understates.
 * Throws BadInput for a place beyond the stickout.
 */
export function deflection(rod: Rod, force: number, above: number): number {
  overZero('cutter.diameter', rod.diameter, 'mm');
  overZero('cutter.shank', rod.shank, 'mm');
  overZero('cutter.flute', rod.flute, 'mm');
  overZero('cutter.stickout', rod.stickout, 'mm');
  overZero('cutter.youngs', rod.youngs, 'N/mm2');
  inRange('above', above, { min: 0, max: rod.stickout, unit: 'mm' });
  const a = above;
  const end = Math.max(a, Math.min(rod.flute, rod.stickout));
  // Integral of s (s - a) from p to q.
  const moment = (p: number, q: number): number => (q * q * q - p * p * p) / 3 - (a * (q * q - p * p)) / 2;
  const fluted = moment(a, end) / inertia(FLUTED * rod.diameter);
  const shank = moment(end, rod.stickout) / inertia(rod.shank);
  return (force / rod.youngs) * (fluted + shank);
}

/** Second moment of area of a round rod, mm4: pi D^4 / 64. */
function inertia(diameter: number): number {
  const square = diameter * diameter;
  return (Math.PI * square * square) / 64;
}

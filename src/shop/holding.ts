import { type Figure, figure } from './figure.js';
import { atLeastZero, inRange } from './range.js';

/**
 * What holds parts that are cut free.
 *
 * Double-sided tape under a part is sheared by the side force of the cutter: it holds about its area times the shear it
 * bears. Estimate: even stress (force / area), fresh tape on clean flat wood, no lift, no peeling, no shaking.
 *
 * Worked example: a foot of 6 cm2 on tape of 50 kPa holds 600 x 50 / 1000 = 30 N, three times a side force of 10 N.
 */

const TRADE = 'common practice, no source';

/** A smaller foot is not left to tape, mm2. */
export const LEAST_FOOT: Figure = figure(600, 'memory', TRADE);

/** Nor a part that stands narrower than this share of its height: it tips. */
export const LEAST_STANCE: Figure = figure(0.5, 'memory', TRADE);

/** Wood left under parts and sanded off, mm: less tears while it is cut, more is much to sand. */
export const ONION_SKIN: { readonly least: Figure; readonly most: Figure } = {
  least: figure(0.3, 'memory', TRADE),
  most: figure(0.5, 'memory', TRADE),
};

/** Tape should hold this many times the side force: roughing and dull edges push harder. Our own choice. */
export const RESERVE = 2;

/** Estimate, N, see above: `area` mm2 of foot on tape that bears `shear` kPa. BadInput for what is below zero. */
export function tapeHold(area: number, shear: number): number {
  inRange('area', area, atLeastZero('mm2'));
  inRange('shear', shear, atLeastZero('kPa'));
  return (area * shear) / 1000;
}

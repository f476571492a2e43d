import { fromTons, type Ton } from './conversions.js';
import type { OwnWoods } from './own.js';
import { atLeastZero, inRange, overZero } from './range.js';
import { strengthOf } from './strength.js';

/** Part of the crushing load from which to warn: woods vary, and no press spreads its load evenly. Our own choice. */
export const WARN_FROM = 0.5;

/**
 * Load at which the plug's wood begins to crush, N: compression perpendicular to the grain (kPa, proportional limit) x
 * area pressed (mm2) / 1000. Estimate: average wood at 12 % moisture, evenly loaded. Null where the strength is not
 * known. Black walnut, 40 cm2: 7000 x 4000 / 1000 = 28 kN, 3.1 US tons.
 */
export function crushLoad(wood: string, area: number, own: OwnWoods = []): number | null {
  overZero('area', area, 'mm2');
  const compression = strengthOf(wood, own)?.compression;
  return compression ? (compression.value * area) / 1000 : null;
}

/** Load from which to warn, N: half the crushing load. Estimate; null where the strength is not known. */
export function warningLoad(wood: string, area: number, own: OwnWoods = []): number | null {
  const load = crushLoad(wood, area, own);
  return load === null ? null : load * WARN_FROM;
}

/** Pressure of a load (N) spread evenly over an area (mm2), kPa. */
export function pressure(load: number, area: number): number {
  overZero('area', area, 'mm2');
  return (load / area) * 1000;
}

/** Pressure that a press of so many tons makes at its full load over an area (mm2), kPa. */
export function pressPressure(tons: number, ton: Ton, area: number): number {
  inRange('tons', tons, atLeastZero('tons'));
  return pressure(fromTons(tons, ton), area);
}

import type { AngleParameter, CountParameter, LengthParameter, NumberParameter } from './parameter.js';

export type Measurable = LengthParameter | AngleParameter | CountParameter | NumberParameter;

/** How far a length whose default is 0 reaches, mm: a face that fits a hand's two palms. */
const SPAN = 100;
/** As much again for one that may lie to either side, as a shift does. */
const SHIFT = 50;
/** A count reaches at least this much beyond its default: 1 must be able to become several. */
const MORE = 6;
const COUNTED = 12;
const SEEDS = 99;
/** A bare number whose whole range is no wider is a share or the like: all of it is usual. */
const NARROW = 2;
const HALF_TURN = 180;

/**
 * The range in which a value mostly lies, for a slider: lengths in mm, angles in degrees. It lies within the legal
 * range and holds the default; a default far off widens it.
 */
export function usualRange(p: Measurable): readonly [number, number] {
  const [low, high] = p.often ?? derived(p);
  const clipped = (v: number) => Math.min(p.max, Math.max(p.min, v));
  return [Math.min(p.default, clipped(low)), Math.max(p.default, clipped(high))];
}

function derived(p: Measurable): readonly [number, number] {
  if (p.kind === 'angle') return p.min < 0 ? [-HALF_TURN, HALF_TURN] : [0, 2 * HALF_TURN];
  if (p.name === 'seed') return [1, SEEDS];
  if (p.default === 0) return fromNothing(p);
  if (p.kind === 'number' && p.max - p.min <= NARROW) return [p.min, p.max];
  const size = Math.abs(p.default);
  const least = p.default < 0 ? 3 * p.default : size / 4;
  const from = p.zero !== undefined ? 0 : least;
  if (p.kind === 'count') return [Math.floor(from), Math.max(3 * size, size + MORE)];
  return [tidy(from), tidy(3 * size)];
}

function fromNothing({ kind, min, max }: Measurable): readonly [number, number] {
  if (kind === 'count') return [0, COUNTED];
  if (kind === 'number') return [min, max];
  return min < 0 ? [-SHIFT, SHIFT] : [0, SPAN];
}

/** 3 times 4.2 is 12.600000000000001: no one needs to see that. */
function tidy(value: number): number {
  return Math.round(value * 1000) / 1000;
}

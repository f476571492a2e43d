import { atLeastZero, inRange, overZero } from './range.js';

/**
 * Feed, turns and chips. Lengths mm, feeds mm a minute, accelerations mm/s2.
 *
 *   feed = rpm x flutes x chip load      (cutter makers' pages, published)
 *
 * Worked: 2 flutes x 0.1 mm x 18,000 rpm = 3,600 mm a minute.
 */
export function feedOf(rpm: number, flutes: number, chip: number): number {
  check(rpm, flutes);
  return rpm * flutes * chip;
}

/** Chip load that a feed makes: feed / (rpm x flutes), mm. */
export function chipOf(feed: number, rpm: number, flutes: number): number {
  check(rpm, flutes);
  return feed / (rpm * flutes);
}

/** Turns a minute at which a feed makes that chip load. */
export function rpmOf(feed: number, flutes: number, chip: number): number {
  overZero('flutes', flutes, '');
  overZero('chip', chip, 'mm');
  return feed / (flutes * chip);
}

function check(rpm: number, flutes: number): void {
  overZero('rpm', rpm, 'turns a minute');
  overZero('flutes', flutes, '');
}

/**
 * Thickness of the thickest chip over the chip load, on a straight path that takes a bite of the cutter's side:
 * 2 sqrt(x (1 - x)), x = bite / diameter; 1 from half the diameter on. Geometry: an edge that leaves the wood at angle
 * a from the feed's normal, cos a = 1 - 2 x, cuts chip load x sin a there. Worked: 0.25 mm with 3.175 mm: 0.54.
 */
export function thinning(bite: number, diameter: number): number {
  inRange('bite', bite, atLeastZero('mm'));
  overZero('cutter.diameter', diameter, 'mm');
  const x = bite / diameter;
  return x >= 0.5 ? 1 : 2 * Math.sqrt(x * (1 - x));
}

/** The least bite whose chips are that share of the chip load, mm: `thinning` the other way round; share 0 to 1. */
export function biteFor(share: number, diameter: number): number {
  inRange('share', share, { min: 0, max: 1, unit: 'of the chip load' });
  return (diameter / 2) * (1 - Math.sqrt(1 - share * share));
}

/**
 * `thinning` in an inside corner, where the cutter's middle turns on `turn` mm and leaves the wall a radius of
 * turn + R: there it is wrapped further round. The bite is an even one, so what is cut lies outside a circle of
 * turn + R - bite about the corner's middle, which meets the cutter's circle at cos a = ((turn + R - bite)^2 - turn^2 -
 * R^2) / (2 turn R). The chip is chip load x sin a, or the whole of it from a = 90 degrees on.
 */
export function cornerThinning(bite: number, radius: number, turn: number): number {
  inRange('bite', bite, atLeastZero('mm'));
  overZero('radius', radius, 'mm');
  inRange('turn', turn, atLeastZero('mm'));
  if (bite === 0) return 0;
  const inner = turn + radius - bite;
  if (turn === 0 || inner <= 0) return 1;
  const cosine = (inner * inner - turn * turn - radius * radius) / (2 * turn * radius);
  return cosine <= 0 ? 1 : Math.sqrt(Math.max(0, 1 - cosine * cosine));
}

/**
 * The feed at which a path of that radius needs the whole acceleration, mm a minute: v = sqrt(a x radius), textbook
 * centripetal acceleration. Estimate: what the control does besides (looking ahead, rounding corners) is not known.
 * Worked: 250 mm/s2 on 0.3175 mm: 8.91 mm a second, 534.6 mm a minute.
 */
export function cornerFeed(acceleration: number, radius: number): number {
  overZero('machine.acceleration', acceleration, 'mm/s2');
  inRange('radius', radius, atLeastZero('mm'));
  return 60 * Math.sqrt(acceleration * radius);
}

/** The radius that lets a feed through, mm: v^2 / a. */
export function radiusFor(feed: number, acceleration: number): number {
  overZero('machine.acceleration', acceleration, 'mm/s2');
  const v = feed / 60;
  return (v * v) / acceleration;
}

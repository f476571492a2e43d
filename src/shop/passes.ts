import { atLeastZero, inRange, overZero } from './range.js';

/** Passes, the length of their paths and the time they take. Lengths mm, areas mm2. All paths are estimates. */

/** What is added for going in, coming out and moving between cuts. A guess; no source. */
export const MOVES = 0.1;

/** The fewest equal passes, none deeper than `most`, that make a depth: how many, and how deep each. */
export function equalSteps(depth: number, most: number): { steps: number; step: number } {
  overZero('depth', depth, 'mm');
  overZero('step', most, 'mm');
  // A depth of exactly so many steps must not take one more by its last digit.
  const steps = Math.max(1, Math.ceil(depth / most - 1e-9));
  return { steps, step: depth / steps };
}

/**
 * Path that clears an area, mm: area / distance between neighbouring paths. An even spacing over the whole of it is
 * assumed: narrow places need more, and what the cutter cannot get into less.
 */
export function clearingPath(area: number, spacing: number): number {
  inRange('area', area, atLeastZero('mm2'));
  overZero('spacing', spacing, 'mm');
  return area / spacing;
}

/**
 * Length of the line `distance` outside a region's boundary (negative: inside it): perimeter + 2 pi x distance x turns,
 * turns being its outer contours less its holes. Exact as long as the line nowhere meets itself; Steiner's formula.
 */
export function parallelPath(perimeter: number, turns: number, distance: number): number {
  return Math.max(0, perimeter + 2 * Math.PI * distance * turns);
}

/** Seconds for a path at a feed in mm a minute, with MOVES on top. */
export function secondsFor(length: number, feed: number): number {
  overZero('feed', feed, 'mm a minute');
  return (60 * length * (1 + MOVES)) / feed;
}

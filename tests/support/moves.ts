import type { Contour, Region } from '../../src/geometry/region.js';
import { mirrorX, placedRegion } from '../../src/geometry/transform.js';
import { Refusal } from '../../src/schema/fault.js';
import type { Hard } from './hard-shapes.js';
import { contoursOf, passed } from './laws.js';
import { stray } from './meters.js';

/** A similarity: what is drawn, turned, mirrored, moved or scaled. */
export interface Move {
  readonly name: string;
  readonly scale: number;
  readonly move: (region: Region) => Region;
}

const turned = (radians: number): Move => ({
  name: `turned by ${radians}`,
  scale: 1,
  move: (region) => placedRegion(region, 0, 0, radians),
});
const shifted = (x: number, y: number): Move => ({
  name: `moved by ${x}, ${y}`,
  scale: 1,
  move: (region) => placedRegion(region, x, y),
});
const scaled = (scale: number): Move => ({
  name: `scaled by ${scale}`,
  scale,
  move: (region) => placedRegion(region, 0, 0, 0, scale),
});

export const MIRRORED: Move = { name: 'mirrored', scale: 1, move: mirrorX };

/** Three that stand for all where time is short. */
export const FEW: readonly Move[] = [
  {
    name: 'turned by 1 and moved by 1e4',
    scale: 1,
    move: (region) => placedRegion(region, 1e4, -1e4, 1),
  },
  MIRRORED,
  scaled(0.7),
];

export const MOVES: readonly Move[] = [
  ...FEW,
  turned(1e-7),
  turned(0.1),
  turned(Math.PI / 7),
  turned(Math.PI / 2),
  turned(2.3),
  shifted(0.1, 0.3),
  shifted(1e4, -1e4),
  scaled(1.9),
];

/** A gap this much from 2r, mm, may go either way. */
const BAND = 0.002;

/** What a move may change, mm. */
export const EXACT = 0.003;

/**
 * How far the pass's result for a moved outline lies from its result moved, mm, infinite where one has other parts. Null where
 * it is refused; infinite too where only the moved one is. Of a scaling, distances count at the smaller scale: the pass's own tolerances do not grow along.
 */
export function strayUnder({ move, scale }: Move, given: Hard, here = result(given)): number | null {
  const pieces = given.pieces.map((p) => ({ ...p, region: move(p.region) }));
  const there = result({ ...given, pieces, rule: { ...given.rule, r: given.rule.r * scale } });
  if (!here) return null;
  if (!there) return Number.POSITIVE_INFINITY;
  return between(there, move({ contours: here }).contours) / Math.max(1, scale);
}

/**
 * Whether some place of an outline lies within the band of 2r and so may go either way. It is passed with a corner radius half
 * the band smaller and larger: a limb or gap between the two goes one way with one and the other way with the other, and then
 * these results lie far further apart than the band.
 */
export function isCritical(given: Hard): boolean {
  const [less, more] = [-BAND / 2, BAND / 2].map((d) =>
    result({ ...given, rule: { ...given.rule, r: given.rule.r + d } }),
  );
  return !!less && !!more && between(less, more) > 20 * BAND;
}

/** What the pass gives, or null where it refuses. */
export function result(given: Hard): Contour[] | null {
  try {
    return contoursOf(passed(given));
  } catch (e) {
    if (e instanceof Refusal) return null;
    throw e;
  }
}

function between(a: readonly Contour[], b: readonly Contour[]): number {
  return a.length === b.length ? stray(a, b) : Number.POSITIVE_INFINITY;
}

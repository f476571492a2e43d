import { union } from '../geometry/boolean.js';
import { capsule } from '../geometry/capsule.js';
import { eased } from '../geometry/eased.js';
import type { Edge } from '../geometry/edge.js';
import {
  bounds,
  type Contour,
  contourArea,
  distanceToEdge,
  reversedContour,
  windingNumber,
} from '../geometry/region.js';
import { type Rest, type Rolled, roll, rollOutside } from '../geometry/roll.js';
import { tidied } from '../geometry/tidy.js';
import { SPARE } from '../geometry/tolerances.js';
import { Refusal } from '../schema/fault.js';
import { extentOf, middleOf } from './extent.js';
import type { Rule } from './rule.js';
import type { Change } from './safe.js';
import { narrowest, type Strait, straitLength, straitMiddle, straits } from './strait.js';
import { tightPlaces } from './tight.js';

/** After this many rounds places are only cut open: adding and cutting in turn could go on for ever. */
const ROUNDS_OF_ADDING = 6;
const ROUNDS = 12;

/**
 * One piece made to have reach r on both sides where corners alone will not do: opened (limbs under 2r go), closed
 * (gaps and corners fill), and what then is still too narrow is settled: a gap of the artwork is bridged to 2r, a limb
 * of the artwork is cut apart to 2r. Appends what it did to `changes`.
 *
 * Opening and closing in turn would never settle such places: each undoes the other (see DEVELOPERS.md).
 */
export function settle(
  name: string,
  artwork: readonly Contour[],
  r: number,
  thin: Rule['thin'],
  changes: Change[],
): Contour[] {
  const opened = roll(artwork, r);
  if (thin === 'refuse') refuseLimbs(name, opened, r);
  let inside = opened.contours;
  let place: readonly [number, number] = [0, 0];
  for (let round = 0; round < ROUNDS; round++) {
    const closed = rollOutside(inside, r);
    const contours = closed.contours
      .map((c) => (thin === 'widen' ? eased(tidied(c), r) : tidied(c)))
      .filter((c) => c.length > 0);
    const tight = tightPlaces(contours, r);
    if (tight.length === 0) {
      noteLimbs(name, opened, contours, r, changes);
      noteGaps(name, artwork, closed, r, changes);
      return contours;
    }
    place = tight[0]!;
    const mend = mendGaps(name, artwork, closed.rests, tight, r, thin, round < ROUNDS_OF_ADDING, changes);
    if (mend) {
      inside = mended(inside, mend, r);
      continue;
    }
    const necks = mendNecks(roll(contours, r).rests, tight, r, round < ROUNDS_OF_ADDING);
    if (!necks) break;
    inside = mended(contours, necks, r);
  }
  throw new Refusal(
    'cannot-settle',
    `${name} is too tight for the cutter near ${at(place)} and opening and closing it there never ends: use a smaller cutter or less ease, or draw it larger`,
    place,
  );
}

/** What to add to a region and what to take from it, as counter-clockwise contours. */
interface Mend {
  readonly add: readonly Contour[];
  readonly take: readonly Contour[];
}

function mended(contours: readonly Contour[], mend: Mend, r: number): readonly Contour[] {
  let now = contours;
  if (mend.add.length > 0) now = union([{ contours: [...now, ...mend.add] }]).contours;
  // Made one region first, so that no two boundaries coincide where cuts meet.
  const discs = mend.take.length > 0 ? union([{ contours: mend.take }]).contours.map(reversedContour) : [];
  return roll([...now, ...discs], r, discs.length > 0).contours;
}

/** Gaps that closing left with a neck under 2r: bridged where the artwork had a gap, cut open where it had a limb. */
function mendGaps(
  name: string,
  artwork: readonly Contour[],
  rests: readonly Rest[],
  tight: readonly [number, number][],
  r: number,
  thin: Rule['thin'],
  mayAdd: boolean,
  changes: Change[],
): Mend | null {
  const add: Contour[] = [];
  const take: Contour[] = [];
  for (const s of straits(rests)) {
    if (!tight.some((p) => isAt(s, p, r))) continue;
    const [x, y] = placeOf(s);
    const limb = windingNumber(artwork, x, y) > 0;
    if (limb && thin === 'refuse') refuseLimb(name, [x, y], r);
    if (limb && thin === 'widen' && mayAdd) add.push(...along(s, r));
    else if (limb || !mayAdd) take.push(...along(s, r));
    else {
      add.push(...across(s, r));
      changes.push({ kind: 'filled', piece: name, at: [x, y], size: straitLength(s) });
    }
  }
  return add.length + take.length > 0 ? { add, take } : null;
}

/** Limbs just under 2r that neither opening nor closing settles: fattened to 2r, or in late rounds cut. */
function mendNecks(
  rests: readonly Rest[],
  tight: readonly [number, number][],
  r: number,
  mayAdd: boolean,
): Mend | null {
  const necks = straits(rests).filter((s) => tight.some((p) => isAt(s, p, r)));
  if (necks.length === 0) return null;
  return mayAdd
    ? { add: necks.flatMap((s) => along(s, r)), take: [] }
    : { add: [], take: necks.flatMap((s) => across(s, r)) };
}

function at(p: readonly [number, number]): string {
  return `(${p[0].toFixed(2)}, ${p[1].toFixed(2)}) mm`;
}

function isAt(s: Strait, [x, y]: readonly [number, number], r: number): boolean {
  for (const [mx, my] of s.mouths) {
    const dx = x - mx;
    const dy = y - my;
    if (dx * dx + dy * dy < 2.25 * r * r) return true;
  }
  return s.sides.some((side) => side.some((e: Edge) => distanceToEdge(e, x, y) < r / 10));
}

/** The point that stands for a strait: half way across where it is narrowest. */
function placeOf(s: Strait): [number, number] {
  const n = narrowest(s);
  return n ? [(n.p[0] + n.q[0]) / 2, (n.p[1] + n.q[1]) / 2] : straitMiddle(s);
}

/** Discs of radius r swept along a strait from mouth to mouth: they make it 2r wide. */
function along(s: Strait, r: number): Contour[] {
  const wide = r + SPARE;
  const [m, n] = s.mouths;
  if (s.mouths.length === 2) return [capsule(m![0], m![1], n![0], n![1], wide)];
  const [cx, cy] = straitMiddle(s);
  return s.mouths.map(([x, y]) => capsule(cx, cy, x, y, wide));
}

/** A bar of width 2r across a strait where it is narrowest, reaching r into either side. */
function across(s: Strait, r: number): Contour[] {
  const n = narrowest(s);
  if (!n) return along(s, r);
  const dx = n.q[0] - n.p[0];
  const dy = n.q[1] - n.p[1];
  const l = n.distance;
  // Sides that touch leave no direction; the strait's own axis is across the line between its mouths.
  const [m0, m1] = s.mouths;
  const mx = (m1 ?? m0)![0] - m0![0];
  const my = (m1 ?? m0)![1] - m0![1];
  const ml = Math.sqrt(mx * mx + my * my) || 1;
  const [ux, uy] = l > 1e-6 ? [dx / l, dy / l] : [-my / ml, mx / ml];
  return [capsule(n.p[0] - ux * r, n.p[1] - uy * r, n.q[0] + ux * r, n.q[1] + uy * r, r + SPARE)];
}

function refuseLimb(name: string, place: readonly [number, number], r: number): never {
  throw new Refusal(
    'thin-limb',
    `${name} is narrower than ${(2 * r).toFixed(2)} mm near ${at(place)} and cutter.thin is "refuse": use a smaller cutter, draw it wider, or set cutter.thin to "drop"`,
    place,
  );
}

/** Narrow ends that a resting ball cannot reach: more boundary than one corner, and further away than r. */
function lostEnds(rests: readonly Rest[], r: number): Rest[] {
  return rests.filter((rest) => rest.corner && rest.droppedCount > 2 && depthOf(rest, r) > r);
}

function lostParts(rolled: Rolled): Contour[] {
  return rolled.lost.filter((c) => contourArea(c) > 0);
}

function refuseLimbs(name: string, opened: Rolled, r: number): void {
  const [limb] = straits(opened.rests);
  const place = limb
    ? straitMiddle(limb)
    : (lostEnds(opened.rests, r)[0]?.centre ?? lostParts(opened).map((c) => middleOf(bounds([c])))[0]);
  if (place) refuseLimb(name, place, r);
}

function noteLimbs(
  name: string,
  opened: Rolled,
  result: readonly Contour[],
  r: number,
  changes: Change[],
): void {
  for (const s of straits(opened.rests)) {
    // A limb between two slots that filled is no loss: the wood is there.
    const [x, y] = straitMiddle(s);
    if (windingNumber(result, x, y) > 0) continue;
    changes.push({ kind: 'split', piece: name, at: [x, y], size: straitLength(s) });
  }
  for (const e of lostEnds(opened.rests, r))
    changes.push({ kind: 'shortened', piece: name, at: e.centre, size: depthOf(e, r) });
  for (const c of lostParts(opened)) changes.push({ kind: 'vanished', piece: name, ...placeAndSize(c) });
}

function noteGaps(
  name: string,
  artwork: readonly Contour[],
  closed: Rolled,
  r: number,
  changes: Change[],
): void {
  for (const s of straits(closed.rests)) {
    const [x, y] = placeOf(s);
    if (windingNumber(artwork, x, y) > 0) continue;
    changes.push({ kind: 'filled', piece: name, at: [x, y], size: straitLength(s) });
  }
  for (const rest of lostEnds(closed.rests, r))
    changes.push({ kind: 'filled', piece: name, at: rest.centre, size: depthOf(rest, r) });
  // A hole is an island of the outside: counter-clockwise there.
  for (const c of lostParts(closed)) changes.push({ kind: 'filled', piece: name, ...placeAndSize(c) });
}

/** How far the boundary that a resting ball cannot reach lies beyond the ball, mm. */
function depthOf(rest: Rest, r: number): number {
  let deepest = 0;
  for (const e of rest.dropped) {
    const dx = e.x0 - rest.centre[0];
    const dy = e.y0 - rest.centre[1];
    deepest = Math.max(deepest, Math.sqrt(dx * dx + dy * dy) - r);
  }
  return deepest;
}

function placeAndSize(c: Contour): Pick<Change, 'at' | 'size'> {
  const box = bounds([c]);
  return { at: middleOf(box), size: extentOf(box) };
}

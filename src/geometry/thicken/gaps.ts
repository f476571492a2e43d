import { subtract, union } from '../boolean.js';
import {
  bounds,
  type Contour,
  circle,
  contourArea,
  distanceToEdge,
  type Region,
  reversedContour,
} from '../region.js';
import { roll } from '../roll.js';
import { SPARE } from '../tolerances.js';
import { type Ball, type Boundary, boundaryOf } from './balls.js';
import { bandOf, radiusOf, type Stretched, stretched } from './band.js';
import { decided } from './decided.js';
import { ahead } from './ends.js';
import { limbs } from './limbs.js';
import { narrowRuns, type Run } from './runs.js';
import { runLength, thinStretches } from './stretches.js';

/** cos 165 degrees: sides that open faster than 15 degrees are the crotch of a V or an arch, not a gap. */
const OPPOSITE = -0.966;

/** Towards its mouth a gap is followed while its sides open by less than this: cos 120 degrees. */
const OPENING = -0.5;

/**
 * Share of r by which a wall may be left under 2r at the very end of a gap: little enough that the cutter pass, which
 * comes next, mends it. `staysWhole` sees to it that nothing comes apart there.
 */
const SLACK = 0.03;

/** Gaps shorter than this share of r are left to the corners. */
const SHORTEST = 0.25;

/**
 * The region with its gaps under 2r, and its holes that no disc of radius r enters, opened to 2r where the wood on
 * their sides stays at least 2r deep: each side gives the same, or one all of it. The same contours when none is.
 */
export function openedGaps(region: Region, r: number): { region: Region; opened: Stretched[] } {
  const outside = region.contours.map(reversedContour);
  const b = boundaryOf(outside);
  const { runs, wide } = narrowRuns(b, r, OPENING);
  const gaps: Run[] = [];
  for (const run of thinStretches(runs, r)) {
    const core = run.closed ? run.balls : gapOf(run.balls);
    if (core.length === 0 || runLength(core) < SHORTEST * r) continue;
    const moved = withRoom(b, core, r);
    if (moved) gaps.push({ balls: moved, closed: run.closed });
  }
  const opened: Stretched[] = [];
  let now = region;
  const open = (band: readonly Contour[], what: Stretched): void => {
    const wider = decided(() => subtract(now, union([{ contours: band }])));
    if (!wider || !staysWhole(now, wider, r)) return;
    now = wider;
    opened.push(what);
  };
  limbs(b, gaps, r).forEach((limb, k) => {
    const band = decided(() => bandOf(limb, radiusOf(r, k)));
    if (band) open(band, stretched(limb.runs.map((i) => gaps[i]!)));
  });
  region.contours.forEach((c, k) => {
    if (wide[k] || contourArea(c) > 0) return;
    const box = bounds([c]);
    const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
    const others = region.contours.filter((d) => d !== c);
    if (others.some((d) => d.some((e) => distanceToEdge(e, x, y) < 3 * r + SPARE))) return;
    if (Math.max(w, h) > 2 * r) return;
    open([circle(x, y, r + SPARE)], { at: [x, y], length: Math.max(w, h), width: Math.min(w, h) });
  });
  return { region: now, opened };
}

/** Whether as many parts and holes are left after what is then under 2r has gone. */
function staysWhole(before: Region, after: Region, r: number): boolean {
  const outers = (contours: readonly Contour[]): number => contours.filter((c) => contourArea(c) > 0).length;
  const left = decided(() => roll(after.contours, r).contours);
  if (!left || left.length !== after.contours.length) return false;
  return outers(left) === outers(before.contours);
}

/** The part of a run where the sides face each other, gone on towards mouths while it widens. */
export function gapOf(balls: readonly Ball[]): readonly Ball[] {
  let i = balls.findIndex((ball) => ball.facing < OPPOSITE);
  if (i < 0) return [];
  let j = balls.length - 1;
  while (balls[j]!.facing >= OPPOSITE) j--;
  while (i > 0 && balls[i - 1]!.w > balls[i]!.w) i--;
  while (j + 1 < balls.length && balls[j + 1]!.w > balls[j]!.w) j++;
  return balls.slice(i, j + 1);
}

/** The gap's balls, moved to the side that has wood to give; null where there is too little. */
function withRoom(b: Boundary, balls: readonly Ball[], r: number): readonly Ball[] | null {
  const spared = 2 * r - SLACK * r;
  let right = Number.POSITIVE_INFINITY;
  let left = Number.POSITIVE_INFINITY;
  for (const ball of balls) {
    if (ball.w >= r) continue;
    const lack = r + 2 * SPARE - ball.w;
    // What a side can give, in shares of what is lacking: 1 is its half, 2 all of it.
    right = Math.min(right, (depth(b, ball, ball.px, ball.py, r) - spared) / lack);
    left = Math.min(left, (depth(b, ball, ball.qx, ball.qy, r) - spared) / lack);
  }
  if (right >= 1 && left >= 1) return balls;
  if (right >= 2) return balls.map((ball) => movedFrom(ball, ball.qx, ball.qy, r));
  if (left >= 2) return balls.map((ball) => movedFrom(ball, ball.px, ball.py, r));
  return null;
}

/** How deep the wood is behind a contact, straight on from the ball's centre, mm; infinite when over 5r. */
function depth(b: Boundary, ball: Ball, x: number, y: number, r: number): number {
  const [ux, uy] = [(x - ball.x) / ball.w, (y - ball.y) / ball.w];
  const skip = 1e-6;
  return ahead(b, x + ux * skip, y + uy * skip, ux, uy, 5 * r).distance + skip;
}

/** A ball moved away from the side that gives nothing, so far that the band about it leaves that side alone. */
function movedFrom(ball: Ball, x: number, y: number, r: number): Ball {
  const k = Math.max(0, r + 2 * SPARE - ball.w) / ball.w;
  return { ...ball, x: ball.x - (x - ball.x) * k, y: ball.y - (y - ball.y) * k };
}

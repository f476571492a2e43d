import type { Ball, Boundary } from './balls.js';
import { ahead, clearance } from './ends.js';

type Point = readonly [number, number];

/** An end of a run that is no free end: `ball` is the last one before the junction bends the axis, heading out. */
export interface OpenEnd {
  readonly run: number;
  /** True at the end of the run, false at its start. */
  readonly forward: boolean;
  readonly ball: Ball;
}

/** What becomes of two ends: joined straight through, or in a corner at a point. */
export interface Joint {
  readonly a: OpenEnd;
  readonly b: OpenEnd;
  readonly corner: Point | null;
  /** Whether the outside of the corner comes to a point. */
  readonly pointed: boolean;
}

export interface Reaching {
  readonly end: OpenEnd;
  readonly to: Point;
  readonly cap: 'butt' | 'round';
}

export interface Joints {
  readonly joints: readonly Joint[];
  /** Ends that go on to a point inside another limb (butt) or to one where several meet (round). */
  readonly reaching: readonly Reaching[];
  /** Ends that go straight on past a junction and end freely beyond it. */
  readonly passing: readonly OpenEnd[];
  /** Ends with no other near. */
  readonly alone: readonly OpenEnd[];
}

/** Ends further apart than this many r do not meet in one junction. */
const NEAR = 3;

/** Ends in one line, as the serifs on either side of a stem, may be this many r apart. */
const FAR = 6.5;
const FAR_STRAIGHT = 0.93;

/** Ends that head against each other within 35 degrees are one line. */
const STRAIGHT = 0.82;

/** Which outsides of bends come to a point. */
export interface Points {
  /** Sine of half the least angle between limbs that do. */
  readonly sharpest: number;
  /** Radius that points are rounded with already, mm. */
  readonly rounding: number;
}

/** From 60 degrees on, as drawn. */
export const SHARP: Points = { sharpest: 0.5, rounding: 0 };

/** How the ends of runs meet where limbs cross or branch. */
export function joinEnds(b: Boundary, ends: readonly OpenEnd[], r: number, points = SHARP): Joints {
  const out = {
    joints: [] as Joint[],
    reaching: [] as Reaching[],
    passing: [] as OpenEnd[],
    alone: [] as OpenEnd[],
  };
  for (const group of groups(b, ends, r)) {
    if (group.length === 1) out.alone.push(group[0]!);
    else settleGroup(b, group, r, points, out);
  }
  return out;
}

function settleGroup(
  b: Boundary,
  group: readonly OpenEnd[],
  r: number,
  points: Points,
  out: { joints: Joint[]; reaching: Reaching[]; passing: OpenEnd[] },
): void {
  const left = [...group];
  const through: [OpenEnd, OpenEnd][] = [];
  for (;;) {
    const pair = straightest(left);
    if (!pair) break;
    through.push(pair);
    for (const e of pair) left.splice(left.indexOf(e), 1);
    out.joints.push({ a: pair[0], b: pair[1], corner: null, pointed: false });
  }
  if (left.length === 0) return;
  if (through.length > 0) {
    for (const end of left) out.reaching.push({ end, to: onBridge(end.ball, through, r), cap: 'butt' });
    return;
  }
  const balls = left.map((e) => e.ball);
  let meeting = commonPoint(balls);
  // Axes that meet outside the figure, as of limbs that touch each other alongside, meet half way instead.
  if (!balls.every((e) => isWithin(b, e, meeting))) meeting = meanOf(balls);
  // A limb that goes on past the junction: as 'n' does at its shoulder, where only a stub is left of the stem.
  const passing = left.filter((e) => goesOn(b, e.ball, meeting, r));
  const others = left.filter((e) => !passing.includes(e));
  out.passing.push(...passing);
  if (passing.length === 0 && others.length === 2) {
    const [p, q] = [others[0]!, others[1]!];
    out.joints.push({ a: p, b: q, ...corner(b, p.ball, q.ball, meeting, r, points) });
    return;
  }
  for (const end of others)
    out.reaching.push({ end, to: meeting, cap: passing.length > 0 ? 'butt' : 'round' });
}

/** Whether the way from an end to a point stays in the wood. */
function isWithin(b: Boundary, e: Ball, [x, y]: Point): boolean {
  const d = Math.sqrt((x - e.x) * (x - e.x) + (y - e.y) * (y - e.y));
  if (d < 1e-6) return true;
  return ahead(b, e.x, e.y, (x - e.x) / d, (y - e.y) / d, d + 0.3 * e.w).distance > d + 0.3 * e.w;
}

function meanOf(ends: readonly Ball[]): Point {
  return [
    ends.reduce((sum, e) => sum + e.x, 0) / ends.length,
    ends.reduce((sum, e) => sum + e.y, 0) / ends.length,
  ];
}

function groups(b: Boundary, ends: readonly OpenEnd[], r: number): OpenEnd[][] {
  const home = ends.map((_, i) => i);
  const find = (i: number): number => (home[i] === i ? i : find(home[i]!));
  for (let i = 0; i < ends.length; i++)
    for (let j = i + 1; j < ends.length; j++) if (meet(b, ends[i]!, ends[j]!, r)) home[find(j)] = find(i);
  const out = new Map<number, OpenEnd[]>();
  ends.forEach((e, i) => {
    const k = find(i);
    const list = out.get(k);
    if (list) list.push(e);
    else out.set(k, [e]);
  });
  return [...out.values()];
}

/** Two ends that look at each other, or side by side, with nothing but wood between them. */
function meet(b: Boundary, p: OpenEnd, q: OpenEnd, r: number): boolean {
  const dx = q.ball.x - p.ball.x;
  const dy = q.ball.y - p.ball.y;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d > (areOneLine(p.ball, q.ball, FAR_STRAIGHT) ? FAR : NEAR) * r) return false;
  if (p.run === q.run && d < 1e-9) return false;
  if (dx * p.ball.tx + dy * p.ball.ty < -0.35 * d || -dx * q.ball.tx - dy * q.ball.ty < -0.35 * d)
    return false;
  // Straight across, or a little ahead of both: between the limbs of a V the wood begins only there.
  return [0, 0.5, 1].some((k) => {
    const on = k * Math.min(p.ball.w, q.ball.w, d);
    const from: Point = [p.ball.x + p.ball.tx * on, p.ball.y + p.ball.ty * on];
    const to: Point = [q.ball.x + q.ball.tx * on, q.ball.y + q.ball.ty * on];
    return isWoodBetween(b, from, to, 0.6 * Math.min(p.ball.w, q.ball.w));
  });
}

function isWoodBetween(b: Boundary, p: Point, q: Point, least: number): boolean {
  return [0.2, 0.4, 0.6, 0.8].every(
    (k) => clearance(b, p[0] + (q[0] - p[0]) * k, p[1] + (q[1] - p[1]) * k, 2 * least) >= least,
  );
}

function straightest(ends: readonly OpenEnd[]): [OpenEnd, OpenEnd] | null {
  let best: [OpenEnd, OpenEnd] | null = null;
  let least = -STRAIGHT;
  for (let i = 0; i < ends.length; i++)
    for (let j = i + 1; j < ends.length; j++) {
      const [p, q] = [ends[i]!.ball, ends[j]!.ball];
      const dot = p.tx * q.tx + p.ty * q.ty;
      if (dot >= least || !areOneLine(p, q, STRAIGHT)) continue;
      least = dot;
      best = [ends[i]!, ends[j]!];
    }
  return best;
}

/** Whether two ends head for each other: cosines of what their directions are off by at least `straight`. */
function areOneLine(p: Ball, q: Ball, straight: number): boolean {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const d = Math.sqrt(dx * dx + dy * dy) || 1;
  if (p.tx * q.tx + p.ty * q.ty > -straight) return false;
  return dx * p.tx + dy * p.ty >= straight * d && -dx * q.tx - dy * q.ty >= straight * d;
}

/** Where an end that goes straight on meets the bridge of a through pair; else the bridge's nearest point. */
function onBridge(e: Ball, through: readonly (readonly [OpenEnd, OpenEnd])[], r: number): Point {
  let best: Point = [e.x, e.y];
  let nearest = Number.POSITIVE_INFINITY;
  for (const [p, q] of through) {
    const dx = q.ball.x - p.ball.x;
    const dy = q.ball.y - p.ball.y;
    const cross = e.tx * dy - e.ty * dx;
    const ax = p.ball.x - e.x;
    const ay = p.ball.y - e.y;
    let s = Math.abs(cross) > 1e-9 ? (ax * dy - ay * dx) / cross : Number.POSITIVE_INFINITY;
    let to: Point = [e.x + e.tx * s, e.y + e.ty * s];
    if (!(s >= 0 && s <= 2 * NEAR * r)) {
      const k = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / (dx * dx + dy * dy || 1)));
      to = [p.ball.x + dx * k, p.ball.y + dy * k];
      s = Math.sqrt((to[0] - e.x) * (to[0] - e.x) + (to[1] - e.y) * (to[1] - e.y));
    }
    if (s < nearest) {
      nearest = s;
      best = to;
    }
  }
  return best;
}

/** The point nearest to all the ends' lines (least squares), kept near the ends' mean. */
function commonPoint(ends: readonly Ball[]): Point {
  let [a, b, c, d, e] = [0, 0, 0, 0, 0];
  const [mx, my] = meanOf(ends);
  for (const p of ends) {
    const [nx, ny] = [-p.ty, p.tx];
    const k = nx * p.x + ny * p.y;
    a += nx * nx;
    b += nx * ny;
    c += ny * ny;
    d += nx * k;
    e += ny * k;
  }
  const det = a * c - b * b;
  if (det < 0.02) return [mx, my];
  const x = (c * d - b * e) / det;
  const y = (a * e - b * d) / det;
  // Ahead of all, or at least not far behind.
  for (const p of ends) if ((x - p.x) * p.tx + (y - p.y) * p.ty < -0.5 * p.w) return [mx, my];
  return [x, y];
}

function goesOn(b: Boundary, e: Ball, at: Point, r: number): boolean {
  const s = (at[0] - e.x) * e.tx + (at[1] - e.y) * e.ty;
  const tip = ahead(b, e.x, e.y, e.tx, e.ty, 6 * r).distance;
  if (tip - s <= 1.35 * e.w || tip > 5 * r) return false;
  for (let d = Math.max(s, 0); d < tip - 1.2 * e.w; d += 0.2 * r)
    if (clearance(b, e.x + e.tx * d, e.y + e.ty * d, r) < 0.85 * Math.min(e.w, r)) return false;
  return true;
}

/** A bend of two limbs: pointed where its outside is; a bend that lies too far out (of a blunt point) moves in. */
function corner(
  b: Boundary,
  p: Ball,
  q: Ball,
  at: Point,
  r: number,
  { sharpest, rounding }: Points,
): { corner: Point; pointed: boolean } {
  const ox = p.tx + q.tx;
  const oy = p.ty + q.ty;
  const l = Math.sqrt(ox * ox + oy * oy);
  if (l < 1e-6) return { corner: at, pointed: false };
  const [ux, uy] = [ox / l, oy / l];
  const w = Math.max(p.w, q.w);
  const out = ahead(b, at[0], at[1], ux, uy, 6 * r).distance;
  // Half the angle between the limbs: a pointed outside lies w / sin(half) from the bend.
  const dot = p.tx * q.tx + p.ty * q.ty;
  const sinHalf = Math.sqrt(Math.max(1e-6, (1 - dot) / 2));
  const reach = (w - rounding) / sinHalf + rounding;
  if (sinHalf > sharpest && out > 0.85 * reach) return { corner: at, pointed: true };
  const back = Math.max(0, Math.min(r, Math.min(w, r) - out));
  return { corner: [at[0] - ux * back, at[1] - uy * back], pointed: false };
}

import type { Contour } from '../region.js';
import type { Cap } from '../stroke.js';
import type { Ball, Boundary } from './balls.js';
import { ahead, clearance, isFreeEnd } from './ends.js';
import { joinEnds, type OpenEnd, type Points } from './joints.js';
import { type Run, turned } from './runs.js';
import { extended, type Node, shortened, turnedNodes } from './spine.js';
import { between, flatEnd, intoTheWood, tipOf, tipPoint } from './tips.js';

type Point = readonly [number, number];

/** A place where two legs of a limb meet in a bend. */
export interface Bend {
  readonly at: Point;
  readonly pointed: boolean;
}

/** A limb's spine: smooth legs that meet in bends, with what its two ends look like. */
export interface Limb {
  readonly legs: readonly (readonly Node[])[];
  /** One fewer than legs, or as many when closed. */
  readonly bends: readonly Bend[];
  readonly closed: boolean;
  readonly start: Finish;
  readonly end: Finish;
  /** The runs it is made of. */
  readonly runs: readonly number[];
}

export interface Finish {
  readonly cap: Cap;
  /** What is cut off the band there: beyond the slanted end of a stroke. */
  readonly clip: Contour | null;
}

type Ending =
  | { readonly kind: 'free'; readonly ball: Ball }
  | { readonly kind: 'pass'; readonly ball: Ball }
  | { readonly kind: 'alone'; readonly ball: Ball }
  | { readonly kind: 'reach'; readonly ball: Ball; readonly to: Point; readonly cap: Cap };

interface Link {
  readonly end: number;
  readonly bend: Bend | null;
}

const ROUND: Finish = { cap: 'round', clip: null };

/** Runs put together to limbs across junctions and bends, and their ends finished. `points`: which bends are pointed. */
export function limbs(b: Boundary, runs: readonly Run[], r: number, points?: Points): Limb[] {
  const trimmed: (readonly Ball[])[] = runs.map((run) => run.balls);
  const ends: OpenEnd[] = [];
  const endings = new Map<number, Ending>();
  const untrimmed = [...trimmed];
  runs.forEach((run, k) => {
    if (run.closed) return;
    for (const forward of [false, true]) {
      const out = forward ? trimmed[k]! : turned(trimmed[k]!);
      const last = out[out.length - 1]!;
      const tip = ahead(b, last.x, last.y, last.tx, last.ty, 8 * r).distance;
      if (last.w < r && isFreeEnd(b, last, tip)) {
        endings.set(2 * k + Number(forward), { kind: 'free', ball: last });
        continue;
      }
      const back = beforeJunction(out);
      trimmed[k] = forward ? back : turned(back);
      ends.push({ run: k, forward, ball: back[back.length - 1]! });
    }
  });
  const met = joinEnds(b, ends, r, points);
  const id = (e: OpenEnd): number => 2 * e.run + Number(e.forward);
  const links = new Map<number, Link>();
  for (const j of met.joints) {
    const bend = j.corner && { at: j.corner, pointed: j.pointed };
    links.set(id(j.a), { end: id(j.b), bend });
    links.set(id(j.b), { end: id(j.a), bend });
  }
  for (const { end, to, cap } of met.reaching)
    endings.set(id(end), { kind: 'reach', ball: end.ball, to, cap });
  for (const end of met.passing) endings.set(id(end), { kind: 'pass', ball: end.ball });
  for (const end of met.alone) {
    // No junction after all: nothing to cut back from.
    const whole = end.forward ? untrimmed[end.run]! : turned(untrimmed[end.run]!);
    const now = end.forward ? trimmed[end.run]! : turned(trimmed[end.run]!);
    const back = [
      ...now,
      ...whole.slice(whole.indexOf(whole.find((w) => w.p === now[now.length - 1]!.p)!) + 1),
    ];
    trimmed[end.run] = end.forward ? back : turned(back);
    endings.set(id(end), { kind: 'alone', ball: back[back.length - 1]! });
  }
  return assembled(b, runs, trimmed, links, endings, r);
}

/**
 * Balls up to where a junction begins to pull the axis aside: where the contacts no longer lie opposite to 2 degrees, or
 * on limbs that taper to 10.
 */
function beforeJunction(balls: readonly Ball[]): readonly Ball[] {
  const last = balls[balls.length - 1]!;
  let length = 0;
  let fair = 0;
  for (let i = balls.length - 1; i > 0; i--) {
    const [a, c] = [balls[i - 1]!, balls[i]!];
    if (c.facing < -0.9995) return balls.slice(0, i + 1);
    if (c.facing < -0.985 && !fair) fair = i;
    length += Math.sqrt((a.x - c.x) * (a.x - c.x) + (a.y - c.y) * (a.y - c.y));
    if (length > 1.5 * last.w) break;
  }
  return fair > 0 ? balls.slice(0, fair + 1) : balls;
}

function assembled(
  b: Boundary,
  runs: readonly Run[],
  balls: readonly (readonly Ball[])[],
  links: ReadonlyMap<number, Link>,
  endings: ReadonlyMap<number, Ending>,
  r: number,
): Limb[] {
  const done = new Set<number>();
  const out: Limb[] = [];
  const grow = (firstEnd: number): void => {
    // Walk from an end: in at `firstEnd`, out at the run's other end, over its link to the next run.
    const legs: Node[][] = [];
    const bends: Bend[] = [];
    const members: number[] = [];
    let closed = false;
    let end = firstEnd;
    for (;;) {
      const k = end >> 1;
      done.add(k);
      members.push(k);
      const nodes: Node[] = (end & 1) === 0 ? [...balls[k]!] : turned(balls[k]!);
      const before = links.get(end);
      if (members.length > 1 && !before!.bend) legs[legs.length - 1]!.push(...nodes);
      else legs.push(nodes);
      const link = links.get(end ^ 1);
      if (!link) break;
      if (link.bend) bends.push(link.bend);
      if (done.has(link.end >> 1)) {
        closed = link.end === firstEnd;
        // Closed smoothly: the last leg goes on into the first.
        if (closed && !link.bend && legs.length > 1) legs[0] = [...legs.pop()!, ...legs[0]!];
        break;
      }
      end = link.end;
    }
    if (closed) {
      out.push({ legs, bends, closed, start: ROUND, end: ROUND, runs: members });
      return;
    }
    const limb = finished(b, legs, bends, members, endings.get(firstEnd), endings.get(end ^ 1), r);
    if (limb) out.push(limb);
  };
  runs.forEach((run, k) => {
    if (run.closed) {
      done.add(k);
      out.push({ legs: [[...run.balls]], bends: [], closed: true, start: ROUND, end: ROUND, runs: [k] });
    }
  });
  for (let e = 0; e < 2 * runs.length; e++) if (!done.has(e >> 1) && !links.has(e)) grow(e);
  for (let e = 0; e < 2 * runs.length; e++) if (!done.has(e >> 1)) grow(e);
  return out;
}

function finished(
  b: Boundary,
  legs: Node[][],
  bends: readonly Bend[],
  runs: readonly number[],
  first: Ending | undefined,
  last: Ending | undefined,
  r: number,
): Limb | null {
  const n = legs.length;
  if (
    n === 1 &&
    first?.kind === 'free' &&
    last?.kind === 'free' &&
    between(b, first.ball, last.ball, r) < 2 * r
  )
    return shortLimb(b, legs[0]!, runs, first, last, r);
  const tail = last ? finishedEnd(b, legs[n - 1]!, last, r) : { nodes: legs[n - 1]!, ...ROUND };
  if (!tail && n === 1) return shortLimb(b, legs[0]!, runs, first, last!, r);
  // Too short beyond the bend: the bend's own disc is all there is room for.
  legs[n - 1] = tail?.nodes ?? [legs[n - 1]![0]!];
  const head = first
    ? finishedEnd(b, turnedNodes(legs[0]!), first, r)
    : { nodes: turnedNodes(legs[0]!), ...ROUND };
  if (!head && n === 1) return shortLimb(b, legs[0]!, runs, last, first!, r);
  legs[0] = turnedNodes(head?.nodes ?? [turnedNodes(legs[0]!)[0]!]);
  return {
    legs,
    bends,
    closed: false,
    start: { cap: head?.cap ?? 'round', clip: head?.clip ?? null },
    end: { cap: tail?.cap ?? 'round', clip: tail?.clip ?? null },
    runs,
  };
}

/** A stroke with less than r (or 2r, with two free ends) of length: a disc that reaches its tip, or lies in its middle. */
function shortLimb(
  b: Boundary,
  nodes: readonly Node[],
  runs: readonly number[],
  other: Ending | undefined,
  free: Ending,
  r: number,
): Limb | null {
  const tip = tipPoint(b, free.ball, r);
  let centre: Point = [tip[0] - free.ball.tx * r, tip[1] - free.ball.ty * r];
  if (other?.kind === 'free') {
    const far = tipPoint(b, other.ball, r);
    centre = [(tip[0] + far[0]) / 2, (tip[1] + far[1]) / 2];
  } else if (clearance(b, centre[0], centre[1], r) > 0.9 * r) return null;
  const node: Node = { ...nodes[0]!, x: centre[0], y: centre[1] };
  return { legs: [[node]], bends: [], closed: false, start: ROUND, end: ROUND, runs };
}

function finishedEnd(
  b: Boundary,
  nodes: readonly Node[],
  ending: Ending,
  r: number,
): (Finish & { nodes: Node[] }) | null {
  if (ending.kind === 'reach') {
    const last = nodes[nodes.length - 1]!;
    const [x, y] = ending.to;
    const d = Math.sqrt((x - last.x) * (x - last.x) + (y - last.y) * (y - last.y));
    if (d < 1e-6) return { nodes: [...nodes], cap: ending.cap, clip: null };
    const [tx, ty] = [(x - last.x) / d, (y - last.y) / d];
    return { nodes: [...nodes, { x, y, tx, ty }], cap: ending.cap, clip: null };
  }
  if (ending.kind === 'alone') return { nodes: intoTheWood(b, nodes, ending.ball, r), ...ROUND };
  const tip = tipOf(b, ending.ball, r);
  if (tip.distance > 7 * r) return { nodes: [...nodes], ...ROUND };
  const flat = flatEnd(ending.ball, tip, r);
  if (flat) return { nodes: extended(nodes, flat.length), cap: 'butt', clip: flat.clip };
  const further = tip.distance - r;
  if (further < 0) {
    const cut = shortened(nodes, -further);
    return cut && { nodes: cut, ...ROUND };
  }
  return { nodes: ending.kind === 'pass' ? extended(nodes, further) : [...nodes], ...ROUND };
}

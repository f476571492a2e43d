import { type Contour, polygon, type Region } from '../../../geometry/region.js';
import type { Ball } from '../../../geometry/thicken/balls.js';
import type { NarrowPart } from './wall-runs.js';

/** Stretches of a wall's axis, and the wall itself along them. */

type Point = readonly [number, number];

/** A stretch of the axis: balls `from` to `to`, which in a closed one may count on past the last; both ends in it. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Outlines of bands follow the sides to this, mm: they are only drawn. */
const FOLLOWS = 0.03;

type Axis = Pick<NarrowPart, 'balls' | 'closed'>;

/** Length of the axis about its narrowest place while it is under `width`, mm. Between balls the width goes evenly. */
export function stretchAbout({ balls, closed, least, at }: NarrowPart, width: number): number {
  const n = balls.length;
  const w = width / 2;
  const walk = (way: 1 | -1): number => {
    let length = 0;
    for (let k = 0; k < n - 1; k++) {
      const i = least + way * k;
      const j = i + way;
      // The narrowest place itself may lie a little beyond the end of the axis.
      if (!closed && (j < 0 || j >= n)) return length + beyond(balls[i]!, at, way);
      const [a, b] = [balls[(i + n) % n]!, balls[(j + n) % n]!];
      if (b.w > w) return length + (apart(a, b) * Math.max(0, w - a.w)) / (b.w - a.w);
      length += apart(a, b);
    }
    return closed ? length : length + beyond(balls[way === 1 ? n - 1 : 0]!, at, way);
  };
  // Once round a ring that is nowhere wider, and not back again.
  const round = closed && balls.every((ball) => ball.w <= w);
  return round ? sharesOf({ balls, closed }).reduce((sum, l) => sum + l, 0) : walk(1) + walk(-1);
}

function beyond(ball: Ball, [x, y]: Point, way: 1 | -1): number {
  return Math.max(0, way * ((x - ball.x) * ball.tx + (y - ball.y) * ball.ty));
}

/** By ball: how much of the axis it stands for, half the way to either neighbour, mm. */
export function sharesOf({ balls, closed }: Axis): number[] {
  const n = balls.length;
  const steps = balls.map((ball, i) => (i + 1 < n || closed ? apart(ball, balls[(i + 1) % n]!) : 0));
  return steps.map((step, i) => (step + (i > 0 || closed ? steps[(i + n - 1) % n]! : 0)) / 2);
}

/** The stretches whose balls all answer to `which`. */
export function runsOf({ balls, closed }: Axis, which: (i: number) => boolean): Stretch[] {
  const n = balls.length;
  const yes = balls.map((_, i) => which(i));
  if (closed && !yes.includes(false)) return [{ from: 0, to: n }];
  const start = closed ? yes.indexOf(false) : 0;
  const out: Stretch[] = [];
  for (let k = start; k < start + n; k++) {
    if (!yes[k % n]) continue;
    const from = k;
    while (k + 1 < start + n && yes[(k + 1) % n]) k++;
    out.push({ from, to: k });
  }
  return out;
}

/** The wall between its sides along the stretches. */
export function bandsOf({ balls, closed }: Axis, runs: readonly Stretch[]): Region {
  const n = balls.length;
  const contours = runs.flatMap(({ from, to }): Contour[] => {
    if (closed && to - from === n) {
      const ring = [...balls, balls[0]!];
      // The right side of a ring runs round it as an outline does, and its left side the other way, or both as holes do.
      return [
        outline(side(ring, 'right').slice(0, -1)),
        outline(side(ring, 'left').slice(0, -1).reverse()),
      ].flat();
    }
    // One ball alone has no length: the wall as far as the balls beside it.
    const [a, b] = from === to && !closed ? [Math.max(0, from - 1), Math.min(n - 1, to + 1)] : [from, to];
    const some = Array.from({ length: b - a + 1 }, (_, k) => balls[(a + k) % n]!);
    return outline([...side(some, 'right'), ...side(some, 'left').reverse()]);
  });
  return { contours };
}

function side(balls: readonly Ball[], which: 'left' | 'right'): Point[] {
  return simplified(balls.map((b): Point => (which === 'right' ? [b.px, b.py] : [b.qx, b.qy])));
}

function outline(points: readonly Point[]): Contour[] {
  const apartFrom = (p: Point, q: Point): boolean => Math.abs(p[0] - q[0]) + Math.abs(p[1] - q[1]) > 1e-6;
  const kept = points.filter((p, i) => apartFrom(p, points[(i + 1) % points.length]!));
  return kept.length > 2 ? [polygon(kept)] : [];
}

/** Points left out while the chord past them stays within FOLLOWS. */
function simplified(points: readonly Point[]): Point[] {
  const out: Point[] = [];
  let from = 0;
  for (let to = 1; to <= points.length; to++) {
    if (
      to < points.length &&
      points.slice(from + 1, to).every((p) => off(p, points[from]!, points[to]!) < FOLLOWS)
    )
      continue;
    out.push(points[from]!);
    from = to - 1;
  }
  const last = points[points.length - 1]!;
  if (out[out.length - 1] !== last) out.push(last);
  return out;
}

/** Distance of a point from the line through two others, or from the first where they are one. */
function off([x, y]: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const l = Math.sqrt(dx * dx + dy * dy);
  const [u, v] = [x - a[0], y - a[1]];
  return l < 1e-9 ? Math.sqrt(u * u + v * v) : Math.abs(u * dy - v * dx) / l;
}

function apart(a: Ball, b: Ball): number {
  const [dx, dy] = [a.x - b.x, a.y - b.y];
  return Math.sqrt(dx * dx + dy * dy);
}

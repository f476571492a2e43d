import { bulged, type Edge, edgeLength, line, part, reversed, withEnds } from '../../geometry/edge.js';
import { SAME_POINT } from '../../geometry/tolerances.js';
import { tan } from '../../geometry/trig.js';

export type Point = readonly [number, number];

/** Where a strand meets another, or itself, and whether it lies over it there. */
export interface Node {
  /** The crossing's own name: two nodes have it, one of them over. */
  readonly crossing: string;
  readonly over: boolean;
}

/**
 * The middle line of a closed band. Stretch k starts at node k and ends at the next one; a strand that crosses nothing
 * is one stretch and no node.
 */
export interface Strand {
  readonly nodes: readonly Node[];
  readonly stretches: readonly (readonly Edge[])[];
}

/** A place on a middle line and the unit direction of travel there. */
export interface Way {
  readonly at: Point;
  readonly along: Point;
}

/**
 * From one way to another, tangent to both: straight, by one arc as wide as fits and a straight, or, where they run
 * side by side, by two equal arcs. `sharp`: by straights alone, with corners.
 */
export function bend(from: Way, to: Way, sharp = false): Edge[] {
  const [px, py] = from.at;
  const [qx, qy] = to.at;
  const [tx, ty] = from.along;
  const [ux, uy] = to.along;
  const dx = qx - px;
  const dy = qy - py;
  const turn = tx * uy - ty * ux;
  if (Math.abs(turn) < 1e-9) {
    if (Math.abs(tx * dy - ty * dx) < 1e-9) return [line(px, py, qx, qy)];
    if (sharp) return slanted(from, to);
    const mx = (px + qx) / 2;
    const my = (py + qy) / 2;
    const b = bulgeFrom(from.along, dx, dy);
    return [bulged(px, py, mx, my, b), bulged(mx, my, qx, qy, -b)];
  }
  const before = (dx * uy - dy * ux) / turn;
  const after = (tx * dy - ty * dx) / turn;
  const cut = sharp ? 0 : Math.min(before, after);
  const a: Point = before - cut < 1e-9 ? from.at : [px + tx * (before - cut), py + ty * (before - cut)];
  const b: Point = after - cut < 1e-9 ? to.at : [qx - ux * (after - cut), qy - uy * (after - cut)];
  const arcs = sharp ? [] : [bulged(a[0], a[1], b[0], b[1], bulgeFrom(from.along, b[0] - a[0], b[1] - a[1]))];
  return [
    ...(a === from.at ? [] : [line(px, py, a[0], a[1])]),
    ...arcs,
    ...(b === to.at ? [] : [line(b[0], b[1], qx, qy)]),
  ];
}

/** Between parallel ways, half as steep as straight across: the middle half of the length slants. */
function slanted({ at: [px, py], along: [tx, ty] }: Way, { at: [qx, qy] }: Way): Edge[] {
  const quarter = ((qx - px) * tx + (qy - py) * ty) / 4;
  const [ax, ay] = [px + tx * quarter, py + ty * quarter];
  const [bx, by] = [qx - tx * quarter, qy - ty * quarter];
  return [line(px, py, ax, ay), line(ax, ay, bx, by), line(bx, by, qx, qy)];
}

/** Bulge of the arc that leaves along a unit direction and ends (dx, dy) away. */
function bulgeFrom([tx, ty]: Point, dx: number, dy: number): number {
  return (tx * dy - ty * dx) / (Math.sqrt(dx * dx + dy * dy) + tx * dx + ty * dy);
}

/** A chain in two: its first `length` mm, and the rest. */
export function parted(path: readonly Edge[], length: number): [Edge[], Edge[]] {
  let left = length;
  for (let i = 0; i < path.length; i++) {
    const e = path[i]!;
    const l = edgeLength(e);
    if (l > left) {
      const t = e.r === 0 ? left : tan(left / (2 * Math.abs(e.r)));
      if (left < SAME_POINT) return [path.slice(0, i), path.slice(i)];
      const rest = part(e, t, Number.POSITIVE_INFINITY);
      return [
        [...path.slice(0, i), withEnds(e, e.x0, e.y0, rest.x0, rest.y0)],
        [rest, ...path.slice(i + 1)],
      ];
    }
    left -= l;
  }
  return [[...path], []];
}

export function backwards(path: readonly Edge[]): Edge[] {
  return path.map(reversed).reverse();
}

export function pathLength(path: readonly Edge[]): number {
  return path.reduce((sum, e) => sum + edgeLength(e), 0);
}

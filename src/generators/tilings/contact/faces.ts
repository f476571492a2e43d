import type { Point } from '../tile.js';
import type { Segment } from './rays.js';

/** Segments of one owner, a tile's number. */
export interface Owned {
  readonly owner: number;
  readonly segments: readonly Segment[];
}

/** A cell that lines enclose, counter-clockwise, and the owners of the lines round it. */
export interface Face {
  readonly points: readonly Point[];
  readonly owners: readonly number[];
}

/** One line seen in one direction. */
interface Half {
  readonly from: number;
  readonly to: number;
  readonly owner: number;
  readonly back: number;
  /** Rises with the direction counter-clockwise, 0 to 4. */
  readonly slope: number;
}

/** Points in one square of this size, mm, are one point; lines that really meet do so within rounding. */
const GRID = 1e-4;

/** Parameters this near to a segment's ends, as a share of it, are the ends. */
const END = 1e-7;

/** Every bounded cell of the arrangement; lines of different owners meet at their ends alone. */
export function facesOf(all: readonly Owned[]): Face[] {
  const nodes = new Nodes();
  const halves: Half[] = [];
  for (const { owner, segments } of all)
    for (const [p, q] of split(segments)) {
      const from = nodes.at(p);
      const to = nodes.at(q);
      const n = halves.length;
      if (from === to) continue;
      halves.push({ from, to, owner, back: n + 1, slope: slope(q[0] - p[0], q[1] - p[1]) });
      halves.push({ from: to, to: from, owner, back: n, slope: slope(p[0] - q[0], p[1] - q[1]) });
    }
  const next = following(halves, nodes.points.length);
  const done = new Uint8Array(halves.length);
  const out: Face[] = [];
  halves.forEach((_, first) => {
    if (done[first]) return;
    const round: Half[] = [];
    for (let h = first; !done[h]; h = next[h]!) {
      done[h] = 1;
      round.push(halves[h]!);
    }
    const points = round.map((h) => nodes.points[h.from]!);
    if (twiceArea(points) > GRID) out.push({ points, owners: round.map((h) => h.owner) });
  });
  return out;
}

/** For every half line the one that follows it round the cell on its left: the next clockwise from the way back. */
function following(halves: readonly Half[], count: number): Int32Array {
  const leaving: number[][] = Array.from({ length: count }, () => []);
  halves.forEach((h, i) => {
    leaving[h.from]!.push(i);
  });
  const next = new Int32Array(halves.length);
  for (const ways of leaving) {
    ways.sort((a, b) => halves[a]!.slope - halves[b]!.slope);
    ways.forEach((way, k) => {
      next[halves[way]!.back] = ways[(k + ways.length - 1) % ways.length]!;
    });
  }
  return next;
}

/** The segments cut where they cross or end on each other. */
function split(segments: readonly Segment[]): Segment[] {
  return segments.flatMap((s, i) => {
    const cuts = [0, 1];
    segments.forEach((o, j) => {
      const t = i === j ? null : crossing(s, o);
      if (t !== null && t > END && t < 1 - END) cuts.push(t);
    });
    cuts.sort((a, b) => a - b);
    const at = (t: number): Point => [s[0][0] + (s[1][0] - s[0][0]) * t, s[0][1] + (s[1][1] - s[0][1]) * t];
    return cuts.slice(1).map((t, k): Segment => [at(cuts[k]!), at(t)]);
  });
}

/** The parameter on s, 0 to 1, where another segment touches it. */
function crossing([p, q]: Segment, [r, o]: Segment): number | null {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const ex = o[0] - r[0];
  const ey = o[1] - r[1];
  const cross = dx * ey - dy * ex;
  if (Math.abs(cross) < 1e-12) return null;
  const wx = r[0] - p[0];
  const wy = r[1] - p[1];
  const u = (wx * dy - wy * dx) / cross;
  return u > -END && u < 1 + END ? (wx * ey - wy * ex) / cross : null;
}

function slope(dx: number, dy: number): number {
  const p = dx / (Math.abs(dx) + Math.abs(dy));
  return dy >= 0 ? 1 - p : 3 + p;
}

function twiceArea(points: readonly Point[]): number {
  let sum = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    sum += p[0] * q[1] - q[0] * p[1];
  });
  return sum;
}

/** Points by number, those of one place made one. */
class Nodes {
  readonly points: Point[] = [];
  readonly #cells = new Map<number, number>();

  at(p: Point): number {
    // A point near the border of its square may have been met on the other side of it.
    for (const dx of [0.25, -0.25])
      for (const dy of [0.25, -0.25]) {
        const known = this.#cells.get(key(p[0] / GRID + dx, p[1] / GRID + dy));
        if (known !== undefined) return known;
      }
    const n = this.points.push(p) - 1;
    this.#cells.set(key(p[0] / GRID, p[1] / GRID), n);
    return n;
  }
}

/** One number for a square of the grid, good for coordinates up to 3 m. */
function key(x: number, y: number): number {
  return (Math.round(x) + 2 ** 25) * 2 ** 26 + Math.round(y) + 2 ** 25;
}

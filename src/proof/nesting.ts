import Flatbush from 'flatbush';
import { angleOf } from './angle.js';
import type { Index } from './edge-index.js';
import type { Edges } from './edges.js';

/** What each contour encloses and lies in, by the even-odd rule. */
export interface Nesting {
  /** Signed area of every contour, mm2: positive counter-clockwise. */
  readonly area: Float64Array;
  /** 1 for a hole's boundary (it lies in an odd number of the others), 0 for an outer one. */
  readonly hole: Uint8Array;
  /** +1 where the region lies to the left of a contour as it is travelled, -1 where to the right. */
  readonly insideLeft: Int8Array;
  /** Outer boundaries: how many parts the region has, counting a part in another's hole. */
  readonly parts: number;
}

/** Sweep of an arc, radians, never negative. */
export function sweepOf(e: Edges, i: number): number {
  const r = e.r[i]! < 0 ? -e.r[i]! : e.r[i]!;
  if (r === 0) return 0;
  const half = halfChord(e, i);
  const h = r > half ? Math.sqrt((r - half) * (r + half)) : 0;
  return 2 * angleOf(half, e.wide[i] === 1 ? -h : h);
}

export function halfChord(e: Edges, i: number): number {
  const dx = e.x1[i]! - e.x0[i]!;
  const dy = e.y1[i]! - e.y0[i]!;
  return Math.sqrt(dx * dx + dy * dy) / 2;
}

/** Area between an arc and its chord, positive when the arc turns left. */
function capArea(e: Edges, i: number): number {
  const r = e.r[i]!;
  if (r === 0) return 0;
  const half = halfChord(e, i);
  const h = r * r > half * half ? Math.sqrt(r * r - half * half) : 0;
  const cap = (r * r * sweepOf(e, i)) / 2 - half * (e.wide[i] === 1 ? -h : h);
  return r > 0 ? cap : -cap;
}

/**
 * Whether going from far right to (x, y) crosses edge i an odd number of times. An arc is its chord plus the cap
 * between; a point exactly on the chord counts as on the chord's right-hand (+x, else +y) side in both, so that
 * the two always agree.
 */
function flips(e: Edges, i: number, x: number, y: number): boolean {
  const x0 = e.x0[i]!;
  const y0 = e.y0[i]!;
  const x1 = e.x1[i]!;
  const y1 = e.y1[i]!;
  const cross = (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0);
  const rises = y1 > y0 || (y1 === y0 && x1 < x0);
  const left = rises ? cross > 0 : cross >= 0;
  const spans = y0 <= y ? y < y1 : y1 <= y;
  const chord = spans && left === rises;
  const r = e.r[i]!;
  if (r === 0) return chord;
  const dx = x - e.cx[i]!;
  const dy = y - e.cy[i]!;
  const cap = left === r < 0 && dx * dx + dy * dy < r * r;
  return chord !== cap;
}

/** Is (x, y) inside the region that the edges draw (even-odd rule), leaving out contour `skip`? */
export function inRegion(e: Edges, index: Index, x: number, y: number, skip = -1): boolean {
  if (index.tree === null) return false;
  let inside = false;
  for (const b of index.tree.search(x, y, Infinity, y)) {
    for (let i = index.blocks[b]!; i < index.blocks[b + 1]!; i++) {
      if (index.contourOf[i] !== skip && flips(e, i, x, y)) inside = !inside;
    }
  }
  return inside;
}

export function nest(e: Edges, starts: Int32Array, index: Index): Nesting {
  const n = starts.length - 1;
  const area = new Float64Array(n);
  const hole = new Uint8Array(n);
  const insideLeft = new Int8Array(n);
  if (n === 0) return { area, hole, insideLeft, parts: 0 };
  const tree = new Flatbush(n);
  for (let k = 0; k < n; k++) {
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    let sum = 0;
    const ox = e.x0[starts[k]!] ?? 0;
    const oy = e.y0[starts[k]!] ?? 0;
    for (let i = starts[k]!; i < starts[k + 1]!; i++) {
      sum += ((e.x0[i]! - ox) * (e.y1[i]! - oy) - (e.x1[i]! - ox) * (e.y0[i]! - oy)) / 2 + capArea(e, i);
      x0 = Math.min(x0, index.boxes[4 * i]!);
      y0 = Math.min(y0, index.boxes[4 * i + 1]!);
      x1 = Math.max(x1, index.boxes[4 * i + 2]!);
      y1 = Math.max(y1, index.boxes[4 * i + 3]!);
    }
    area[k] = sum;
    tree.add(x0, y0, x1, y1);
  }
  tree.finish();
  let parts = 0;
  for (let k = 0; k < n; k++) {
    const x = e.x0[starts[k]!]!;
    const y = e.y0[starts[k]!]!;
    // Most contours lie in no other's box, so the search along a ray is seldom needed.
    const lone = !tree.collides(x, y, x, y, (j) => j !== k);
    hole[k] = !lone && inRegion(e, index, x, y, k) ? 1 : 0;
    if (hole[k] === 0) parts++;
    insideLeft[k] = area[k]! > 0 === (hole[k] === 0) ? 1 : -1;
  }
  return { area, hole, insideLeft, parts };
}

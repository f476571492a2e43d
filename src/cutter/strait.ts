import type { Edge } from '../geometry/edge.js';
import { nearestPoints } from '../geometry/nearest.js';
import type { Rest } from '../geometry/roll.js';

/**
 * A narrow place that the ball cannot enter though it is open at more than one end: what lies between two or more
 * balls at rest. Rolled outside a region a strait is a gap, rolled inside it is a limb.
 */
export interface Strait {
  /** Centres of the balls that rest at its mouths. */
  readonly mouths: readonly (readonly [number, number])[];
  /** Its sides: the stretches of boundary the ball cannot reach. */
  readonly sides: readonly (readonly Edge[])[];
}

/** Sorts the rests of a rolled boundary into straits. Corners, spikes and closed slots are none. */
export function straits(rests: readonly Rest[]): Strait[] {
  const open = rests.filter((r) => !r.corner);
  const done = new Set<Rest>();
  const out: Strait[] = [];
  for (const first of open) {
    if (done.has(first)) continue;
    const mouths: (readonly [number, number])[] = [];
    const sides: (readonly Edge[])[] = [];
    let rest: Rest | undefined = first;
    while (rest && !done.has(rest)) {
      done.add(rest);
      mouths.push(rest.centre);
      const side = rest.dropped;
      if (side.length === 0) break;
      sides.push(side);
      const end = side[side.length - 1]!;
      // The side leads to the next mouth: the ball whose second foot is where the side ends.
      rest = nearestFoot(open, end.x1, end.y1);
    }
    out.push({ mouths, sides });
  }
  return out;
}

function nearestFoot(rests: readonly Rest[], x: number, y: number): Rest | undefined {
  return rests.find((r) => Math.abs(r.foot1[0] - x) < 1e-6 && Math.abs(r.foot1[1] - y) < 1e-6);
}

/** The nearest two points of different sides, or null when the strait has but one side. */
export function narrowest(
  s: Strait,
): { p: readonly [number, number]; q: readonly [number, number]; distance: number } | null {
  let best: ReturnType<typeof nearestPoints> = null;
  for (let i = 0; i < s.sides.length; i++)
    for (let j = i + 1; j < s.sides.length; j++) {
      const n = nearestPoints(s.sides[i]!, s.sides[j]!);
      if (n && (!best || n.distance < best.distance)) best = n;
    }
  return best;
}

/** Largest distance between the mouths, mm: how long the strait is. */
export function straitLength(s: Strait): number {
  let longest = 0;
  for (const a of s.mouths)
    for (const b of s.mouths) {
      const dx = a[0] - b[0];
      const dy = a[1] - b[1];
      longest = Math.max(longest, Math.sqrt(dx * dx + dy * dy));
    }
  return longest;
}

/** The mean of the mouths. */
export function straitMiddle(s: Strait): [number, number] {
  let x = 0;
  let y = 0;
  for (const m of s.mouths) {
    x += m[0] / s.mouths.length;
    y += m[1] / s.mouths.length;
  }
  return [x, y];
}

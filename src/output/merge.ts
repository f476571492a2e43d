import { arc, type Edge, line, MAX_SWEEP, splitArc, sweep } from '../geometry/edge.js';
import type { Contour } from '../geometry/region.js';
import { SAME_POINT } from '../geometry/tolerances.js';

/**
 * The contour in the fewest edges that draw it: neighbours on one line become one line, neighbours on one circle one
 * arc as long as it stays within 170 degrees; wider arcs are split. No point moves by more than SAME_POINT.
 */
export function merged(contour: Contour): Contour {
  const start = firstJoint(contour);
  const out: Edge[] = [];
  /** Points given up by the edge now growing; every one must stay on it. */
  let passed: [number, number][] = [];
  for (let i = 0; i < contour.length; i++) {
    const next = contour[(start + i) % contour.length]!;
    const last = out.at(-1);
    const points: [number, number][] = [...passed, [next.x0, next.y0]];
    const one = last ? joined(last, next, points) : null;
    if (one) {
      out[out.length - 1] = one;
      passed = points;
    } else {
      out.push(next);
      passed = [];
    }
  }
  return out.flatMap((e) => {
    const angle = sweep(e);
    return angle > MAX_SWEEP + 1e-9 ? splitArc(e, angle) : [e];
  });
}

/** Where to start so that no run of edges is cut in two by the contour's own start; 0 when every joint merges. */
function firstJoint(contour: Contour): number {
  for (let i = 0; i < contour.length; i++) {
    const e = contour[i]!;
    const before = contour.at(i - 1)!;
    if (!joined(before, e, [[e.x0, e.y0]])) return i;
  }
  return 0;
}

/** Both edges as one, or null when they do not lie on one line or one circle. */
function joined(a: Edge, b: Edge, between: readonly (readonly [number, number])[]): Edge | null {
  if (a.r === 0 && b.r === 0) return joinedLine(a, b, between);
  if (a.r === 0 || b.r === 0) return null;
  const same =
    Math.abs(a.r - b.r) <= SAME_POINT &&
    Math.abs(a.cx - b.cx) <= SAME_POINT &&
    Math.abs(a.cy - b.cy) <= SAME_POINT;
  if (!same || sweep(a) + sweep(b) > MAX_SWEEP + 1e-9) return null;
  return arc(a.x0, a.y0, b.x1, b.y1, a.cx, a.cy, a.r);
}

function joinedLine(a: Edge, b: Edge, between: readonly (readonly [number, number])[]): Edge | null {
  const dx = b.x1 - a.x0;
  const dy = b.y1 - a.y0;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length <= SAME_POINT) return null;
  // Travel must never turn back, or a spike would vanish.
  if ((a.x1 - a.x0) * (b.x1 - b.x0) + (a.y1 - a.y0) * (b.y1 - b.y0) <= 0) return null;
  for (const [x, y] of between) {
    const off = Math.abs((x - a.x0) * dy - (y - a.y0) * dx) / length;
    if (off > SAME_POINT) return null;
  }
  return line(a.x0, a.y0, b.x1, b.y1);
}

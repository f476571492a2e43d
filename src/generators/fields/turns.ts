import type { Vector } from '../../geometry/bezier.js';
import { closedChain } from '../../geometry/chain.js';
import { bulged, type Edge, halveTangent, line } from '../../geometry/edge.js';
import { SAME_POINT } from '../../geometry/tolerances.js';

/** A path through points as straight lines, with a sharp corner wherever it turns. A closed path names its start once. */
export function mitred(points: readonly Vector[], closed: boolean): Edge[] {
  const n = points.length;
  const kept = points.filter((p, i) => {
    if (!closed && (i === 0 || i === n - 1)) return true;
    return Math.abs(turnAt(points[(i + n - 1) % n]!, p, points[(i + 1) % n]!).cross) > STRAIGHT;
  });
  return kept.flatMap((p, i) => {
    const q = kept[i + 1] ?? (closed ? kept[0] : undefined);
    return q ? [line(p[0], p[1], q[0], q[1])] : [];
  });
}

/**
 * The same path with every corner rounded as widely as its two steps let it: tangent at the middles of equal steps.
 */
export function rounded(points: readonly Vector[], closed: boolean): Edge[] {
  const n = points.length;
  const out: Edge[] = [];
  const straight = (p: Vector, q: Vector): void => {
    if (Math.abs(p[0] - q[0]) + Math.abs(p[1] - q[1]) < SAME_POINT) return;
    const last = out[out.length - 1];
    // Steps in line are one line.
    if (last && last.r === 0 && Math.abs(turnAt([last.x0, last.y0], p, q).cross) < STRAIGHT)
      out[out.length - 1] = line(last.x0, last.y0, q[0], q[1]);
    else out.push(line(p[0], p[1], q[0], q[1]));
  };
  let at = closed ? middle(points[n - 1]!, points[0]!) : points[0]!;
  for (let i = closed ? 0 : 1; i < (closed ? n : n - 1); i++) {
    const before = points[(i + n - 1) % n]!;
    const p = points[i]!;
    const after = points[(i + 1) % n]!;
    const { cross, dot } = turnAt(before, p, after);
    if (Math.abs(cross) < STRAIGHT) {
      straight(at, p);
      at = p;
      continue;
    }
    const reach = Math.min(distance(before, p), distance(p, after)) / 2;
    const a = towards(p, before, reach);
    const b = towards(p, after, reach);
    straight(at, a);
    // Bulge is tan(turn / 4), and cross / (1 + dot) is tan(turn / 2).
    out.push(bulged(a[0], a[1], b[0], b[1], halveTangent(cross / (1 + dot))));
    at = b;
  }
  straight(at, closed ? middle(points[n - 1]!, points[0]!) : points[n - 1]!);
  return closed ? closedChain(out) : out;
}

/** Sine of a turn under which a path runs straight on. */
const STRAIGHT = 1e-9;

/** Sine and cosine of the turn at q on the way from p to r. */
function turnAt(p: Vector, q: Vector, r: Vector): { cross: number; dot: number } {
  const size = distance(p, q) * distance(q, r);
  const [ax, ay, bx, by] = [q[0] - p[0], q[1] - p[1], r[0] - q[0], r[1] - q[1]];
  return { cross: (ax * by - ay * bx) / size, dot: (ax * bx + ay * by) / size };
}

function distance(p: Vector, q: Vector): number {
  return Math.sqrt((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]));
}

function middle(p: Vector, q: Vector): Vector {
  return [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
}

function towards(p: Vector, q: Vector, by: number): Vector {
  const k = by / distance(p, q);
  return [p[0] + k * (q[0] - p[0]), p[1] + k * (q[1] - p[1])];
}

import type { Vector } from './bezier.js';

/** The convex hull of points, counter-clockwise (A. Andrew, Information Processing Letters 9, 1979). */
export function hull(points: readonly Vector[]): Vector[] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const half = (along: readonly Vector[]): Vector[] => {
    const out: Vector[] = [];
    for (const p of along) {
      while (out.length > 1 && !turnsLeft(out[out.length - 2]!, out[out.length - 1]!, p)) out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function turnsLeft(p: Vector, q: Vector, r: Vector): boolean {
  return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]) > 1e-12;
}

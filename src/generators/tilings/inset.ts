import type { Point } from './tilings.js';

/** A convex polygon (counter-clockwise) with every side moved in by d mm, or null when nothing is left. */
export function insetPolygon(points: readonly Point[], d: number): Point[] | null {
  const n = points.length;
  const sides = points.map((p, i) => {
    const q = points[(i + 1) % n]!;
    const dx = q[0] - p[0];
    const dy = q[1] - p[1];
    const l = Math.sqrt(dx * dx + dy * dy);
    return { x: p[0] - (dy / l) * d, y: p[1] + (dx / l) * d, dx: dx / l, dy: dy / l };
  });
  const corners = sides.map((s, i): Point => {
    const before = sides[(i + n - 1) % n]!;
    const cross = before.dx * s.dy - before.dy * s.dx;
    const t = ((s.x - before.x) * s.dy - (s.y - before.y) * s.dx) / cross;
    return [before.x + before.dx * t, before.y + before.dy * t];
  });
  const sound = corners.every((p, i) => {
    const q = corners[(i + 1) % n]!;
    return (q[0] - p[0]) * sides[i]!.dx + (q[1] - p[1]) * sides[i]!.dy > 1e-6;
  });
  return sound ? corners : null;
}

/** Radius of the circle that touches every side of a regular polygon, mm. */
export function apothem(points: readonly Point[]): number {
  const [p, q] = [points[0]!, points[1]!];
  const n = points.length;
  const x = points.reduce((sum, o) => sum + o[0], 0) / n;
  const y = points.reduce((sum, o) => sum + o[1], 0) / n;
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  return (dx * (y - p[1]) - dy * (x - p[0])) / Math.sqrt(dx * dx + dy * dy);
}

import type { LaidTile, Point } from '../../../src/generators/tilings/tile.js';

/** Signed area, positive counter-clockwise. */
export function polygonArea(points: readonly Point[]): number {
  return (
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length];
      return sum + x * v - u * y;
    }, 0) / 2
  );
}

/** How many of the tiles have a point inside them: crossings of a ray, so any simple polygon will do. */
export function covering(tiles: readonly Pick<LaidTile, 'points'>[], x: number, y: number): number {
  return tiles.filter(({ points }) => {
    const crossed = points.filter(([px, py], i) => {
      const [u, v] = points[(i + 1) % points.length];
      return py > y !== v > y && x < px + ((u - px) * (y - py)) / (v - py);
    });
    return crossed.length % 2 === 1;
  }).length;
}

export function gap(p: Point, q: Point): number {
  return Math.hypot(q[0] - p[0], q[1] - p[1]);
}

/** Interior angles of a polygon, degrees, in order. */
export function angles(points: readonly Point[]): number[] {
  const n = points.length;
  return points.map((p, i) => {
    const a = points[(i + n - 1) % n];
    const b = points[(i + 1) % n];
    const turn = Math.atan2(a[1] - p[1], a[0] - p[0]) - Math.atan2(b[1] - p[1], b[0] - p[0]);
    return ((turn * 180) / Math.PI + 720) % 360;
  });
}

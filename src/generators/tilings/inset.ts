import { intersect } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { type Contour, contourArea, perimeter, polygon, type Region } from '../../geometry/region.js';
import type { Point } from './tile.js';

/** What is left of a region counts as nothing below this width, mm: moved in by just its depth, it may be a line. */
const NO_WIDTH = 0.001;

/**
 * A tile (counter-clockwise simple polygon) with every side moved in by d mm: corners stay sharp, those that turn in
 * too. Where that would make sides vanish or cross, what a disc of radius d leaves, which may be nothing or several.
 */
export function insetTile(points: readonly Point[], d: number): Region {
  if (d === 0) return { contours: [polygon(points)] };
  const moved = movedIn(points, d);
  if (moved) return { contours: [polygon(moved)] };
  return shrunk({ contours: [polygon(points)] }, d);
}

/** What a disc of radius d leaves of a region, without parts that are as good as lines. */
function shrunk(region: Region, d: number): Region {
  const { contours } = offset(region, -d);
  // Twice the area over the length is about the width of a narrow strip.
  const wide = (c: Contour): boolean =>
    Math.abs(contourArea(c)) > (NO_WIDTH / 2) * perimeter({ contours: [c] });
  return { contours: contours.filter(wide) };
}

/**
 * What lies within the field of a tile that its edge cuts: less parts narrower than `least` mm, with corners rounded
 * to half of that. `least` 0 leaves everything.
 */
export function cutOff(tile: Region, field: Region, least: number): Region {
  const within = intersect(tile, field);
  return least === 0 ? within : offset(shrunk(within, least / 2), least / 2);
}

/** Half the width at which nothing is left of any of the tiles, mm. */
export function depth(tiles: readonly (readonly Point[])[]): number {
  let most = 0;
  for (const points of tiles) {
    let lo = most;
    let hi = Math.max(...points.map((p) => distance(p, points[0]!)));
    if (insetTile(points, lo).contours.length === 0) continue;
    while (hi - lo > 1e-4) {
      const mid = (lo + hi) / 2;
      if (insetTile(points, mid).contours.length > 0) lo = mid;
      else hi = mid;
    }
    most = lo;
  }
  return most;
}

export function distance(p: Point, q: Point): number {
  return Math.sqrt((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]));
}

/** The corners of the tile with its sides moved in, mitred; null when a side vanishes or two cross. */
function movedIn(points: readonly Point[], d: number): Point[] | null {
  const n = points.length;
  const sides = points.map((p, i) => {
    const q = points[(i + 1) % n]!;
    const l = distance(p, q);
    const dx = (q[0] - p[0]) / l;
    const dy = (q[1] - p[1]) / l;
    return { x: p[0] - dy * d, y: p[1] + dx * d, dx, dy };
  });
  let convex = true;
  const corners = sides.map((s, i): Point => {
    const before = sides[(i + n - 1) % n]!;
    const cross = before.dx * s.dy - before.dy * s.dx;
    if (cross < 0) convex = false;
    // Sides in line with each other meet where they did.
    if (Math.abs(cross) < 1e-9) return [s.x, s.y];
    const t = ((s.x - before.x) * s.dy - (s.y - before.y) * s.dx) / cross;
    return [before.x + before.dx * t, before.y + before.dy * t];
  });
  const kept = corners.every((p, i) => {
    const q = corners[(i + 1) % n]!;
    return (q[0] - p[0]) * sides[i]!.dx + (q[1] - p[1]) * sides[i]!.dy > 1e-6;
  });
  return kept && (convex || !crossesItself(corners)) ? corners : null;
}

function crossesItself(points: readonly Point[]): boolean {
  const n = points.length;
  const side = (i: number, j: number): number => {
    const [p, q, o] = [points[i]!, points[(i + 1) % n]!, points[j]!];
    return (q[0] - p[0]) * (o[1] - p[1]) - (q[1] - p[1]) * (o[0] - p[0]);
  };
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (side(i, j) * side(i, (j + 1) % n) <= 0 && side(j, i) * side(j, (i + 1) % n) <= 0) return true;
    }
  return false;
}

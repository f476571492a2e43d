import Flatbush from 'flatbush';
import type { Vector } from '../../geometry/bezier.js';
import { bounds, contains, flatten, type Region } from '../../geometry/region.js';

/**
 * Voronoi cells. A cell is what is left of a polygon when everything nearer to another site is cut away, the nearest
 * sites first. Once the next site is more than twice as far as the farthest corner left, no other can cut anything.
 */

/** Points of a closed polygon in order; holes run clockwise. */
export type Ring = readonly Vector[];

/** Corners nearer to each other than this are one, mm. */
const ONE_CORNER = 1e-6;

/** A polygon's flattened curves stray by no more than this, mm; only the relaxing of sites sees it. */
const CHORD = 0.05;

/** Every site's cell within the rings, in the order of the sites. */
export function voronoiCells(sites: readonly Vector[], within: readonly Ring[]): Ring[][] {
  const index = new Flatbush(sites.length);
  for (const [x, y] of sites) index.add(x, y, x, y);
  index.finish();
  return sites.map((site, k) => cell(sites, k, site, index, within));
}

function cell(
  sites: readonly Vector[],
  k: number,
  site: Vector,
  index: Flatbush,
  within: readonly Ring[],
): Ring[] {
  let rings = within;
  let done = 1;
  for (let ask = 16; ; ask *= 2) {
    // The site itself comes first, at distance 0.
    const near = index.neighbors(site[0], site[1], ask);
    for (const j of near.slice(done)) {
      if (j === k) continue;
      const other = sites[j]!;
      const dx = other[0] - site[0];
      const dy = other[1] - site[1];
      const apart = dx * dx + dy * dy;
      if (apart > 4 * farthest(rings, site)) return cleaned(rings);
      const middle = (dx * (other[0] + site[0]) + dy * (other[1] + site[1])) / 2;
      rings = rings.map((r) => cut(r, dx, dy, middle));
    }
    done = near.length;
    if (near.length < ask) return cleaned(rings);
  }
}

/** What of a polygon has nx x + ny y <= d (Sutherland and Hodgman, 1974, one side of it). Area and centre are exact. */
function cut(ring: Ring, nx: number, ny: number, d: number): Ring {
  const out: Vector[] = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const a = nx * p[0] + ny * p[1] - d;
    const b = nx * q[0] + ny * q[1] - d;
    if (a <= 0) out.push(p);
    if (a < 0 !== b < 0 && a !== 0 && b !== 0) {
      const t = a / (a - b);
      out.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
    }
  });
  return out;
}

function farthest(rings: readonly Ring[], [x, y]: Vector): number {
  let most = 0;
  for (const r of rings)
    for (const p of r) most = Math.max(most, (p[0] - x) * (p[0] - x) + (p[1] - y) * (p[1] - y));
  return most;
}

function cleaned(rings: readonly Ring[]): Ring[] {
  const apart = (p: Vector, q: Vector): boolean => Math.abs(p[0] - q[0]) + Math.abs(p[1] - q[1]) > ONE_CORNER;
  return rings
    .map((r) => r.filter((p, i) => apart(p, r[(i + r.length - 1) % r.length]!)))
    .filter((r) => r.length > 2);
}

/** Area, mm2, and centre of mass of a cell. */
export function massOf(rings: readonly Ring[]): { area: number; x: number; y: number } {
  let area = 0;
  let sx = 0;
  let sy = 0;
  for (const r of rings)
    r.forEach(([px, py], i) => {
      const [qx, qy] = r[(i + 1) % r.length]!;
      const triangle = (px * qy - qx * py) / 2;
      area += triangle;
      sx += (triangle * (px + qx)) / 3;
      sy += (triangle * (py + qy)) / 3;
    });
  return { area, x: sx / area, y: sy / area };
}

/** The contours of a field as polygons. */
export function flattened(field: Region): Ring[] {
  return field.contours.map((c) => flatten(c, CHORD));
}

/** `count` sites strewn over a field, by `chance` in [0, 1). */
export function strewn(field: Region, count: number, chance: () => number): Vector[] {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const out: Vector[] = [];
  while (out.length < count) {
    const x = minX + (maxX - minX) * chance();
    const y = minY + (maxY - minY) * chance();
    if (contains(field, x, y)) out.push([x, y]);
  }
  return out;
}

/**
 * Sites moved to the centres of their cells, `rounds` times over (S. Lloyd, "Least squares quantization in PCM", IEEE
 * Transactions on Information Theory 28, 1982): each round makes the cells more even.
 */
export function relaxed(sites: readonly Vector[], field: Region, rounds: number): readonly Vector[] {
  const within = flattened(field);
  let now = sites;
  for (let k = 0; k < rounds; k++)
    now = voronoiCells(now, within).map((cell, i): Vector => {
      const { x, y } = massOf(cell);
      // The centre of a cell that reaches round an opening may lie in it.
      return contains(field, x, y) ? [x, y] : now[i]!;
    });
  return now;
}

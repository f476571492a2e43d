import { describe, expect, it } from 'vitest';
import { massOf, type Ring, relaxed, strewn, voronoiCells } from '../../../src/generators/fields/cells.js';
import { random } from '../../../src/generators/random.js';
import type { Vector } from '../../../src/geometry/bezier.js';
import { area, bounds, circle, contains, polygon, type Region } from '../../../src/geometry/region.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import { artworkWith, expectSound, outlineWith } from '../../support/artwork.js';

const box: Ring = [
  [-40, -30],
  [40, -30],
  [40, 30],
  [-40, 30],
];
const field: Region = { contours: [polygon(box)] };

/**
 * Definition (G. Voronoi, Journal fuer die reine und angewandte Mathematik 133, 1908): a site's cell holds the places
 * nearer to it than to any other. Checked by brute force.
 */
describe('Voronoi cells', () => {
  const sites = strewn(field, 60, random(3));
  const cells = voronoiCells(sites, [box]);

  it('hold the places nearest to their own site, over all places of a grid', () => {
    let seen = 0;
    for (let x = -39.3; x < 40; x += 1.1)
      for (let y = -29.3; y < 30; y += 1.1) {
        const nearest = nearestTo([x, y], sites);
        const home = cells.findIndex((c) => contains({ contours: c.map(polygon) }, x, y));
        expect(distance(sites[home]!, [x, y])).toBeLessThan(distance(sites[nearest]!, [x, y]) + 1e-6);
        seen++;
      }
    expect(seen).toBeGreaterThan(3000);
  });

  it('cover the field without overlap: their areas sum to its own', () => {
    const total = cells.reduce((sum, c) => sum + massOf(c).area, 0);
    expect(total).toBeCloseTo(80 * 60, 6);
    expect(cells.every((c) => c.length === 1 && massOf(c).area > 0)).toBe(true);
  });

  it('are found for a few sites and for sites in one line too', () => {
    const two = voronoiCells([[-10, 0], [10, 0]], [box]); // biome-ignore format: two sites
    expect(two.map((c) => massOf(c).area)).toEqual([2400, 2400]);
    const row = voronoiCells([[-20, 0], [0, 0], [20, 0]], [box]); // biome-ignore format: three sites
    row.forEach((c, i) => {
      expect(massOf(c).area).toBeCloseTo([1800, 1200, 1800][i]!, 9);
    });
  });
});

/** Lloyd 1982: no round raises the sum over all cells of the second moment about the site. */
describe('relaxing', () => {
  it('lowers the energy, round after round', () => {
    const start = strewn(field, 40, random(8));
    const energies = [0, 1, 2, 5, 10, 20].map((k) => energy(relaxed(start, field, k)));
    for (let i = 1; i < energies.length; i++) expect(energies[i]!).toBeLessThan(energies[i - 1]!);
    // Not below that of as many regular hexagons, the least there is (L. Fejes Toth's moment theorem, 1953, from memory).
    const a = (80 * 60) / 40;
    expect(energies.at(-1)!).toBeGreaterThan((40 * a * a * 5) / (18 * Math.sqrt(3)));
    expect(energies.at(-1)!).toBeLessThan(1.12 * ((40 * a * a * 5) / (18 * Math.sqrt(3))));
  });

  it('keeps sites in the wood of a ring', () => {
    const ring: Region = { contours: [circle(0, 0, 60), circle(0, 0, 30).map(flipped).reverse()] };
    const sites = relaxed(strewn(ring, 12, random(2)), ring, 6);
    expect(sites.every(([x, y]) => contains(ring, x, y))).toBe(true);
  });
});

describe('the generator', () => {
  const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

  it('draws every cell with walls of the width asked', () => {
    const { pieces } = artworkWith('voronoi', { wall: 4.4 }, lid);
    expect(pieces).toHaveLength(26);
    for (const p of pieces) expectSound(p.region);
    const total = pieces.reduce((sum, p) => sum + area(p.region), 0);
    // Walls and cells share the 88 mm square; the walls' share lies between that of squares and of hexagons of the size.
    expect(total / (88 * 88)).toBeGreaterThan(0.5);
    expect(total / (88 * 88)).toBeLessThan(0.72);
  });

  it('draws alike for a seed and otherwise for another', () => {
    const drawn = (seed: number): string => JSON.stringify(artworkWith('voronoi', { seed }, lid));
    expect(drawn(5)).toBe(drawn(5));
    expect(drawn(5)).not.toBe(drawn(6));
  });

  it('leaves out what is not whole', () => {
    const { pieces } = artworkWith('voronoi', { fill: 'whole' }, lid);
    expect(pieces.length).toBeGreaterThan(8);
    for (const p of pieces) {
      const b = bounds(p.region.contours);
      expect(Math.max(b.maxX, b.maxY, -b.minX, -b.minY)).toBeLessThanOrEqual(44);
    }
  });

  it('refuses walls that leave nothing, with the width that would do', () => {
    expect(() => artworkWith('voronoi', { wall: 60 }, lid)).toThrow(BadInput);
    expect(() => artworkWith('voronoi', { wall: 60 }, lid)).toThrow(
      /pattern\.wall: 60 mm .* less than [\d.]+ mm/,
    );
    expect(() => artworkWith('voronoi', { plug: 'straps', strap: 50 }, lid)).toThrow(/pattern\.strap/);
    expect(() => artworkWith('voronoi', { cells: 2, fill: 'whole', relax: 0 }, lid)).toThrow(Refusal);
  });
});

function flipped(e: ReturnType<typeof circle>[number]): typeof e {
  return { ...e, x0: e.x1, y0: e.y1, x1: e.x0, y1: e.y0, r: -e.r };
}

function distance(p: Vector, q: Vector): number {
  return Math.hypot(p[0] - q[0], p[1] - q[1]);
}

function nearestTo(p: Vector, sites: readonly Vector[]): number {
  return sites.reduce((best, s, i) => (distance(p, s) < distance(p, sites[best]!) ? i : best), 0);
}

/** By a grid of places, each with its nearest site: shares no code with the cells. */
function energy(sites: readonly Vector[]): number {
  const step = 0.5;
  let sum = 0;
  for (let x = -40 + step / 2; x < 40; x += step)
    for (let y = -30 + step / 2; y < 30; y += step) {
      let least = Number.POSITIVE_INFINITY;
      for (const [sx, sy] of sites) least = Math.min(least, (sx - x) * (sx - x) + (sy - y) * (sy - y));
      sum += least * step * step;
    }
  return sum;
}

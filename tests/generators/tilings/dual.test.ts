import { describe, expect, it } from 'vitest';
import { dualOf, unitDual } from '../../../src/generators/tilings/dual.js';
import { lay } from '../../../src/generators/tilings/lay.js';
import { shaded } from '../../../src/generators/tilings/shades.js';
import type { Point } from '../../../src/generators/tilings/tile.js';
import { uniformTilings } from '../../../src/generators/tilings/uniform.js';
import { artworkWith, outlineWith } from '../../support/artwork.js';
import { angles, covering, gap, polygonArea } from './geometry.js';

const box = { minX: -30, minY: -30, maxX: 30, maxY: 30 };

/**
 * The eleven Laves tilings: a corner of a tile lies where n tiles meet at 360 / n degrees, n the sides of the tile of
 * the uniform tiling there (Grunbaum and Shephard, Tilings and Patterns, 1987, section 2.7). Names and edge ratios
 * from memory. Area per tile: area per vertex of the uniform tiling, pi / 4 over the circle density that MathWorld's
 * "Circle Packing" prints, or n-gon areas n / (4 tan(pi / n)) over n at every corner by hand.
 */
const known: Record<string, { angles: number[]; area: number; edges: number[] }> = {
  '3^6': { angles: [120, 120, 120, 120, 120, 120], area: 0.866025, edges: [1, 1, 1, 1, 1, 1] },
  '4^4': { angles: [90, 90, 90, 90], area: 1, edges: [1, 1, 1, 1] },
  '6^3': { angles: [60, 60, 60], area: 1.299038, edges: [1, 1, 1] },
  // Tetrakis square, triakis triangular, kisrhombille (90-60-30).
  '4.8.8': { angles: [45, 45, 90], area: 1.457107, edges: [Math.SQRT1_2, Math.SQRT1_2, 1] },
  '3.12.12': { angles: [30, 30, 120], area: 2.010363, edges: [0.57735, 0.57735, 1] },
  '4.6.12': { angles: [30, 60, 90], area: 1.616025, edges: [0.5, 0.866025, 1] },
  // Rhombille and the kites of the deltoidal trihexagonal tiling.
  '3.6.3.6': { angles: [60, 60, 120, 120], area: 1.154701, edges: [1, 1, 1, 1] },
  '3.4.6.4': { angles: [60, 90, 90, 120], area: 1.07735, edges: [0.57735, 0.57735, 1, 1] },
  // Pentagons: prismatic, Cairo (four long edges, one sqrt 3 - 1 of them) and floret (two edges twice the others).
  '3^3.4^2': {
    angles: [90, 90, 120, 120, 120],
    area: 0.933013,
    edges: [0.57735, 0.57735, 0.788675, 0.788675, 1],
  },
  '3^2.4.3.4': {
    angles: [90, 90, 120, 120, 120],
    area: 0.933013,
    edges: [0.732051, 1, 1, 1, 1],
  },
  '3^4.6': { angles: [60, 120, 120, 120, 120], area: 1.010363, edges: [0.5, 0.5, 0.5, 1, 1] },
};

describe('dual tilings', () => {
  it('has a row here for each', () => {
    expect(Object.keys(known).sort()).toEqual(uniformTilings.map((t) => t.name).sort());
  });

  for (const t of uniformTilings) {
    const fact = known[t.name];

    it(`${t.name}: every tile has the angles, the area and the edge ratios of its Laves tile`, () => {
      for (const { points } of dualOf(t).cell) {
        const sorted = angles(points).sort((a, b) => a - b);
        sorted.forEach((a, i) => {
          expect(a).toBeCloseTo(fact.angles[i], 6);
        });
        expect(sorted).toHaveLength(fact.angles.length);
        expect(polygonArea(points)).toBeCloseTo(fact.area, 6);
      }
      for (const { points } of unitDual(t).cell) {
        const edges = points.map((p, i) => gap(p, points[(i + 1) % points.length])).sort((a, b) => a - b);
        edges.forEach((e, i) => {
          expect(e).toBeCloseTo(fact.edges[i], 5);
        });
      }
    });

    it(`${t.name}: each edge crosses one edge of the uniform tiling square, at its middle`, () => {
      const primal = lay(t, { edge: 1, turn: 0, centre: 'tile' }, { minX: -9, minY: -9, maxX: 9, maxY: 9 });
      // lay puts the first tile's middle on (0, 0); the dual's cell is given with that tile where the data has it.
      const first = t.cell[0].points;
      const ox = first.reduce((s, p) => s + p[0], 0) / first.length;
      const oy = first.reduce((s, p) => s + p[1], 0) / first.length;
      const edges = primal.flatMap(({ points }) =>
        points.map((p, i): [Point, Point] => [p, points[(i + 1) % points.length]]),
      );
      for (const { points } of dualOf(t).cell)
        points.forEach((p, i) => {
          const q = points[(i + 1) % points.length];
          const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
          const crossed = edges.filter(([u, v]) => {
            const mx = (u[0] + v[0]) / 2 + ox - p[0];
            const my = (u[1] + v[1]) / 2 + oy - p[1];
            const along = (mx * dx + my * dy) / (dx * dx + dy * dy);
            return Math.abs(mx * dy - my * dx) < 1e-9 && along > 0 && along < 1;
          });
          // Once from each side.
          expect(crossed).toHaveLength(2);
          for (const [u, v] of crossed) expect((v[0] - u[0]) * dx + (v[1] - u[1]) * dy).toBeCloseTo(0, 9);
        });
    });

    it(`${t.name}: the tiles cover the plane once`, () => {
      const dual = unitDual(t);
      const [[ax, ay], [bx, by]] = dual.steps;
      expect(dual.cell.reduce((sum, c) => sum + polygonArea(c.points), 0)).toBeCloseTo(ax * by - ay * bx, 9);
      const tiles = lay(dual, { edge: 9, turn: 0.3, centre: 'vertex' }, box);
      for (let x = -29.7; x < 30; x += 3.31)
        for (let y = -29.9; y < 30; y += 3.77) expect(covering(tiles, x, y)).toBe(1);
    });
  }

  it('shades tiles so that none meets its own along an edge, where that is possible', () => {
    // Two shades are possible where every corner has an even number of tiles: of the duals, where all tiles of the
    // uniform tiling have an even number of sides.
    const possible = uniformTilings.filter((t) => shaded(unitDual(t))).map((t) => t.name);
    expect(possible.sort()).toEqual(['4.6.12', '4.8.8', '4^4', '6^3']);
    for (const name of possible) {
      const tiles = lay(
        shaded(unitDual(uniformTilings.find((t) => t.name === name)!))!,
        { edge: 9, turn: 0, centre: 'tile' },
        box,
      );
      const shade = new Map<string, string>();
      const key = (p: Point, q: Point): string =>
        [p, q]
          .map(([x, y]) => `${(x + 1e-9).toFixed(4)},${(y + 1e-9).toFixed(4)}`)
          .join(' ')
          .replace(/-0\.0000/g, '0.0000');
      for (const { points, kind } of tiles)
        points.forEach((p, i) => {
          shade.set(key(p, points[(i + 1) % points.length]), kind);
        });
      let met = 0;
      for (const { points, kind } of tiles)
        points.forEach((p, i) => {
          const other = shade.get(key(points[(i + 1) % points.length], p));
          if (other === undefined) return;
          met++;
          expect(other).not.toBe(kind);
        });
      expect(met).toBeGreaterThan(50);
    }
  });

  it('says which tiles may be let in', () => {
    const draw = (dual: string): unknown =>
      artworkWith('dual-tiling', { dual, plug: 'tiles', tiles: 'dark' }, outlineWith('circle'));
    expect(() => draw('3.4.6.4')).toThrow('pattern.tiles: this tiling has none of kind dark; use all');
    expect(draw('6^3')).toBeDefined();
  });
});

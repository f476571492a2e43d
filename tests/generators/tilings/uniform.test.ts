import { describe, expect, it } from 'vitest';
import { lay } from '../../../src/generators/tilings/lay.js';
import { uniformTilings } from '../../../src/generators/tilings/uniform.js';

const box = { minX: -30, minY: -30, maxX: 30, maxY: 30 };

function shoelace(points: readonly (readonly [number, number])[]): number {
  return (
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length];
      return sum + x * v - u * y;
    }, 0) / 2
  );
}

/**
 * Tiles by number of sides in a period, relative; density of circles on the corners, pi / 4 over area per corner; share
 * of area by number of sides. Densities of 3^6, 4^4, 6^3, 3^3.4^2 and 3^2.4.3.4: Williams, The Geometrical Foundation
 * of Natural Structure, 1979, p. 49, as MathWorld's "Circle Packing" has it. The rest by hand: n-gons have the area
 * n / (4 tan(pi / n)), and one that meets a corner belongs to it by 1 / n.
 */
const known: Record<
  string,
  { density: number; ratio: Record<number, number>; share: Record<number, number> }
> = {
  '3^6': { density: 0.9069, ratio: { 3: 1 }, share: { 3: 1 } },
  '4^4': { density: 0.7854, ratio: { 4: 1 }, share: { 4: 1 } },
  '6^3': { density: 0.6046, ratio: { 6: 1 }, share: { 6: 1 } },
  '4.8.8': { density: 0.539, ratio: { 4: 1, 8: 1 }, share: { 4: 0.1716, 8: 0.8284 } },
  '3^4.6': { density: 0.7773, ratio: { 3: 8, 6: 1 }, share: { 3: 0.5714, 6: 0.4286 } },
  '3^3.4^2': { density: 0.8418, ratio: { 3: 2, 4: 1 }, share: { 3: 0.4641, 4: 0.5359 } },
  '3^2.4.3.4': { density: 0.8418, ratio: { 3: 2, 4: 1 }, share: { 3: 0.4641, 4: 0.5359 } },
  '3.4.6.4': {
    density: 0.729,
    ratio: { 3: 2, 4: 3, 6: 1 },
    share: { 3: 0.134, 4: 0.4641, 6: 0.4019 },
  },
  '3.12.12': { density: 0.3907, ratio: { 3: 2, 12: 1 }, share: { 3: 0.0718, 12: 0.9282 } },
  '4.6.12': {
    density: 0.486,
    ratio: { 4: 3, 6: 2, 12: 1 },
    share: { 4: 0.1547, 6: 0.2679, 12: 0.5774 },
  },
  '3.6.3.6': { density: 0.6802, ratio: { 3: 2, 6: 1 }, share: { 3: 0.25, 6: 0.75 } },
};

describe('uniform tilings', () => {
  it('has a published row here for each', () => {
    expect(uniformTilings.map((t) => t.name).sort()).toEqual(Object.keys(known).sort());
  });

  for (const t of uniformTilings) {
    const fact = known[t.name];

    it(`${t.name}: the named tiles meet round every corner`, () => {
      const tiles = lay(t, { edge: 4, turn: 0.4, centre: 'tile' }, box);
      const corners = new Map<string, { sides: number; angle: number }[]>();
      for (const { points } of tiles) {
        const sides = points.length;
        const x = points.reduce((s, p) => s + p[0], 0) / points.length;
        const y = points.reduce((s, p) => s + p[1], 0) / points.length;
        for (const p of points) {
          if (Math.abs(p[0]) > 16 || Math.abs(p[1]) > 16) continue;
          const key = `${Math.round(p[0] * 1e4)},${Math.round(p[1] * 1e4)}`;
          corners.set(key, [...(corners.get(key) ?? []), { sides, angle: Math.atan2(y - p[1], x - p[0]) }]);
        }
      }
      expect(corners.size).toBeGreaterThan(20);
      const named = t.name.split('.').flatMap((part) => {
        const [sides, times = '1'] = part.split('^');
        return Array(Number(times)).fill(sides);
      });
      // Corners may be each other's mirror images.
      const turns = [named, named.toReversed()].flatMap((way) =>
        way.map((_, i) => [...way.slice(i), ...way.slice(0, i)].join('.')),
      );
      for (const around of corners.values()) {
        around.sort((a, b) => a.angle - b.angle);
        expect(turns).toContain(around.map((a) => a.sides).join('.'));
        const angles = around.reduce((sum, a) => sum + 180 - 360 / a.sides, 0);
        expect(angles).toBeCloseTo(360, 9);
      }
    });

    it(`${t.name}: numbers, shares and density of the published table`, () => {
      const [[ax, ay], [bx, by]] = t.steps;
      const cell = ax * by - ay * bx;
      const areas = t.cell.map((tile) => shoelace(tile.points));
      expect(areas.reduce((a, b) => a + b)).toBeCloseTo(cell, 12);
      const count = (n: string): number => t.cell.filter((c) => c.points.length === Number(n)).length;
      const rarest = Math.min(...Object.keys(fact.ratio).map(count));
      for (const [n, ratio] of Object.entries(fact.ratio)) expect(count(n) / rarest).toBe(ratio);
      for (const [n, share] of Object.entries(fact.share)) {
        const sum = areas.reduce((s, a, i) => s + (t.cell[i].points.length === Number(n) ? a : 0), 0);
        expect(sum / cell).toBeCloseTo(share, 4);
      }
      // A corner belongs by 1 / n of a tile's corners to each tile: corners in a cell = sum of angles / 360.
      const corners = t.cell.reduce((sum, { points: { length: n } }) => sum + (n * (180 - 360 / n)) / 360, 0);
      expect((Math.PI / 4 / cell) * corners).toBeCloseTo(fact.density, 4);
    });

    it(`${t.name}: tiles have the edge asked for, no two the same name, and cover the box once`, () => {
      const tiles = lay(t, { edge: 7, turn: -0.2, centre: 'edge' }, box);
      expect(new Set(tiles.map((p) => p.name)).size).toBe(tiles.length);
      for (const { points } of tiles)
        points.forEach(([x, y], i) => {
          const [u, v] = points[(i + 1) % points.length];
          expect(Math.sqrt((u - x) ** 2 + (v - y) ** 2)).toBeCloseTo(7, 9);
        });
      const within = (x: number, y: number): number =>
        tiles.filter(({ points }) =>
          points.every(([px, py], i) => {
            const [u, v] = points[(i + 1) % points.length];
            return (u - px) * (y - py) - (v - py) * (x - px) > 0;
          }),
        ).length;
      for (let x = -29.7; x < 30; x += 2.31)
        for (let y = -29.9; y < 30; y += 2.77) expect(within(x, y)).toBe(1);
    });
  }

  it('puts the middle, a corner or an edge of a tile on the middle of the outline', () => {
    const t = uniformTilings.find((o) => o.name === '6^3')!;
    const at = (centre: 'tile' | 'vertex' | 'edge'): number[] =>
      lay(t, { edge: 5, turn: 1, centre }, box)
        .map(
          ({ points }) =>
            Math.sqrt(points.reduce((s, p) => s + p[0], 0) ** 2 + points.reduce((s, p) => s + p[1], 0) ** 2) /
            6,
        )
        .sort((a, b) => a - b);
    expect(at('tile')[0]).toBeCloseTo(0, 9);
    for (const d of at('vertex').slice(0, 3)) expect(d).toBeCloseTo(5, 9);
    for (const d of at('edge').slice(0, 2)) expect(d).toBeCloseTo((5 * Math.sqrt(3)) / 2, 9);
  });

  it('refuses a flood of tiles, naming the number and an edge that works', () => {
    const t = uniformTilings.find((o) => o.name === '3^6')!;
    const wide = { minX: -500, minY: -500, maxX: 500, maxY: 500 };
    expect(() => lay(t, { edge: 2, turn: 0, centre: 'tile' }, wide)).toThrow(
      /^pattern.edge: 2 mm makes about 577350 tiles, more than 20000; use 10.75 mm or more$/,
    );
    expect(lay(t, { edge: 10.75, turn: 0, centre: 'tile' }, wide).length).toBeGreaterThan(19_000);
  });
});

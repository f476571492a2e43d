import { describe, expect, it } from 'vitest';
import { middles, touches } from '../../../src/generators/tilings/contact/contacts.js';
import { facesOf } from '../../../src/generators/tilings/contact/faces.js';
import { contactLines } from '../../../src/generators/tilings/contact/rays.js';
import { contactSource } from '../../../src/generators/tilings/contact/source.js';
import { unitDual } from '../../../src/generators/tilings/dual.js';
import { dualSource } from '../../../src/generators/tilings/dual-tiling.js';
import { rhombSource } from '../../../src/generators/tilings/rhombs.js';
import type { Point } from '../../../src/generators/tilings/tile.js';
import { uniformSource } from '../../../src/generators/tilings/tiling.js';
import { uniformTilings } from '../../../src/generators/tilings/uniform.js';
import { Refusal } from '../../../src/schema/fault.js';
import { artworkWith, expectSound, outlineWith } from '../../support/artwork.js';
import { angles, covering, gap, polygonArea } from './geometry.js';

const rad = Math.PI / 180;
const how = { edge: 11, turn: 0.3, centre: 'tile' } as const;
const box = { minX: -30, minY: -30, maxX: 30, maxY: 30 };

function regular(n: number): Point[] {
  return Array.from(
    { length: n },
    (_, i): Point => [7 * Math.cos((2 * Math.PI * i) / n), 7 * Math.sin((2 * Math.PI * i) / n)],
  );
}

/**
 * Chord and tangent of a circle: at 180 d / n degrees the rays from the middles of the edges of a regular n-gon run
 * along the sides of {n/d}. Point angles of {n/d}, 180 (n - 2 d) / n: GeoGebra jjadmk99, after Poinsot.
 */
const stars: [number, number, number][] = [
  [6, 2, 60],
  [8, 3, 45],
  [12, 5, 30],
  [8, 2, 90],
  [5, 2, 36],
  [10, 3, 72],
];

describe('polygons in contact', () => {
  for (const [n, d, point] of stars)
    it(`in a regular ${n}-gon at ${(180 * d) / n} degrees: the star {${n}/${d}}`, () => {
      const tile = regular(n);
      const from = middles(tile);
      const lines = contactLines(tile, from, ((180 * d) / n) * rad);
      expect(lines).toHaveLength(2 * n);
      for (const [p, q] of lines) {
        const start = from.findIndex((m) => gap(m, p) < 1e-9 || gap(m, q) < 1e-9);
        const sides = [from[(start + d) % n], from[(start + n - d) % n]];
        const [a, b] = gap(from[start], p) < 1e-9 ? [p, q] : [q, p];
        const along = sides.map((to) => {
          const cross = (to[0] - a[0]) * (b[1] - a[1]) - (to[1] - a[1]) * (b[0] - a[0]);
          return Math.abs(cross) / (gap(a, to) * gap(a, b));
        });
        expect(Math.min(...along)).toBeLessThan(1e-9);
      }
      const [star] = facesOf([{ owner: 0, segments: lines }]);
      expect(star.points).toHaveLength(2 * n);
      const tips = angles(star.points).filter((a) => a < 180);
      expect(tips).toHaveLength(n);
      for (const a of tips) expect(a).toBeCloseTo(point, 6);
    });

  it('at 180 / n degrees the star is the polygon on the middles', () => {
    const lines = contactLines(regular(6), middles(regular(6)), 30 * rad);
    const [face] = facesOf([{ owner: 0, segments: lines }]);
    // A hexagon of the apothem as radius: three quarters of the area.
    expect(polygonArea(face.points)).toBeCloseTo(0.75 * polygonArea(regular(6)), 9);
  });

  it('contact points of a dual are the middles of the edges of the tiling it belongs to', () => {
    // The circle within a tile of radius half an edge touches where tile and neighbour do.
    for (const t of uniformTilings) {
      const { points } = unitDual(t).cell[0];
      const at = touches(points);
      at.forEach((c, i) => {
        const [p, q] = [points[i], points[(i + 1) % points.length]];
        expect(gap(p, c) + gap(c, q)).toBeCloseTo(gap(p, q), 9);
        // Tangents from one corner are equally long.
        expect(gap(c, q)).toBeCloseTo(gap(q, at[(i + 1) % points.length]), 9);
      });
    }
  });

  const grounds = [
    ...uniformTilings.map((t) => ({ name: t.name, source: uniformSource(t), contacts: middles })),
    ...uniformTilings.map((t) => ({ name: `dual ${t.name}`, source: dualSource(t), contacts: touches })),
    { name: 'rhombs', source: rhombSource(72 * rad, false), contacts: middles },
  ];
  for (const { name, source, contacts } of grounds)
    it(`on ${name}: stars and cells cover the plane once, and lines run straight across the edges`, () => {
      for (const angle of [35, 62, 74]) {
        const cells = contactSource(source, contacts, angle * rad).tiles(how, box);
        for (let x = -29.71; x < 30; x += 6.31)
          for (let y = -29.93; y < 30; y += 5.77) expect(covering(cells, x, y)).toBe(1);
        // Where two lines cross, opposite angles are equal: of the four cells at a contact, two and two.
        const tiles = source.tiles(how, box);
        const contact = tiles
          .flatMap((t) => contacts(t.points))
          .find((p) => Math.abs(p[0]) < 22 && Math.abs(p[1]) < 22)!;
        const met = cells.flatMap(({ points }) =>
          angles(points).filter((_, i) => gap(points[i], contact) < 1e-6),
        );
        expect(met.map((a) => a.toFixed(6)).sort()).toEqual(
          [2 * angle, 2 * angle, 180 - 2 * angle, 180 - 2 * angle].map((a) => a.toFixed(6)).sort(),
        );
      }
    });

  it('tells stars of the largest tiles, of the others and cells between apart', () => {
    const octagons = uniformTilings.find((t) => t.name === '4.8.8')!;
    const cells = contactSource(uniformSource(octagons), middles, 60 * rad).tiles(how, box);
    const corners = (kind: string): Set<number> =>
      new Set(cells.filter((c) => c.kind === kind).map((c) => c.points.length));
    expect(corners('large')).toEqual(new Set([16]));
    expect(corners('small')).toEqual(new Set([8]));
    // Three tiles meet at a corner: three contact points and three meetings of rays.
    expect(corners('cells')).toEqual(new Set([6]));
  });

  it('draws sound straps and stars, and says what is wrong', () => {
    const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
    for (const tiling of ['4.8.8', '3.12.12', 'dual 3^4.6', 'penrose'])
      for (const plug of ['straps', 'tiles'])
        for (const fill of ['clip', 'whole']) {
          const values = { tiling, plug, fill, edge: 13, strap: 2, wall: 2, tiles: 'stars' };
          const { pieces } = artworkWith('contact-stars', values, lid);
          for (const p of pieces) expectSound(p.region);
          expect(pieces.length).toBeGreaterThan(plug === 'tiles' ? 3 : 0);
        }
    expect(() =>
      artworkWith('contact-stars', { tiling: 'rhombs', plug: 'tiles', tiles: 'small' }, lid),
    ).toThrow('pattern.tiles: no tile of kind small comes near the outline; use all, or smaller ones');
    expect(() => artworkWith('contact-stars', { strap: 60 }, lid)).toThrow(
      /^pattern.strap: 60 mm closes every tile; make it less than \d+(\.\d+)? mm$/,
    );
    expect(() => artworkWith('contact-stars', { edge: 1 }, outlineWith('circle', { diameter: 600 }))).toThrow(
      Refusal,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { hatSource } from '../../../../src/generators/tilings/aperiodic/hat.js';
import {
  HatClusters,
  hatCorners,
  type PlacedHat,
} from '../../../../src/generators/tilings/aperiodic/hat-substitution.js';
import { area, perimeter, polygon } from '../../../../src/geometry/region.js';
import { artworkWith, outlineWith } from '../../../support/artwork.js';
import { angles, box, expectCovered } from './cover.js';

const PHI = (1 + Math.sqrt(5)) / 2;

describe('hat', () => {
  // Outline: Smith, Myers, Kaplan and Goodman-Strauss, "An aperiodic monotile", 2023, from the authors' published
  // code; area and perimeter computed: eight kites of area sqrt 3, sides of 1, sqrt 3 and one of 2.
  it('has 13 corners, area 8 sqrt 3, perimeter 8 + 6 sqrt 3', () => {
    for (const mirrored of [false, true]) {
      const points = hatCorners({ mirrored, turn: 1, at: [3, -2] });
      const region = { contours: [polygon(points)] };
      expect(points).toHaveLength(13);
      expect(area(region)).toBeCloseTo(8 * Math.sqrt(3), 10);
      expect(perimeter(region)).toBeCloseTo(8 + 6 * Math.sqrt(3), 10);
      const wanted = [240, 90, 120, 120, 270, 120, 90, 120, 270, 120, 90, 240, 90];
      const found = angles(points).map(Math.round);
      expect(mirrored ? found.reverse() : found).toEqual(wanted);
    }
  });

  for (const seed of [1, 2, 3, 4, 5, 6])
    it(`hats cover a disc once, seed ${seed}`, () => {
      const centre = (['tile', 'vertex', 'edge'] as const)[seed % 3];
      expectCovered(hatSource(seed).tiles({ edge: 1, turn: 0.1 * seed, centre }, box(26)), 25.9);
    });

  it('hats of clusters of every size cover a disc about their middle once', () => {
    // Radius by level: what `INRADIUS` promises.
    for (const level of [1, 2, 3]) {
      const clusters = new HatClusters(level);
      const [x, y] = clusters.middle();
      const radius = 2.4 * PHI ** (2 * level);
      const tiles = clusters.hats([x, y], radius).map((h) => ({
        name: '',
        kind: 'hat',
        points: hatCorners(h).map(([u, v]): [number, number] => [u - x, v - y]),
      }));
      expectCovered(tiles, radius);
    }
  });

  it('the hats of a whole cluster share all their sides but those of one outline', () => {
    for (const level of [1, 2, 3, 4]) {
      const clusters = new HatClusters(level);
      const open = new Map<string, string>();
      const at = ([x, y]: readonly [number, number]): string =>
        `${Math.round(x * 100)},${Math.round(y * 100)}`;
      const hats = clusters.hats(clusters.middle(), 1e6);
      for (const h of hats) {
        const corners = hatCorners(h).flatMap((p, i, all): (readonly [number, number])[] => {
          const q = all[(i + 1) % all.length];
          const long = Math.hypot(q[0] - p[0], q[1] - p[1]) > 1.9;
          return long ? [p, [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]] : [p];
        });
        corners.forEach((p, i) => {
          const [from, to] = [at(p), at(corners[(i + 1) % corners.length])];
          // A side meets the side of a neighbour that runs the other way, and no third.
          if (open.get(`${to} ${from}`) !== undefined) open.delete(`${to} ${from}`);
          else {
            expect(open.has(`${from} ${to}`)).toBe(false);
            open.set(`${from} ${to}`, to);
          }
        });
      }
      const ways = new Map<string, string[]>();
      for (const [key, to] of open) {
        const from = key.split(' ')[0];
        ways.set(from, [...(ways.get(from) ?? []), to]);
      }
      expect([...ways.values()].every((w) => w.length === 1)).toBe(true);
      const [start] = ways.keys();
      let steps = 0;
      for (let here = start; steps === 0 || here !== start; steps++) here = ways.get(here)![0];
      expect(steps).toBe(open.size);
    }
  });

  it('mirrored hats are one in 1 + phi^4', () => {
    // Unmirrored to mirrored as phi^4 to 1: the same paper, section on the clusters' frequencies (from memory).
    const clusters = new HatClusters(6);
    const hats = clusters.hats(clusters.middle(), 180);
    expect(hats.length).toBeGreaterThan(7000);
    const share = hats.filter((h) => h.mirrored).length / hats.length;
    expect(share * (1 + PHI ** 4)).toBeCloseTo(1, 1.7);
  });

  it('no translation maps a patch onto itself', () => {
    const clusters = new HatClusters(5);
    const middle = clusters.middle();
    const hats = clusters.hats(middle, 70);
    const key = (h: PlacedHat, dx: number, dy: number): string =>
      `${h.mirrored} ${h.turn} ${h.at[0] + dx} ${h.at[1] + dy}`;
    const all = new Set(hats.map((h) => key(h, 0, 0)));
    const reach = ([x, y]: PlacedHat['at'], [u, v] = middle): number =>
      Math.hypot(x + y / 2 - u, (y * Math.sqrt(3)) / 2 - v);
    const inner = hats.filter((h) => reach(h.at) < 35);
    // A period would take the first hat to another that lies alike: every such step is tried.
    const [first] = inner;
    const steps = hats
      .filter((h) => h.mirrored === first.mirrored && h.turn === first.turn && h !== first)
      .map((h): [number, number] => [h.at[0] - first.at[0], h.at[1] - first.at[1]])
      .filter((s) => reach(s, [0, 0]) < 35);
    expect(steps.length).toBeGreaterThan(30);
    for (const [dx, dy] of steps) expect(inner.every((h) => all.has(key(h, dx, dy)))).toBe(false);
    expect(inner.every((h) => all.has(key(h, 0, 0)))).toBe(true);
  });

  it('straps and tiles of either kind', () => {
    const face = outlineWith('rectangle', { width: 150, height: 150, margin: 5 });
    const pieces = (given: Record<string, string | number>): string[] =>
      artworkWith('hat', { plug: 'tiles', fill: 'whole', ...given }, face).pieces.map((p) => p.name);
    const all = pieces({});
    const plain = pieces({ tiles: 'hat' });
    const mirrored = pieces({ tiles: 'mirrored' });
    expect(plain.length + mirrored.length).toBe(all.length);
    expect(mirrored.length).toBeGreaterThan(0);
    expect(plain.length).toBeGreaterThan(3 * mirrored.length);
    expect(() =>
      artworkWith('hat', { edge: 1 }, outlineWith('rectangle', { width: 900, height: 900 })),
    ).toThrow(/pattern\.edge.*use 1\.\d+ mm or more/);
  });
});

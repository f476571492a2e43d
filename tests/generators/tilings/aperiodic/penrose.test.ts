import { describe, expect, it } from 'vitest';
import { divided, type Half } from '../../../../src/generators/tilings/aperiodic/half-tiles.js';
import { penrosePatch, penroseSource } from '../../../../src/generators/tilings/aperiodic/penrose.js';
import type { LaidTile, Lay } from '../../../../src/generators/tilings/tile.js';
import { area, polygon } from '../../../../src/geometry/region.js';
import { artworkWith, outlineWith } from '../../../support/artwork.js';
import { angles, box, expectCovered, sides } from './cover.js';

const PHI = (1 + Math.sqrt(5)) / 2;
const lay: Lay = { edge: 1, turn: 0, centre: 'vertex' };

function counts(first: Half, times: number): Record<string, number> {
  let halves = [first];
  for (let i = 0; i < times; i++) halves = halves.flatMap(divided);
  const out: Record<string, number> = { thick: 0, thin: 0, kite: 0, dart: 0 };
  for (const h of halves) out[h.kind]++;
  return out;
}

const half = (kind: Half['kind']): Half => ({ kind, a: [0, 0], b: [1, 0], c: [0, 1] });

function rounded(values: readonly number[]): number[] {
  return values.map((v) => Math.round(v * 1e6) / 1e6);
}

describe('Penrose substitution', () => {
  // Inflation matrix [[2, 1], [1, 1]] and the counts that follow: Grunbaum and Shephard, Tilings and Patterns, 1987,
  // chapter 10; de Bruijn 1981 (both from memory); counts computed from the matrix.
  it('turns one thick rhomb into 2/1, 5/3, 13/8, 34/21, 89/55, 233/144 thick and thin', () => {
    const table = [
      [1, 0],
      [2, 1],
      [5, 3],
      [13, 8],
      [34, 21],
      [89, 55],
      [233, 144],
    ];
    table.forEach(([thick, thin], times) => {
      expect(counts(half('thick'), times)).toMatchObject({ thick, thin });
    });
    expect(counts(half('thin'), 1)).toMatchObject({ thick: 1, thin: 1 });
  });

  it('turns a kite into two kites and a dart, and a dart into one of each', () => {
    expect(counts(half('kite'), 1)).toMatchObject({ kite: 2, dart: 1 });
    expect(counts(half('dart'), 1)).toMatchObject({ kite: 1, dart: 1 });
  });

  for (const [style, common, rare] of [
    ['rhombs', 'thick', 'thin'],
    ['kites', 'kite', 'dart'],
  ] as const)
    it(`${common} : ${rare} in a patch tends to the golden ratio`, () => {
      const patch = penrosePatch(style, 10, [0, 0], 60);
      const near = patch.filter((t) => Math.hypot(...t.points[0]) < 58);
      const n = near.filter((t) => t.kind === common).length;
      expect(near.length).toBeGreaterThan(5000);
      expect(n / (near.length - n) / PHI).toBeCloseTo(1, 1.7);
      // Thick rhombs are phi times as large, so their share of the area is phi^2 / (1 + phi^2).
      const size = (kind: string): number =>
        near.reduce((sum, t) => sum + (t.kind === kind ? area({ contours: [polygon(t.points)] }) : 0), 0);
      if (style === 'rhombs')
        expect(size(common) / (size(common) + size(rare))).toBeCloseTo(PHI ** 2 / (1 + PHI ** 2), 2);
    });
});

describe('Penrose tiles', () => {
  const one = (tiles: readonly LaidTile[], kind: string): LaidTile => tiles.find((t) => t.kind === kind)!;

  it('rhombs have angles of 72 and 108, of 36 and 144 degrees, and areas in the golden ratio', () => {
    const tiles = penroseSource('rhombs').tiles(lay, box(4));
    for (const t of tiles) {
      expect(rounded(sides(t.points))).toEqual([1, 1, 1, 1]);
      const wanted = t.kind === 'thick' ? [72, 72, 108, 108] : [36, 36, 144, 144];
      expect(rounded(angles(t.points).sort((a, b) => a - b))).toEqual(wanted);
    }
    const size = (kind: string): number => area({ contours: [polygon(one(tiles, kind).points)] });
    expect(size('thick') / size('thin')).toBeCloseTo(PHI, 9);
  });

  it('kites have angles of 72, 72, 72, 144 degrees and darts of 36, 72, 36, 216', () => {
    for (const t of penroseSource('kites').tiles(lay, box(4))) {
      const short = rounded([1 / PHI])[0];
      expect(rounded(sides(t.points))).toEqual([1, short, short, 1]);
      expect(rounded(angles(t.points))).toEqual(t.kind === 'kite' ? [72, 72, 144, 72] : [72, 36, 216, 36]);
    }
  });

  for (const style of ['rhombs', 'kites'] as const)
    for (const part of ['sun', 'star', 'elsewhere'] as const)
      for (const centre of ['tile', 'vertex', 'edge'] as const)
        it(`${style} cover a disc once: ${part}, ${centre} on the middle`, () => {
          const how: Lay = { edge: 10, turn: 0.4, centre };
          expectCovered(penroseSource(style, part, 5).tiles(how, box(70)), 69);
        });

  for (const style of ['rhombs', 'kites'] as const)
    for (const part of ['sun', 'star'] as const)
      it(`${style} round a ${part} have the symmetry of a regular pentagon`, () => {
        const tiles = penroseSource(style, part).tiles(lay, box(9));
        const key = (t: LaidTile, turn: number, mirror: number): string => {
          const x = t.points.reduce((s, p) => s + p[0], 0) / 4;
          const y = t.points.reduce((s, p) => s + p[1], 0) / 4;
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          return `${t.kind} ${Math.round((x * c - y * s) * mirror * 1e4) + 0} ${Math.round((x * s + y * c) * 1e4) + 0}`;
        };
        const all = new Set(tiles.map((t) => key(t, 0, 1)));
        const inner = tiles.filter((t) => Math.hypot(...t.points[0]) < 6);
        expect(inner.length).toBeGreaterThan(80);
        for (const t of inner)
          for (let k = 0; k < 5; k++)
            for (const mirror of [1, -1]) expect(all).toContain(key(t, (2 * Math.PI * k) / 5, mirror));
        // A tenth of a turn is no symmetry.
        expect(inner.every((t) => all.has(key(t, Math.PI / 5, 1)))).toBe(false);
      });

  it('a sun is five kites, a star five darts', () => {
    for (const [part, kind] of [
      ['sun', 'kite'],
      ['star', 'dart'],
    ] as const) {
      const middle = penroseSource('kites', part)
        .tiles(lay, box(5))
        .filter((t) => t.points.some((p) => Math.hypot(...p) < 1e-9));
      expect(middle.map((t) => t.kind)).toEqual(Array(5).fill(kind));
    }
  });

  it('other seeds show other parts', () => {
    const [a, b, c] = [1, 2, 1].map((s) => penroseSource('rhombs', 'elsewhere', s).tiles(lay, box(6)));
    expect(a).toEqual(c);
    expect(a).not.toEqual(b);
  });

  it('refuses a flood of tiles, naming an edge that works', () => {
    const face = outlineWith('rectangle', { width: 1000, height: 1000, margin: 5 });
    expect(() => artworkWith('penrose', { edge: 1 }, face)).toThrow(
      /pattern\.edge: 1 mm makes about \d+ tiles.*use 7\.78 mm/,
    );
  });
});

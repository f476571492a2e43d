import { describe, expect, it } from 'vitest';
import { type BreaksName, meetings } from '../../../src/generators/knots/breaks.js';
import { type PlaitSizes, plaitStrands } from '../../../src/generators/knots/plait.js';
import type { Strand } from '../../../src/generators/knots/strand.js';
import { endTangent, startTangent } from '../../../src/geometry/edge.js';
import { area, contains } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { crossingsOf, expectAlternating, gcd } from './strands.js';

const sizes: PlaitSizes = { corner: [0, 0], cell: 20, off: 4, pointed: false };
const face = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

function plait(columns: number, rows: number, name: BreaksName = 'none', seed = 1, share = 0.4): Strand[] {
  const has = (i: number, j: number): boolean => i >= 0 && j >= 0 && i < columns && j < rows;
  const meeting = meetings({ name, every: 2, share, seed }, columns, rows);
  return plaitStrands({ cells: { columns, rows, has }, meeting }, sizes);
}

function drawn(given: Values): ReturnType<typeof artworkWith>['pieces'] {
  return artworkWith('knot-grid', given, face).pieces;
}

describe('plaits', () => {
  // Mirror curves of a p by q grid: P. Gerdes, Geometry from Africa, 1999; S. Jablan and R. Sazdanovic, LinKnot,
  // 2007 (from memory): gcd(p, q) closed curves, which cross once on each side between two cells.
  it('of p by q cells without breaks have gcd(p, q) strands and 2pq - p - q crossings', () => {
    for (let p = 1; p <= 7; p++)
      for (let q = 1; q <= 7; q++) {
        const strands = plait(p, q);
        expect(strands).toHaveLength(gcd(p, q));
        expect(crossingsOf(strands)).toBe(2 * p * q - p - q);
      }
  });

  it('go over and under by turns, whatever the breaks', () => {
    for (const name of ['none', 'regular', 'chance', 'mirrored'] as const)
      for (let seed = 1; seed <= 8; seed++) expectAlternating(plait(5, 4, name, seed));
  });

  it('run smoothly, end to end', () => {
    for (let seed = 1; seed <= 6; seed++)
      for (const { stretches } of plait(4, 5, 'chance', seed, 0.5)) {
        const path = stretches.flat();
        path.forEach((e, k) => {
          const next = path[(k + 1) % path.length];
          expect(Math.hypot(next.x0 - e.x1, next.y0 - e.y1)).toBeLessThan(1e-9);
          const [a, b] = [endTangent(e), startTangent(next)];
          expect(a[0] * b[0] + a[1] * b[1]).toBeCloseTo(1, 9);
        });
      }
  });

  it('fall apart into a ring for every cell when every crossing is broken along its side', () => {
    const has = (i: number, j: number): boolean => i >= 0 && j >= 0 && i < 3 && j < 2;
    const rings = plaitStrands({ cells: { columns: 3, rows: 2, has }, meeting: () => 'along' }, sizes);
    expect(rings).toHaveLength(6);
    for (const r of rings) {
      expect(r.nodes).toHaveLength(0);
      expect(r.stretches.flat().every((e) => Math.abs(Math.abs(e.r) - 6) < 1e-9)).toBe(true);
    }
  });
});

describe('knot-grid', () => {
  it('bands in the middle of a plait are rectangles between two gaps', () => {
    const pieces = drawn({ columns: 4, rows: 4, breaks: 'none', strap: 4, gap: 5 });
    // One piece for each of the 24 crossings where a band goes under.
    expect(pieces).toHaveLength(24);
    // Cells of (88 + gap) / 4; a straight run is two of their half diagonals less half a strap and a gap at each end.
    const run = Math.SQRT2 * (93 / 4) - 2 * (2 + 5);
    const straight = pieces.filter((p) => p.region.contours[0].every((e) => e.r === 0));
    // Those over the 12 crossings that are not beside the edge.
    expect(straight).toHaveLength(12);
    for (const p of straight) expect(area(p.region)).toBeCloseTo(4 * run, 4);
  });

  for (const corners of ['round', 'pointed'])
    for (const breaks of ['none', 'regular', 'chance', 'mirrored'])
      it(`keeps gaps of the width asked for: ${corners}, breaks ${breaks}`, () => {
        const pieces = drawn({ corners, breaks, strap: 4, gap: 4.5, seed: 3, cell: 20 });
        let least = Number.POSITIVE_INFINITY;
        pieces.forEach((p, a) => {
          expectSound(p.region);
          expect(p.region.contours.filter((c) => area({ contours: [c] }) > 0)).toHaveLength(1);
          expect(pokesOut(p.region, face.inner)).toBeLessThan(1e-6);
          for (const q of pieces.slice(a + 1)) least = Math.min(least, distanceBetween(p.region, q.region));
        });
        expect(least).toBeCloseTo(4.5, 3);
      });

  it('mirrored breaks give the same middle lines on all sides', () => {
    const pieces = drawn({ breaks: 'mirrored', columns: 4, rows: 4, gap: 0.3, strap: 8, seed: 4 });
    const region = { contours: pieces.flatMap((p) => p.region.contours) };
    // Over and under swap in a mirror, so only places well off the gaps agree: nearly all.
    let alike = 0;
    let all = 0;
    for (let x = 0.7; x < 43; x += 1.9)
      for (let y = 0.4; y < 43; y += 1.7) {
        all++;
        if (
          [
            [-x, y],
            [x, -y],
            [y, x],
          ].every(([u, v]) => contains(region, u, v) === contains(region, x, y))
        )
          alike++;
      }
    expect(alike / all).toBeGreaterThan(0.9);
  });

  it('fills outlines that are no rectangles with whole cells', () => {
    for (const shape of ['circle', 'stave', 'ring', 'polygon']) {
      const outline = outlineWith(shape);
      const { pieces } = artworkWith('knot-grid', {}, outline);
      expect(pieces.length).toBeGreaterThan(4);
      for (const p of pieces) expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-6);
    }
  });

  it('refuses what cannot be, with a number that works', () => {
    expect(() => drawn({ cell: 12 })).toThrow(
      'pattern.cell: 12 mm is too small for this strap and gap; use 12.81 mm or more',
    );
    expect(() => drawn({ cell: 12.81 })).not.toThrow();
    expect(() => drawn({ columns: 4 })).toThrow('pattern.rows: give both columns and rows, or neither');
    expect(() => drawn({ columns: 9, rows: 2 })).toThrow(
      'pattern.columns: 9 by 2 cells of at least 12.81 mm do not fit',
    );
    expect(() => drawn({ cell: 300 })).toThrow('no whole cell of 300 mm fits the outline');
    expect(() => drawn({ cell: 1, strap: 0.3, gap: 0.3 })).toThrow(/more than 2500; use 1\.76 mm or more/);
  });
});

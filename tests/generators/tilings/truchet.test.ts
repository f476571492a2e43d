import { describe, expect, it } from 'vitest';
import { type ArrangementName, arrangement } from '../../../src/generators/tilings/truchet/arrangement.js';
import { joinCurves } from '../../../src/generators/tilings/truchet/curves.js';
import {
  type Cell,
  corners,
  evenArea,
  type Grid,
  onPiece,
  quarterArcs,
} from '../../../src/generators/tilings/truchet/grid.js';
import { endTangent, startTangent } from '../../../src/geometry/edge.js';
import { area, contains } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';

const grid: Grid = { edge: 20, turn: 0.3, middle: [0.5, 0.25] };
const face = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

function cells(name: ArrangementName, half: number, seed = 1): Cell[] {
  const lies = arrangement(name, seed);
  const out: Cell[] = [];
  for (let j = -half; j < half; j++)
    for (let i = -half; i < half; i++) out.push({ i, j, quarters: lies(i, j) });
  return out;
}

function drawn(given: Values): ReturnType<typeof artworkWith>['pieces'] {
  return artworkWith('truchet', given, face).pieces;
}

describe('Truchet tiles', () => {
  // Two quarter circles about opposite corners, radius half an edge: C. S. Smith, "The tiling patterns of Sebastien
  // Truchet", Leonardo 20, 1987 (from memory).
  it('arcs meet the middles of the edges squarely', () => {
    for (let quarters = 0; quarters < 4; quarters++) {
      const cell = { i: 2, j: -1, quarters };
      const square = corners(cell).map(([x, y]) => onPiece(grid)(x, y));
      for (const arc of quarterArcs(grid, cell)) {
        expect(arc.r).toBe(10);
        for (const [[x, y], t] of [
          [[arc.x0, arc.y0], startTangent(arc)],
          [[arc.x1, arc.y1], endTangent(arc)],
        ] as const) {
          const met = square.filter((p, k) => {
            const q = square[(k + 1) % 4];
            const middle = Math.hypot((p[0] + q[0]) / 2 - x, (p[1] + q[1]) / 2 - y) < 1e-9;
            return middle && Math.abs((q[0] - p[0]) * t[0] + (q[1] - p[1]) * t[1]) < 1e-9;
          });
          expect(met).toHaveLength(1);
        }
      }
    }
  });

  it('arcs join into smooth curves that close or end at the edge of the grid', () => {
    const all = cells('chance', 5, 3);
    const curves = joinCurves(
      all.flatMap((c) => quarterArcs(grid, c)),
      0.01,
    );
    expect(curves.reduce((n, c) => n + c.edges.length, 0)).toBe(2 * all.length);
    // Each of the 40 edge middles round the grid ends one curve.
    expect(curves.filter((c) => !c.closed)).toHaveLength(20);
    for (const { edges, closed } of curves)
      edges.forEach((e, k) => {
        const next = edges[k + 1] ?? (closed ? edges[0] : null);
        if (!next) return;
        expect([e.x1, e.y1]).toEqual([next.x0, next.y0]);
        const [a, b] = [endTangent(e), startTangent(next)];
        expect(a[0] * b[0] + a[1] * b[1]).toBeCloseTo(1, 9);
      });
  });

  it('areas fill pi / 8 of a tile or the rest of it', () => {
    for (const cell of cells('chance', 4)) {
      const share = area(evenArea(grid, cell)) / 400;
      const small = (cell.i + cell.j + cell.quarters) % 2 === 0;
      expect(share).toBeCloseTo(small ? Math.PI / 8 : 1 - Math.PI / 8, 9);
    }
  });

  it('the arrangement "circles" makes whole circles', () => {
    const pieces = drawn({ arrangement: 'circles', frame: false, edge: 11, fill: 'whole' });
    const whole = pieces.filter((p) => Math.abs(area(p.region) - Math.PI * 5.5 ** 2) < 1e-6);
    // Of the 49 inner corners of 8 by 8 tiles the 25 whose column and row add to an even number.
    expect(whole).toHaveLength(25);
  });

  it('straps and areas stay as far apart as asked, and straps have their width', () => {
    for (const style of ['areas', 'arcs', 'diagonals']) {
      const pieces = drawn({ style, frame: false, arrangement: 'chance', strap: 3, wall: 3.5 });
      for (const p of pieces) {
        expectSound(p.region);
        expect(pokesOut(p.region, face.inner)).toBeLessThan(1e-6);
      }
      for (let a = 0; a < pieces.length; a++)
        for (let b = a + 1; b < pieces.length; b++) {
          const apart = distanceBetween(pieces[a].region, pieces[b].region);
          expect(apart).toBeGreaterThan(3.5 - 1e-6);
        }
    }
    const rings = drawn({ style: 'arcs', arrangement: 'circles', frame: false, edge: 22, strap: 3 });
    const ring = Math.PI * (12.5 ** 2 - 9.5 ** 2);
    expect(rings.filter((p) => Math.abs(area(p.region) - ring) < 1e-6)).toHaveLength(5);
  });

  it('mirrored tiles have the symmetry of a square, whatever the style', () => {
    for (const style of ['areas', 'arcs', 'diagonals', 'halves']) {
      const region = {
        contours: drawn({ style, edge: 9, strap: 2, wall: 1, seed: 9 }).flatMap((p) => p.region.contours),
      };
      let filled = 0;
      for (let x = 0.37; x < 44; x += 2.3)
        for (let y = 0.11; y < x; y += 2.1) {
          const here = contains(region, x, y);
          if (here) filled++;
          for (const [u, v] of [
            [-x, y],
            [x, -y],
            [y, x],
            [-y, -x],
          ])
            expect(contains(region, u, v)).toBe(here);
        }
      expect(filled).toBeGreaterThan(20);
    }
  });

  it('halves are half of the tiles when nothing is taken for walls', () => {
    const pieces = drawn({ style: 'halves', edge: 11, wall: 0, frame: false, arrangement: 'chance' });
    expect(pieces.reduce((sum, p) => sum + area(p.region), 0)).toBeCloseTo(88 * 44, 4);
  });

  it('the seed turns tiles only where chance does', () => {
    expect(drawn({ seed: 1 })).toEqual(drawn({ seed: 1 }));
    expect(drawn({ seed: 1 })).not.toEqual(drawn({ seed: 2 }));
    expect(drawn({ seed: 1, arrangement: 'rows' })).toEqual(drawn({ seed: 2, arrangement: 'rows' }));
  });

  it('refuses what cannot be, with a number that works', () => {
    expect(() => drawn({ style: 'arcs', edge: 10 })).not.toThrow();
    expect(() => drawn({ style: 'arcs', edge: 9 })).toThrow(
      'pattern.strap: 4.1 mm fills the tiles; make it less than 3.72 mm',
    );
    expect(() => drawn({ style: 'halves', edge: 6 })).toThrow(
      'pattern.wall: 4.1 mm leaves nothing; make it less than 3.51 mm',
    );
    expect(() => drawn({ centre: 'tile' })).toThrow(
      'pattern.centre: a mirrored arrangement has a corner on the middle; use vertex',
    );
    expect(() => drawn({ edge: 100, fill: 'whole' })).toThrow(
      'no whole tile of edge 100 mm fits the outline',
    );
    expect(() => drawn({ strap: 60 })).toThrow('a frame of 60 mm fills the outline');
    const large = outlineWith('rectangle', { width: 500, height: 500 });
    expect(() => artworkWith('truchet', { edge: 1 }, large)).toThrow(/use \d\.\d+ mm or more/);
  });
});

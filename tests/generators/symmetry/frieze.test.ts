import { describe, expect, it } from 'vitest';
import { friezeGroups } from '../../../src/generators/symmetry/friezes.js';
import { bounds } from '../../../src/geometry/region.js';
import { artworkWith, outlineWith } from '../../support/artwork.js';
import { type Motion, motionsOf, moved, type Shape, shape, shapesOf } from './drawing.js';
import { friezeGroupOf } from './recognise.js';

const PLANK = outlineWith('rectangle', { width: 400, height: 40, margin: 4 });

function drawn(given: Record<string, number | string>, outline = PLANK): Shape[] {
  const plain = { motif: 'leaf', run: 'across', height: 16, gap: 1, rail: 0 };
  return shapesOf(artworkWith('frieze', { ...plain, ...given }, outline));
}

function motions(shapes: readonly Shape[]): Motion[] {
  return motionsOf(shapes, { about: [1, 0.5], reach: 70, half: [60, 8] });
}

/** The seven by their International short names; orbifolds cost 2 only in the limit, so none is counted here. */
const seven = ['p1', 'p11g', 'p1m1', 'p2', 'p2mg', 'p11m', 'p2mm'];

describe('the 7 frieze groups', () => {
  it('are all there', () => {
    expect(friezeGroups.map((g) => g.name)).toEqual(seven);
  });

  for (const group of seven) {
    it(`${group}: the drawn band has its motions and no others`, () => {
      expect(friezeGroupOf(motions(drawn({ group })))).toBe(group);
    });

    it(`${group}: so has that of another motif, moved and turned by hand`, () => {
      const order = friezeGroups.find((g) => g.name === group)!.operations.length;
      const given = { group, motif: 'comma', place: 'apart', lean: 0.3, x: 0.6, repeat: 8 + 7 * order };
      expect(friezeGroupOf(motions(drawn(given)))).toBe(group);
    });
  }

  for (const [group, left] of Object.entries({ p1m1: 'p1', p11g: 'p1', p2mg: 'p2', p11m: 'p1', p2mm: 'p2' }))
    it(`the recogniser sees ${left} in ${group} when each motif is turned by two degrees`, () => {
      const turned = drawn({ group }).map((s) => {
        const spin = { flips: false, angle: 0.035, dx: 0, dy: 0 };
        const [x, y] = moved(spin, s.centre);
        const m = { ...spin, dx: s.centre[0] - x, dy: s.centre[1] - y };
        return shape(s.rings.map((r) => r.map((p) => moved(m, p))));
      });
      expect(friezeGroupOf(motions(turned))).toBe(left);
    });
});

describe('a straight frieze', () => {
  for (const group of seven)
    it(`${group}: whole repeats reach from one end of the rails to the other`, () => {
      const outline = outlineWith('stave', { bottom: 70, top: 100, height: 150, margin: 6 });
      const { pieces } = artworkWith('frieze', { group, level: 20 }, outline);
      const rails = pieces.filter((p) => p.name.startsWith('rail'));
      const motifs = pieces.filter((p) => !p.name.startsWith('rail'));
      expect(rails).toHaveLength(2);
      const order = friezeGroups.find((g) => g.name === group)!.operations.length;
      expect(motifs.length % order).toBe(0);
      const rail = bounds(rails.flatMap((r) => r.region.contours));
      const band = bounds(motifs.flatMap((r) => r.region.contours));
      expect(rail.minY + rail.maxY).toBeCloseTo(40, 9);
      // The rails touch the stave's margin at their narrowest place: half width (w - 6 run / height) there.
      const y = rail.minY;
      const run = Math.hypot(15, 150);
      expect(rail.maxX).toBeCloseTo((85 + 30 * (y / 150)) / 2 - (6 * run) / 150, 6);
      expect(band.minX).toBeGreaterThanOrEqual(rail.minX - 1e-6);
      expect(band.maxX).toBeLessThanOrEqual(rail.maxX + 1e-6);
      expect(band.maxX - band.minX).toBeGreaterThan(0.9 * (rail.maxX - rail.minX));
    });
});

describe('a round frieze', () => {
  for (const group of seven)
    it(`${group}: looks the same after every turn by a whole number of repeats`, () => {
      const outline = outlineWith('circle', { diameter: 120, margin: 5 });
      const { pieces } = artworkWith('frieze', { group, gap: 2, rail: 0, height: 20 }, outline);
      const order = friezeGroups.find((g) => g.name === group)!.operations.length;
      const n = pieces.length / order;
      expect(Number.isInteger(n)).toBe(true);
      const shapes = shapesOf({ pieces });
      const found = motionsOf(shapes, { about: [0, 0], reach: 120, half: [55, 55] });
      expect(found.filter((m) => !m.flips)).toHaveLength(n);
      // About the middle, and by multiples of a repeat.
      for (const m of found.filter((o) => !o.flips)) {
        expect(Math.hypot(m.dx, m.dy)).toBeLessThan(0.02);
        const repeats = (m.angle / (2 * Math.PI)) * n;
        expect(Math.abs(repeats - Math.round(repeats))).toBeLessThan(0.01);
      }
      // Upright mirrors stay mirrors when the band is bent.
      expect(found.filter((m) => m.flips)).toHaveLength(group.includes('m1') || /^p2m/.test(group) ? n : 0);
    });
});

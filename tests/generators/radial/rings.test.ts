import { describe, expect, it } from 'vitest';
import { area } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { all, groupOf } from './symmetry.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

describe('rings', () => {
  it('have areas pi (R^2 - r^2), in progression', () => {
    const { pieces } = artworkWith('rings', { rings: 3, ring: 8, progression: 0.5, gap: 4, least: 1 }, lid);
    // Radii by hand: 44-36, 32-28, 24-22; the disc fills what is left but for the gap: 18.
    const radii = [
      [44, 36],
      [32, 28],
      [24, 22],
      [18, 0],
    ];
    expect(pieces.map((p) => p.name)).toEqual(['ring 1', 'ring 2', 'ring 3', 'disc']);
    pieces.forEach((p, i) => {
      expect(area(p.region)).toBeCloseTo(Math.PI * (radii[i][0] ** 2 - radii[i][1] ** 2), 8);
    });
  });

  it('end before a progression gets too thin, and the disc follows by the gap', () => {
    const { pieces } = artworkWith('rings', { ring: 8, progression: 0.5, gap: 4, least: 3 }, lid);
    // 8 and 4 mm wide; 2 mm would be too thin: the disc reaches to 28 - 4 mm.
    expect(pieces.map((p) => p.name)).toEqual(['ring 1', 'ring 2', 'disc']);
    expect(area(pieces[2].region)).toBeCloseTo(Math.PI * 24 * 24, 8);
  });

  it('fall into equal segments with walls of one width', () => {
    const { pieces } = artworkWith(
      'rings',
      { rings: 2, ring: 8, progression: 1, segments: 10, disc: false, gap: 4 },
      lid,
    );
    expect(pieces).toHaveLength(20);
    for (const p of pieces) expectSound(p.region);
    // A ring of radii 44 and 36 less ten walls of width 4: a wall is a rectangle between the two circles' segments,
    // area = integral of sqrt(R^2 - y^2) - sqrt(r^2 - y^2) over the wall's width.
    const under = (r: number): number => 2 * Math.sqrt(r * r - 4) + r * r * Math.asin(2 / r);
    const exact = (Math.PI * (44 * 44 - 36 * 36) - 10 * (under(44) - under(36))) / 10;
    for (const p of pieces.slice(0, 10)) expect(area(p.region)).toBeCloseTo(exact, 6);
    const outer = pieces.slice(0, 10);
    const apart = outer.slice(1).map((p) => distanceBetween(outer[0].region, p.region));
    expect(Math.min(...apart)).toBeCloseTo(4, 6);
    expect(groupOf(all({ pieces: outer }), 44)).toBe('D10');
  });

  it('go round the opening of a ring', () => {
    const ring = outlineWith('ring');
    for (const p of artworkWith('rings', {}, ring).pieces)
      expect(pokesOut(p.region, ring.inner)).toBeLessThan(1e-5);
  });

  it('says in one line what is wrong and what would do', () => {
    const draw = (values: Values): unknown => artworkWith('rings', values, lid);
    expect(() => draw({ rings: 9 })).toThrow(
      /^pattern.rings: 9 do not fit round the eye, or get too narrow; use 3 at most/,
    );
    expect(() => draw({ rings: 3 })).not.toThrow();
    expect(() => draw({ ring: 50 })).toThrow(
      'pattern.ring: 50 mm does not fit round the eye; make it 38 mm at most',
    );
    expect(() => draw({ segments: 40 })).toThrow(
      /^pattern.segments: 40 leave nothing of the inmost ring; use \d+ at most/,
    );
    expect(() => draw({ ring: 0.2, gap: 0.2, progression: 1, segments: 40 })).toThrow(
      /^pattern.segments: \d+ segments are more than 2000; use \d+ at most/,
    );
    expect(() => draw({ size: 100 })).toThrow(
      'pattern.size: 100 mm is too large for the outline; use 88 mm at most',
    );
  });
});

import { describe, expect, it } from 'vitest';
import { spiralRadius, spiralSpacing } from '../../../src/generators/radial/spiral.js';
import { area, contains, distanceToBoundary, type Region } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { all, groupOf } from './symmetry.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const large = outlineWith('circle', { diameter: 320, margin: 10 });

/** Radii at which a ray from the origin enters or leaves a region, from the inside out. */
function crossings(region: Region, angle: number, to: number): number[] {
  const inside = (r: number): boolean => contains(region, r * Math.cos(angle), r * Math.sin(angle));
  const out: number[] = [];
  const step = 0.05;
  for (let r = step; r < to; r += step) {
    if (inside(r) === inside(r - step)) continue;
    let [lo, hi] = [r - step, r];
    for (let k = 0; k < 40; k++) {
      const mid = (lo + hi) / 2;
      if (inside(mid) === inside(lo)) lo = mid;
      else hi = mid;
    }
    out.push(hi);
  }
  return out;
}

const plain = { style: 'arms', strap: 4, taper: 1, disc: 0, gap: 2 };

describe('spiral arms', () => {
  it('Archimedean: turns lie the same distance apart (Archimedes, On Spirals, from memory)', () => {
    const sweep = 10 * Math.PI;
    const region = all(
      artworkWith('spiral-arms', { ...plain, arms: 1, spiral: 'archimedean', sweep, eye: 40 }, large),
    );
    // The middle line runs from radius 22 to 148 in five turns: 25.2 mm a turn.
    for (const angle of [0.3, 2, 4]) {
      const c = crossings(region, angle, 150);
      expect(c).toHaveLength(10);
      for (let i = 2; i < c.length; i++) expect((c[i] - c[i - 2]) / 25.2).toBeCloseTo(1, 2);
    }
  });

  it('logarithmic: turns grow by one ratio, at one angle to the radius', () => {
    const spiral = { kind: 'logarithmic', from: 5, to: 80, sweep: 4 } as const;
    for (const t of [0, 0.3, 0.7, 1]) {
      const [r, dr] = spiralRadius(spiral, t);
      expect(r).toBeCloseTo(5 * 16 ** t, 10);
      expect((r * 4) / dr).toBeCloseTo(4 / Math.log(16), 10);
      const [, after] = spiralRadius(spiral, t + 1e-6);
      expect((after - dr) / 1e-6).toBeCloseTo(spiralRadius(spiral, t)[2], 2);
    }
    const region = all(
      artworkWith(
        'spiral-arms',
        { ...plain, arms: 1, spiral: 'logarithmic', sweep: 6 * Math.PI, eye: 20, strap: 2, gap: 1 },
        large,
      ),
    );
    const c = crossings(region, 1, 150);
    const middles = [];
    for (let i = 0; i + 1 < c.length; i += 2) middles.push((c[i] + c[i + 1]) / 2);
    expect(middles).toHaveLength(3);
    expect(middles[2] / middles[1]).toBeCloseTo(middles[1] / middles[0], 1);
  });

  it('have the width asked for all along, and taper', () => {
    for (const taper of [1, 0.5]) {
      const { pieces } = artworkWith(
        'spiral-arms',
        { ...plain, arms: 3, sweep: 2, strap: 8, taper, eye: 60, spiral: 'archimedean' },
        large,
      );
      // Few arcs do for so smooth a band.
      expect(pieces[0].region.contours[0].length).toBeLessThan(70);
      // Along the middle line the boundary is half the width away.
      const [from, to] = [30 + 4 * taper, 146];
      for (const t of [0.1, 0.4, 0.8]) {
        const r = from + (to - from) * t;
        const a = Math.PI / 2 + 2 * t;
        const half = 4 * (taper + (1 - taper) * t);
        const d = distanceToBoundary(pieces[0].region, r * Math.cos(a), r * Math.sin(a));
        // A taper leans the sides by under 2 degrees.
        expect(Math.abs(d - half)).toBeLessThan(taper === 1 ? 0.002 : 0.01);
      }
    }
  });

  it('blades fill the ring but for walls of one gap', () => {
    const values = { arms: 5, corner: 0, disc: 0, gap: 4, eye: 40, spiral: 'archimedean' };
    const { pieces } = artworkWith('spiral-arms', values, lid);
    expect(pieces).toHaveLength(5);
    expect(distanceBetween(pieces[0].region, pieces[1].region)).toBeCloseTo(4, 2);
    // Length of an Archimedean arm, radius 20 to 44 over 80 degrees, by Simpson's rule; walls take that by 4.
    const w = (80 / 180) * Math.PI;
    const speed = (t: number): number => Math.hypot(24, (20 + 24 * t) * w);
    let length = 0;
    for (let i = 0; i < 100; i++)
      length += (speed(i / 100) + 4 * speed((i + 0.5) / 100) + speed((i + 1) / 100)) / 600;
    const left = Math.PI * (44 * 44 - 20 * 20) - area(all({ pieces }));
    expect(left / (5 * 4 * length)).toBeCloseTo(1, 2);
  });

  it('is symmetric as C_n, a mirror image for the other sweep', () => {
    const draw = (values: Values): Region => all(artworkWith('spiral-arms', values, lid));
    expect(groupOf(draw({}), 44)).toBe('C6');
    expect(groupOf(draw({ style: 'arms', arms: 5 }), 44)).toBe('C5');
    expect(groupOf(draw({ sweep: 0, arms: 7, corner: 0 }), 44)).toBe('D7');
    const [left, right] = [draw({ sweep: 1 }), draw({ sweep: -1 })];
    for (let i = 0; i < 300; i++) {
      const [r, a] = [44 * Math.sqrt(i / 300), i * 2.4];
      const [x, y] = [r * Math.cos(a), r * Math.sin(a)];
      if (distanceToBoundary(left, x, y) > 0.01) expect(contains(right, -x, y)).toBe(contains(left, x, y));
    }
  });

  it('is sound and inside the margin on every outline', () => {
    const cases: Values[] = [{}, { style: 'arms', arms: 4 }, { spiral: 'archimedean', sweep: -2, arms: 5 }];
    for (const outline of [lid, outlineWith('ring'), outlineWith('stave')])
      for (const values of cases)
        for (const p of artworkWith('spiral-arms', values, outline).pieces) {
          expectSound(p.region);
          expect(pokesOut(p.region, outline.inner)).toBeLessThan(0.004);
        }
  });

  it('says in one line what is wrong and what would do', () => {
    const draw = (values: Values): unknown => artworkWith('spiral-arms', { disc: 0, ...values }, lid);
    expect(() => draw({ style: 'arms', arms: 20 })).toThrow(/^pattern.arms: 20 crowd the eye; use 6 at most/);
    expect(() => draw({ style: 'arms', arms: 6 })).not.toThrow();
    expect(() => draw({ style: 'arms', sweep: 60 })).toThrow('even one lies too near its own next turn');
    expect(() => draw({ corner: 30 })).toThrow('pattern.corner: 30 mm is more than half the width');
    expect(() => draw({ disc: 40 })).toThrow('pattern.disc: 40 mm fills the eye; make it less than 26 mm');
    expect(spiralSpacing({ kind: 'archimedean', from: 10, to: 20, sweep: 0 }, 4)).toBeCloseTo(5 * Math.PI, 9);
  });
});

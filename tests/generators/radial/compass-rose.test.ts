import { describe, expect, it } from 'vitest';
import { area, contains, type Region } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { all, groupOf } from './symmetry.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const large = outlineWith('circle', { diameter: 320, margin: 10 });

function draw(values: Values, outline = large): Region[] {
  return artworkWith('compass-rose', { band: 0, ...values }, outline).pieces.map((p) => p.region);
}

/** Direction of the farthest corner, degrees clockwise from the top, and how far it lies. */
function tip(region: Region): [number, number] {
  const e = region.contours
    .flat()
    .reduce((a, b) => (Math.hypot(b.x0, b.y0) > Math.hypot(a.x0, a.y0) ? b : a));
  return [((Math.atan2(e.x0, e.y0) * 180) / Math.PI + 360) % 360, Math.hypot(e.x0, e.y0)];
}

describe('compass-rose', () => {
  // The winds are 90, 45, 22.5 and 11.25 degrees apart (boxing the compass; common knowledge, no source).
  for (const [points, apart] of [
    ['4', 90],
    ['8', 45],
    ['16', 22.5],
    ['32', 11.25],
  ] as const)
    it(`${points} points look ${apart} degrees apart, the main ones longest`, () => {
      const tips = draw({ points, waist: 0.25, shorter: 0.85, gap: 0.2 }).map(tip);
      // Counted clockwise: after the top comes the right.
      expect(tips[1][0]).toBeCloseTo(90, 6);
      const directions = tips.map(([d]) => d).sort((a, b) => a - b);
      directions.forEach((d, i) => {
        expect(d).toBeCloseTo(i * apart, 6);
      });
      expect(directions).toHaveLength(Number(points));
      for (const [d, length] of tips) {
        const rank =
          d % 90 < 0.01 || d % 90 > 89.99
            ? 0
            : Math.abs((d % 90) - 45) < 0.01
              ? 1
              : (d % 22.5) % 22.4 < 0.2
                ? 2
                : 3;
        expect(length).toBeCloseTo(150 * 0.85 ** rank, 6);
      }
    });

  it('splits each point: its half and the mirrored half make the whole', () => {
    const star = draw({ points: '4', style: 'solid', eye: 0 });
    const halves = draw({ points: '4', eye: 0 });
    expect(star).toHaveLength(1);
    expect(area({ contours: halves.flatMap((h) => h.contours) })).toBeCloseTo(area(star[0]) / 2, 6);
    // Shoelace by hand: corners (0, 0), (w, -w), (150, 0) with w = 0.33 * 150 / sqrt 2.
    expect(area(halves[0])).toBeCloseTo((150 * 0.33 * 150) / Math.SQRT2 / 2, 6);
    // East's half lies clockwise of its axis: below it.
    const east = halves.find((h) => Math.abs(tip(h)[0] - 90) < 1e-6)!;
    expect(contains(east, 75, -2)).toBe(true);
    expect(contains(east, 75, 2)).toBe(false);
  });

  it('is symmetric as C_4 where split and as D_4 where solid', () => {
    const group = (values: Values): string => groupOf(all(artworkWith('compass-rose', values, large)), 150);
    expect(group({})).toBe('C4');
    expect(group({ points: '16' })).toBe('C4');
    expect(group({ style: 'solid', band: 0 })).toBe('D4');
    expect(group({ style: 'solid', shorter: 1, waist: 0.6 })).toBe('D8');
  });

  it('keeps halves and the ring behind them one gap apart', () => {
    const { pieces } = artworkWith('compass-rose', { points: '8', eye: 40 }, large);
    const points = pieces.filter((p) => p.name.startsWith('point'));
    const band = pieces.filter((p) => p.name.startsWith('band'));
    expect(points).toHaveLength(8);
    expect(band).toHaveLength(8);
    let least = Number.POSITIVE_INFINITY;
    pieces.forEach((a, i) => {
      expectSound(a.region);
      for (const b of pieces.slice(i + 1)) least = Math.min(least, distanceBetween(a.region, b.region));
    });
    expect(least).toBeCloseTo(4.2, 4);
  });

  it('is inside the margin on every outline, and goes round the opening of a ring', () => {
    const ring = outlineWith('ring', { diameter: 260, bore: 60, margin: 8 });
    for (const outline of [lid, ring, outlineWith('stave')])
      for (const p of artworkWith('compass-rose', {}, outline).pieces)
        expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-5);
  });

  it('says in one line what is wrong and what would do', () => {
    expect(() => draw({ eye: 60 }, lid)).toThrow(
      /^pattern.eye: 60 mm cuts the points apart; make it less than 29.04 mm/,
    );
    expect(() => draw({ points: '32', shorter: 0.5 }, lid)).toThrow(
      /^pattern.points: some of 32 stand hidden/,
    );
    expect(() => draw({ shorter: 0.2, waist: 0.5 }, lid)).toThrow(/^pattern.shorter: the shortest points/);
    expect(() => draw({ disc: 14 }, lid)).toThrow(
      'pattern.disc: 14 mm fills the eye; make it less than 13 mm',
    );
  });
});

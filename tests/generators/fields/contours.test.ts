import { describe, expect, it } from 'vitest';
import { levelContours, sampled } from '../../../src/generators/fields/level.js';
import { evenLevels } from '../../../src/generators/fields/levels.js';
import { cone, plus, rolling, type Surface, slope } from '../../../src/generators/fields/smooth.js';
import { endTangent, midpoint, startTangent } from '../../../src/geometry/edge.js';
import { contourArea, polygon, type Region } from '../../../src/geometry/region.js';
import { Refusal } from '../../../src/schema/fault.js';
import { artworkWith, distanceBetween, expectSound, outlineWith } from '../../support/artwork.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const field: Region = { contours: [polygon([[-44, -44], [44, -44], [44, 44], [-44, 44]])] }; // biome-ignore format: a square
const box = { minX: -60, minY: -60, maxX: 60, maxY: 60 };
const CELL = 2;

const surfaces: [string, Surface][] = [
  ['rolling ground', rolling(4, 36)],
  ['rings', plus(cone(3, -20, 4), 14, rolling(2, 36))],
  ['ripples', plus(slope(0, 1), 16, rolling(9, 30))],
];

describe.each(surfaces)('contour lines of %s', (_, surface) => {
  const samples = sampled(surface, box, CELL);
  const levels = evenLevels(surface, samples, field, 9);

  it('lie on their level within a hundredth of a grid cell, smoothly', () => {
    let seen = 0;
    for (const level of levels)
      for (const c of levelContours(surface, samples, level))
        c.forEach((e, i) => {
          if (Math.max(Math.abs(e.x0), Math.abs(e.y0), Math.abs(e.x1), Math.abs(e.y1)) > 50) return;
          for (const [x, y] of [[e.x0, e.y0] as const, midpoint(e)]) {
            const [gx, gy] = surface.gradient(x, y);
            expect(Math.abs(surface.value(x, y) - level) / Math.hypot(gx, gy)).toBeLessThan(0.01 * CELL);
            seen++;
          }
          const [ax, ay] = endTangent(e);
          const [bx, by] = startTangent(c[(i + 1) % c.length]!);
          expect(Math.abs(ax * by - ay * bx)).toBeLessThan(1e-5);
        });
    expect(seen).toBeGreaterThan(100);
  });

  it('keep their distance: what is higher lies within what is lower', () => {
    const heights = levels.flatMap((level) =>
      levelContours(surface, samples, level).map((c) => [level, c] as const),
    );
    for (const [level, c] of heights)
      for (const e of c) {
        if (Math.max(Math.abs(e.x0), Math.abs(e.y0)) > 50) continue;
        // A step to the left of the line is uphill.
        const [tx, ty] = startTangent(e);
        expect(surface.value(e.x0 - 0.1 * ty, e.y0 + 0.1 * tx)).toBeGreaterThan(level);
      }
  });

  it('the slope is that of the heights', () => {
    for (const [x, y] of [
      [1.3, 2.7],
      [-17.9, 30.2],
      [36.01, -36.01],
      [-40, 0.5],
    ] as const) {
      // biome-ignore format: places
      const h = 1e-5;
      const [gx, gy] = surface.gradient(x, y);
      expect(gx).toBeCloseTo((surface.value(x + h, y) - surface.value(x - h, y)) / (2 * h), 6);
      expect(gy).toBeCloseTo((surface.value(x, y + h) - surface.value(x, y - h)) / (2 * h), 6);
    }
  });
});

/** A surface whose level lines are known: circles about (3, -2), x^2 + y^2 = r^2 (elementary). */
it('the contour of a cone is a circle of its radius, counter-clockwise round high ground', () => {
  const pit = cone(3, -2, 0.001);
  const [circle] = levelContours(
    { value: (x, y) => -pit.value(x, y), gradient: down(pit) },
    sampled(neg(pit), box, 2),
    -25,
  );
  expect(contourArea(circle!)).toBeCloseTo(Math.PI * 625, 0);
  for (const e of circle!) expect(Math.hypot(e.x0 - 3, e.y0 + 2)).toBeCloseTo(25, 6);
});

/** The sum of cubic B-splines is 1 everywhere (de Boor 1978): heights never leave those of the grid. */
it('rolling ground stays between -1 and 1 and repeats for its seed alone', () => {
  const a = rolling(7, 10);
  const b = rolling(7, 10);
  const c = rolling(8, 10);
  let differs = 0;
  for (let x = -50; x < 50; x += 3.7) {
    expect(Math.abs(a.value(x, 2 * x))).toBeLessThan(1);
    expect(a.value(x, 2 * x)).toBe(b.value(x, 2 * x));
    if (a.value(x, 2 * x) !== c.value(x, 2 * x)) differs++;
  }
  expect(differs).toBeGreaterThan(20);
});

describe('the generator', () => {
  it.each(['rings', 'waves', 'hills'])('draws %s soundly in every plug', (ground) => {
    for (const plug of ['lines', 'steps']) {
      const { pieces } = artworkWith('contours', { ground, plug }, lid);
      expect(pieces.length).toBeGreaterThan(0);
      for (const p of pieces) expectSound(p.region);
    }
  });

  it('keeps lines about the gap apart or further', () => {
    const { pieces } = artworkWith('contours', { ground: 'waves', frame: false }, lid);
    expect(pieces.length).toBeGreaterThan(5);
    for (let i = 0; i < pieces.length; i++)
      for (let j = 0; j < i; j++)
        expect(distanceBetween(pieces[i]!.region, pieces[j]!.region)).toBeGreaterThan(0.95 * 4.2);
  });

  it('draws alike for a seed and otherwise for another', () => {
    const drawn = (seed: number): string => JSON.stringify(artworkWith('contours', { seed }, lid));
    expect(drawn(1)).toBe(drawn(1));
    expect(drawn(1)).not.toBe(drawn(2));
  });

  it('refuses bends too many to follow and gaps too wide for the outline', () => {
    expect(() =>
      artworkWith('contours', { grain: 5 }, outlineWith('rectangle', { width: 900, height: 900 })),
    ).toThrow(/pattern\.grain: .* use \d+ mm or more/);
    expect(() => artworkWith('contours', { strap: 0.2, gap: 0.2, ground: 'waves' }, lid)).toThrow(
      /pattern\.gap/,
    );
    expect(() => artworkWith('contours', { ground: 'waves', fill: 'whole' }, lid)).toThrow(Refusal);
  });
});

function neg(s: Surface): Surface {
  return { value: (x, y) => -s.value(x, y), gradient: down(s) };
}

function down(s: Surface): Surface['gradient'] {
  return (x, y) => {
    const [gx, gy] = s.gradient(x, y);
    return [-gx, -gy];
  };
}

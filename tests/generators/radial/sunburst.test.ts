import { describe, expect, it } from 'vitest';
import { bounds, type Region } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { all, groupOf } from './symmetry.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

function rays(values: Values, outline = lid): Region[] {
  return artworkWith('sunburst', values, outline)
    .pieces.filter((p) => p.name.startsWith('ray'))
    .map((p) => p.region);
}

function reachOf(region: Region): number {
  return Math.max(...region.contours.flat().map((e) => Math.hypot(e.x0, e.y0)));
}

describe('sunburst', () => {
  it('widening rays keep one gap from the hub out', () => {
    for (const count of [8, 12, 15]) {
      const [a, b] = rays({ rays: count, short: 1, gap: 4, hub: 36 });
      expect(distanceBetween(a, b)).toBeCloseTo(4, 6);
      // Measured at the outer corners, too: the sides are parallel to the line midway between.
      const tips = (r: Region) => ({
        contours: r.contours.map((c) => c.filter((e) => Math.hypot(e.x0, e.y0) > 43.9)),
      });
      expect(distanceBetween(tips(a), b)).toBeCloseTo(4, 6);
    }
  });

  it('is long and short by turns', () => {
    const all12 = rays({ rays: 12, short: 0.5, gap: 4, hub: 30 });
    all12.forEach((r, i) => {
      expect(reachOf(r)).toBeCloseTo(i % 2 === 0 ? 44 : 19 + 25 / 2, 6);
    });
  });

  it('round ends reach the circle, too', () => {
    for (const ray of ['even', 'tapering'])
      expect(reachOf(rays({ ray, rays: 8, short: 1 })[0])).toBeCloseTo(44, 6);
  });

  it('is symmetric as D_n, or C_n where rays are wavy', () => {
    const draw = (values: Values): string => groupOf(all(artworkWith('sunburst', values, lid)), 44);
    expect(draw({ rays: 9, short: 1 })).toBe('D9');
    expect(draw({ rays: 12 })).toBe('D6');
    expect(draw({ rays: 10, short: 1, wavy: 'all', ray: 'even' })).toBe('C10');
    expect(draw({ rays: 10, short: 1, wavy: 'second', ray: 'tapering' })).toBe('C5');
  });

  it('a half stands on the bottom edge, alike on both sides; a quarter in the corner', () => {
    const half = all(artworkWith('sunburst', { part: 'half' }, lid));
    const box = bounds(half.contours);
    expect(box.minY).toBeCloseTo(-44, 9);
    expect(box.minX).toBeCloseTo(-box.maxX, 6);
    expect(rays({ part: 'half', rays: 18 })).toHaveLength(9);
    expect(rays({ part: 'half', rays: 16 })).toHaveLength(7);
    expect(rays({ part: 'quarter', rays: 20, hub: 40 })).toHaveLength(5);
    const quarter = bounds(
      all(artworkWith('sunburst', { part: 'quarter', reach: 'outline', short: 1 }, lid)).contours,
    );
    expect(
      [quarter.minX, quarter.minY, quarter.maxX, quarter.maxY].map((v) => Math.abs(v).toFixed(6)),
    ).toEqual(Array(4).fill('44.000000'));
  });

  it('is sound and inside the margin on every outline', () => {
    const outlines = [lid, outlineWith('circle'), outlineWith('stave'), outlineWith('polygon')];
    for (const outline of outlines)
      for (const part of ['whole', 'half', 'quarter'])
        for (const reach of ['circle', 'outline'])
          for (const p of artworkWith('sunburst', { part, reach, wavy: 'second', hub: 34 }, outline).pieces) {
            expectSound(p.region);
            expect(pokesOut(p.region, outline.inner)).toBeLessThan(0.004);
          }
    const ring = outlineWith('ring');
    for (const r of rays({}, ring)) expect(pokesOut(r, ring.inner)).toBeLessThan(1e-5);
  });

  it('says in one line what is wrong and what would do', () => {
    expect(() => rays({ rays: 13 })).toThrow('pattern.rays: 13 cannot be long and short by turns; use 14');
    expect(() => rays({ hub: 85 })).toThrow('pattern.rings: 0 leave no room');
    let message = '';
    try {
      rays({ rays: 60 });
    } catch (e) {
      message = String(e);
    }
    const hub = Number(/rays crowd the hub; use fewer, or a hub of ([\d.]+) mm at least/.exec(message)?.[1]);
    expect(() => rays({ rays: 60, hub }, outlineWith('circle', { diameter: 300 }))).not.toThrow();
    expect(() => rays({ rays: 60, hub: hub - 1 }, outlineWith('circle', { diameter: 300 }))).toThrow();
  });
});

import { describe, expect, it, test } from 'vitest';
import { build } from '../../src/build.js';
import { bounds, flatten, type Region } from '../../src/geometry/region.js';
import type { Outline } from '../../src/outline/outline.js';
import { readRecipe } from '../../src/recipe/read.js';
import { assets } from '../support/artwork.js';

const recipe = (pattern: object, more: object = {}) =>
  readRecipe(
    JSON.stringify({
      name: 'vessel',
      bowl: {
        sides: 8,
        slope: 80,
        height: 150,
        floor: 10,
        continuous: true,
        outside: { shape: 'straight', bottom: 180, top: 220 },
        wall: 10,
        ...more,
      },
      outline: { margin: 12 },
      pattern,
      cutter: { diameter: 3, flute: 30, ease: 0.3 },
      depth: 24,
      skin: 1,
    }),
    'vessel',
  );

/** Heights at which a region's edge crosses a joint of the drawn face: the right one, or with -1 the left one. */
function crossings(region: Region, { sizes }: Outline, side: 1 | -1): number[] {
  const { bottom, top, height } = sizes as Record<string, number>;
  const beyond = ([x, y]: readonly [number, number]): number =>
    side * x - (bottom! + (top! - bottom!) * (0.5 + y / height!)) / 2;
  const out: number[] = [];
  for (const contour of region.contours) {
    const points = flatten(contour, 0.0005);
    points.forEach((p, k) => {
      const q = points[(k + 1) % points.length]!;
      const [a, b] = [beyond(p), beyond(q)];
      if (a > 0 !== b > 0) out.push(p[1] + (a / (a - b)) * (q[1] - p[1]));
    });
  }
  return out.sort((a, b) => a - b);
}

describe('a pattern that runs on over the joints', () => {
  test.each([
    ['tiling', { generator: 'tiling', band: 60 }],
    ['hexagons cut at the edge', { generator: 'dots', size: 11, gap: 5 }],
    ['a wave', { generator: 'wave', height: 20 }],
    ['a plait', { generator: 'guilloche', height: 30, strap: 5 }],
    ['a key', { generator: 'meander' }],
  ])('%s: meets its neighbour within a hundredth of a millimetre', (_, pattern) => {
    const { pair, outline } = build(recipe(pattern), assets);
    for (const region of [pair.pocket, pair.plug]) {
      const [right, left] = [crossings(region, outline, 1), crossings(region, outline, -1)];
      expect(right.length).toBeGreaterThan(1);
      expect(left.length).toBe(right.length);
      right.forEach((h, k) => {
        expect(Math.abs(h - left[k]!)).toBeLessThan(0.01);
      });
    }
  });

  it('does not without being told: a motif stays within its margin', () => {
    const { pair, outline } = build(recipe({ generator: 'tiling', band: 60 }, { continuous: false }), assets);
    expect(crossings(pair.pocket, outline, 1)).toEqual([]);
  });

  it('draws nothing where the stave will not survive', () => {
    const slope = Math.PI / 3;
    const { pair } = build(
      recipe({ generator: 'tiling' }, { slope: 60, outside: { shape: 'straight', bottom: 240, top: 280 } }),
      assets,
    );
    // A wall steeper than its staves touches their faces at the foot and lies deep under them at the rim, where a line
    // into the wood comes out above it: past (H - depth cos) / sin along the stave, which is H / sin long.
    const apothem = 120 + 1.5 / Math.sin(slope);
    const depth = 150 * Math.cos(slope) - (140 - apothem) * Math.sin(slope);
    const most = (150 - depth * Math.cos(slope)) / Math.sin(slope) - 75 / Math.sin(slope);
    const { maxY } = bounds(pair.pocket.contours);
    expect(most).toBeLessThan(75 / Math.sin(slope) - 30);
    expect(maxY).toBeLessThan(most + 0.01);
    expect(maxY).toBeGreaterThan(most - 15);
  });

  it('shows the same on both faces but for size: nothing is told of mirrors', () => {
    const { findings } = build(recipe({ generator: 'tiling', band: 60 }), assets);
    const codes = findings.map((f) => f.code);
    expect(codes).not.toContain('mirrored-inside');
    expect(codes).not.toContain('carved-away');
  });
});

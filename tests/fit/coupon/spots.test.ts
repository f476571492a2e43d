import { describe, expect, it } from 'vitest';
import { corners } from '../../../src/fit/coupon/corners.js';
import { thinnest } from '../../../src/fit/coupon/narrows.js';
import { longestRun } from '../../../src/fit/coupon/runs.js';
import { placedRegion } from '../../../src/geometry/transform.js';
import { circle, hole, puffed, slab } from './shapes.js';

/*
 * Regions made by hand, whose answers are read off their own measures.
 *
 *   two slabs side by side, 10 x 30 and 6 x 30 mm, corners 2 mm, 5 mm of field between: thinnest wall 5, limb 6, run 26
 */
const SLABS = { contours: [slab(0, 0, 10, 30, 2), slab(15, 0, 6, 30, 2)] };

/** A frame: 40 x 40 outside with corners of 4 mm, a hole 26 x 30 with corners of 2.5 mm; limbs 7 and 5 mm. */
const FRAME = { contours: [slab(0, 0, 40, 40, 4), hole(slab(7, 5, 26, 30, 2.5))] };

describe('walls and limbs', () => {
  it('finds the wall between two slabs, and the slimmer slab', () => {
    const wall = thinnest(SLABS, 'wall', 2)!;
    expect(wall.size).toBeCloseTo(5, 9);
    for (const { at, box } of wall.places) {
      expect(at[0]).toBeCloseTo(12.5, 9);
      expect(box.minX).toBeLessThan(10);
      expect(box.maxX).toBeGreaterThan(15);
    }
    const limb = thinnest(SLABS, 'limb', 2)!;
    expect(limb.size).toBeCloseTo(6, 9);
    for (const { at } of limb.places) expect(at[0]).toBeCloseTo(18, 9);
  });

  it('is not taken in by which way the pattern lies', () => {
    const turned = placedRegion(SLABS, 31, -7, 0.7);
    expect(thinnest(turned, 'wall', 2)!.size).toBeCloseTo(5, 9);
    expect(thinnest(turned, 'limb', 2)!.size).toBeCloseTo(6, 9);
  });

  it('finds the slimmer sides of a frame, and no wall where the hole is wide', () => {
    const limb = thinnest(FRAME, 'limb', 2)!;
    expect(limb.size).toBeCloseTo(5, 9);
    for (const { at } of limb.places) expect(Math.min(at[1], 40 - at[1])).toBeCloseTo(2.5, 9);
    expect(thinnest(FRAME, 'wall', 2)).toBeNull();
  });

  it('takes a tip for no limb, sharp or blunt: the ball on a way across must be clear of the sides', () => {
    const triangle = puffed([
      [0, 0],
      [20, 0],
      [10, 10 * Math.sqrt(3)],
    ]);
    expect(thinnest({ contours: [triangle] }, 'limb', 2)).toBeNull();
    // Top and base are 10 mm apart, but a ball of 10 mm between them is 4.5 mm from the sides.
    const blunt = puffed([
      [0, 0],
      [13, 0],
      [7, 6],
      [6, 6],
    ]);
    expect(thinnest({ contours: [blunt] }, 'limb', 2)).toBeNull();
  });

  it('takes a round dot as thick as its diameter, and a round hole likewise', () => {
    expect(thinnest({ contours: [circle(3, 4, 2.5)] }, 'limb', 2)!.size).toBeCloseTo(5, 9);
    const ring = { contours: [circle(0, 0, 10), hole(circle(0, 0, 4))] };
    expect(thinnest(ring, 'wall', 2)!.size).toBeCloseTo(8, 9);
  });

  it('sees the wall across a bay of one contour, not through a part that stands between', () => {
    const apart = { contours: [slab(0, 0, 10, 30, 2), slab(14.5, 12, 5, 6, 2), slab(24, 0, 10, 30, 2)] };
    expect(thinnest(apart, 'wall', 2)!.size).toBeCloseTo(4.5, 9);
  });
});

describe('corners', () => {
  it('finds the tightest on either side, with its turn', () => {
    const pocket = corners(FRAME, 'pocket', 2)!;
    expect(pocket.size).toBeCloseTo(4, 9);
    expect(pocket.turn).toBeCloseTo(Math.PI / 2, 9);
    expect(pocket.places).toHaveLength(4);
    const plug = corners(FRAME, 'plug', 2)!;
    expect(plug.size).toBeCloseTo(2.5, 9);
    expect(plug.places).toHaveLength(4);
    // Middle of a quarter circle of 2.5 mm about (9.5, 7.5).
    const inner = plug.places.map((p) => p.at).find(([x, y]) => x < 20 && y < 20)!;
    expect(inner[0]).toBeCloseTo(9.5 - 2.5 * Math.SQRT1_2, 9);
    expect(inner[1]).toBeCloseTo(7.5 - 2.5 * Math.SQRT1_2, 9);
  });

  it('of equally tight ones takes those that turn the most', () => {
    // A slab as wide as two corners: each of its ends is a half circle, in two arcs.
    const real = (e: { x0: number; x1: number; y0: number; y1: number }): boolean =>
      e.x0 !== e.x1 || e.y0 !== e.y1;
    const tips = { contours: [slab(0, 0, 4, 30, 2).filter(real), slab(20, 0, 20, 20, 2)] };
    const found = corners(tips, 'pocket', 2)!;
    expect(found.turn).toBeCloseTo(Math.PI, 9);
    expect(found.places.map((p) => p.at[1]).sort((a, b) => a - b)).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(30, 9),
    ]);
  });

  it('takes gentle curves for no corners', () => {
    expect(corners({ contours: [circle(0, 0, 30)] }, 'pocket', 2)).toBeNull();
    expect(corners(SLABS, 'plug', 2)).toBeNull();
  });
});

describe('straight runs', () => {
  it('finds the longest, and a stretch of it from its middle', () => {
    const run = longestRun(SLABS, 2, 100)!;
    expect(run.size).toBeCloseTo(26, 9);
    expect(run.places).toHaveLength(4);
    const short = longestRun(SLABS, 2, 12)!.places[0]!;
    expect(short.at[1]).toBeCloseTo(15, 9);
    expect(short.box.maxY - short.box.minY).toBeCloseTo(12 + 2 * 0.25, 9);
  });

  it('takes edges that go straight on for one run, also over the start of the contour', () => {
    const c = slab(0, 0, 10, 30, 2);
    const [first, ...rest] = c;
    const half = { ...first!, x1: 5 };
    const cut = [{ ...first!, x0: 5 }, ...rest, half];
    expect(longestRun({ contours: [cut] }, 2, 100)!.size).toBeCloseTo(26, 9);
    const along = c.flatMap((e) =>
      e.x0 === e.x1
        ? [
            { ...e, y1: (e.y0 + e.y1) / 2 },
            { ...e, y0: (e.y0 + e.y1) / 2 },
          ]
        : [e],
    );
    expect(longestRun({ contours: [along] }, 2, 100)!.size).toBeCloseTo(26, 9);
  });

  it('finds none in what is round', () => {
    expect(longestRun({ contours: [circle(0, 0, 10)] }, 2, 100)).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import type { Safe } from '../../../src/cutter/safe.js';
import { tightPlaces } from '../../../src/cutter/tight.js';
import { boardOf, SAW_KERF } from '../../../src/fit/coupon/board.js';
import { woodRound } from '../../../src/fit/coupon/dots.js';
import { makePatch } from '../../../src/fit/coupon/patch.js';
import { leastSize, planStep } from '../../../src/fit/coupon/plan.js';
import { arrangements } from '../../../src/fit/coupon/slicing.js';
import { bounds } from '../../../src/geometry/region.js';
import { hole, slab } from './shapes.js';

const RULE = { r: 2, thin: 'drop', touch: 'part' } as const;
const NONE = { wall: Number.POSITIVE_INFINITY, limb: Number.POSITIVE_INFINITY };

function safe(...contours: ReturnType<typeof slab>[]): Safe {
  const region = { contours };
  return { region, pieces: [{ name: 'all', region }], changes: [] };
}

/** A board of two things far apart: two slabs with a wall of 5 mm, and 300 mm away a frame with limbs of 5 mm. */
const FAR = safe(
  slab(0, 0, 10, 30, 2),
  slab(15, 0, 8, 30, 2),
  slab(300, 0, 40, 40, 4),
  hole(slab(307, 5, 26, 30, 2.5)),
);

describe('a window', () => {
  const box = { minX: 9, maxX: 16, minY: 12, maxY: 18 };
  const window = { minX: 4, maxX: 21, minY: 8, maxY: 22 };

  it('keeps the places it is for, and makes the rest cuttable', () => {
    const { region, kept } = makePatch(FAR.pieces, window, [box], RULE, { wall: 5, limb: 5 });
    expect(kept).toBe(true);
    expect(region.contours).toHaveLength(2);
    expect(tightPlaces(region.contours, 2)).toEqual([]);
    const b = bounds(region.contours);
    expect([b.minX, b.maxX, b.minY, b.maxY]).toEqual([4, 21, 8, 22].map((v) => expect.closeTo(v, 6)));
  });

  it('says when its own corners reach into a place', () => {
    const tooNear = { minX: 4, maxX: 21, minY: 11, maxY: 19 };
    expect(makePatch(FAR.pieces, tooNear, [box], RULE, NONE).kept).toBe(false);
  });

  it('says when what it leaves is thinner than the pattern', () => {
    // It cuts the left slab to 4.2 mm, where no limb of the pattern is under 5.
    const slim = { ...window, minX: 5.8 };
    expect(makePatch(FAR.pieces, slim, [box], RULE, { wall: 5, limb: 5 }).harder).toBe(true);
    expect(makePatch(FAR.pieces, window, [box], RULE, { wall: 5, limb: 5 }).harder).toBe(false);
  });

  it('leaves crumbs out that have no place in them', () => {
    const wide = { ...window, maxY: 22 };
    const crumb = { name: 'crumb', region: { contours: [slab(5, 33, 5, 5, 2)] } };
    const tall = { ...wide, maxY: 40 };
    expect(makePatch([...FAR.pieces, crumb], tall, [box], RULE, NONE).region.contours).toHaveLength(2);
  });
});

describe('a step', () => {
  const request = { rule: RULE, size: 40, edge: 5, dots: 5 };

  it('holds spots that lie 300 mm apart, each as it is on the piece', () => {
    const step = planStep(FAR, request)!;
    expect(step.spots.map((s) => s.spot.kind).sort()).toEqual([
      'limb',
      'plug-corner',
      'pocket-corner',
      'run',
      'wall',
    ]);
    for (const s of step.spots) expect(s.kept, s.spot.kind).toBe(true);
    const b = bounds(step.figure.contours);
    // The wood it says, with the edge on the sides that hold no dots.
    expect(b.minX).toBeGreaterThanOrEqual(5 - 1e-9);
    expect(b.minY).toBeGreaterThanOrEqual(5 - 1e-9);
    expect(step.width - b.maxX).toBeGreaterThanOrEqual(5 - 1e-9);
    expect(step.height - b.maxY).toBeGreaterThanOrEqual(5 - 1e-9);
    expect(Math.max(b.maxX - b.minX, b.maxY - b.minY)).toBeLessThanOrEqual(40 + 1e-9);
    expect(tightPlaces(step.figure.contours, 2)).toEqual([]);
  });

  it('is refused a size that is too small, and the least one named works where one less does not', () => {
    expect(planStep(FAR, { ...request, size: 10 })).toBeNull();
    const least = leastSize(FAR, { ...request, size: 10 }, 100)!;
    expect(planStep(FAR, { ...request, size: least })).not.toBeNull();
    expect(planStep(FAR, { ...request, size: least - 1 })).toBeNull();
  });
});

describe('packing', () => {
  it('finds the smallest box of three blocks, by every way to lay them', () => {
    // 1 mm between: all in a row 21 x 4; no wider than 12, the first over the two others, 10 x 9. By hand.
    const ways = arrangements(
      [
        [10, 4],
        [6, 4],
        [3, 4],
      ],
      1,
      100,
    );
    expect(Math.min(...ways.map((w) => w.width * w.height))).toBeCloseTo(84, 9);
    const narrow = arrangements(
      [
        [10, 4],
        [6, 4],
        [3, 4],
      ],
      1,
      12,
    );
    expect(Math.min(...narrow.map((w) => w.width * w.height))).toBeCloseTo(90, 9);
    for (const w of ways)
      for (const a of w.blocks)
        for (const b of w.blocks) {
          if (a.block === b.block) continue;
          const size = [
            [10, 4],
            [6, 4],
            [3, 4],
          ];
          const [aw, ah] = size[a.block]!;
          const [bw, bh] = size[b.block]!;
          const apart = Math.max(b.x - a.x - aw!, a.x - b.x - bw!, b.y - a.y - ah!, a.y - b.y - bh!);
          expect(apart).toBeGreaterThanOrEqual(1 - 1e-9);
        }
  });

  it('finds nothing where nothing fits', () => {
    expect(
      arrangements(
        [
          [10, 4],
          [10, 4],
        ],
        1,
        9,
      ),
    ).toEqual([]);
  });

  it('lays steps with room for the saw, first at the upper left', () => {
    const { boxes, width, height } = boardOf(5, 30, 40);
    expect(width * height).toBeLessThanOrEqual(1.05 * (5 * 30 + 4 * SAW_KERF) * 40 + 1e-9);
    expect(boxes[0]!.minX).toBeCloseTo(-width / 2, 9);
    expect(boxes[0]!.maxY).toBeCloseTo(height / 2, 9);
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const apart = Math.max(b.minX - a.maxX, a.minX - b.maxX, b.minY - a.maxY, a.minY - b.maxY);
        expect(apart).toBeGreaterThanOrEqual(SAW_KERF - 1e-9);
      }
    });
  });

  it('puts dots clear of the cutter that cuts the plug out, of each other and of the edge', () => {
    for (const [w, h, n] of [
      [20, 30, 5],
      [30, 12, 9],
      [8, 8, 9],
    ] as const) {
      const wood = woodRound(w, h, 5, n, 2);
      expect(wood.dots).toHaveLength(n);
      wood.dots.forEach(([x, y], i) => {
        const dx = Math.max(wood.left - x, 0, x - wood.left - w);
        const dy = Math.max(wood.low - y, 0, y - wood.low - h);
        expect(Math.sqrt(dx * dx + dy * dy) - 2).toBeGreaterThanOrEqual(2 * 2 - 1e-9);
        expect(Math.min(x, y, wood.width - x, wood.height - y)).toBeGreaterThan(2);
        for (const [u, v] of wood.dots.slice(i + 1))
          expect(Math.sqrt((u - x) * (u - x) + (v - y) * (v - y))).toBeGreaterThan(2 * 2 + 0.5);
      });
    }
  });
});

import { describe, expect, it } from 'vitest';
import { circle, type Region } from '../../src/geometry/region.js';
import { placedRegion } from '../../src/geometry/transform.js';
import { hardOutlines } from '../support/hard-outlines.js';
import { box, comb, hole, needle, one, R } from '../support/hard-shapes.js';
import { broken, followsMoves, laws } from '../support/law-list.js';
import { byBothRoutes, passed, spill } from '../support/laws.js';
import { gapOff, outside, stray } from '../support/meters.js';
import { EXACT, FEW, isCritical, MIRRORED, MOVES, strayUnder } from '../support/moves.js';
import { randomOutline } from '../support/random-outlines.js';
import { ringsOf } from '../support/rings.js';

/** Left to the long run for their time, or refused as asked. */
const LEFT_OUT =
  /^(huge|nested|spiral|thousand|Koch|koch|dragon|plus 4|carpet 3|needle refused|.* 1e-7 |.* [+-] 0.000001)/;

const hard = hardOutlines().filter((h) => !LEFT_OUT.test(h.name));
const random = Array.from({ length: 14 }, (_, seed) => randomOutline(seed));

describe('the cutter pass', () => {
  for (const [name, law] of Object.entries(laws(FEW)))
    it(name, () => {
      expect(broken(law, [...hard, ...random])).toEqual({ lines: [], refused: 0 });
    });

  it('comes to corners alone often enough for its two routes to be compared', () => {
    const both = random.flatMap((h) => h.pieces).filter((p) => byBothRoutes(p.region.contours, 0.8));
    expect(both.length).toBeGreaterThan(8);
  });
});

describe('the laws see', () => {
  const plate = (half: number) => ({ contours: [box(-half, half, -half, half)] });

  it('what strays outside by two millionths, and not by half of one', () => {
    expect(outside(plate(10 + 2e-6), plate(10))).toBeCloseTo(2e-6 * Math.SQRT2, 9);
    expect(outside(plate(10 + 5e-7), plate(10))).toBe(0);
    expect(outside(plate(10), plate(10 + 1))).toBe(0);
  });

  it('a gap that is off', () => {
    expect(gapOff(plate(9.92), plate(10), 0.08)).toBeLessThan(1e-12);
    expect(gapOff(plate(9.92 - 2e-6), plate(10), 0.08)).toBeCloseTo(2e-6, 9);
    expect(gapOff({ contours: [] }, plate(10), 0.08)).toBe(0);
    expect(gapOff(plate(10), { contours: [] }, 0.08)).toBe(Number.POSITIVE_INFINITY);
  });

  it('boundaries that are apart, and a contour that has gone', () => {
    expect(stray([circle(0, 0, 5)], [circle(0.004, 0, 5)])).toBeCloseTo(0.004, 3);
    expect(stray([circle(0, 0, 5)], [circle(0, 0, 5), circle(20, 0, 5)])).toBeGreaterThan(9);
    expect(stray([circle(0, 0, 5)], [])).toBe(Number.POSITIVE_INFINITY);
  });

  it('what spills over by more than a chord, all round a ring too', () => {
    const rings = (r: number) => ringsOf([circle(0, 0, r), hole(circle(0, 0, 3))], 0.0001);
    expect(spill(rings(10), rings(9.997))).toHaveLength(1);
    expect(spill(rings(9.997), rings(10))).toEqual([]);
    expect(spill(rings(10), rings(9.9995))).toEqual([]);
  });

  it('a move that the result does not follow', () => {
    const skewed = {
      ...MIRRORED,
      move: (region: Parameters<typeof MIRRORED.move>[0]) => ({
        contours: region.contours.map((c) => c.map((e) => ({ ...e, x0: e.x0 * 1.01, x1: e.x1 * 1.01 }))),
      }),
    };
    expect(strayUnder(skewed, one('needle', needle(8, 60)))!).toBeGreaterThan(EXACT);
    expect(strayUnder(MIRRORED, one('needle', needle(8, 60)))!).toBeLessThan(1e-6);
  });

  it('places within a hair of 2r, and no others', () => {
    for (const [width, critical] of [
      [2 * R - 0.01, false],
      [2 * R, true],
      [2 * R + 0.0005, true],
      [2 * R + 0.01, false],
    ] as const) {
      expect(isCritical(one('teeth', comb(3, width, 6))), `${width}`).toBe(critical);
      expect(isCritical(one('gaps', comb(3, 6, width))), `${width}`).toBe(critical);
    }
    expect(isCritical(one('two', circle(0, 0, 5), circle(20, 0, 5)))).toBe(false);
  });
});

describe('found by these laws', () => {
  // Rounding shows at the cusp between circles that touch: nothing was decided 50 mm from the origin in 18 of 100 turns.
  it('discs that touch are joined, wherever they lie', () => {
    const discs = hardOutlines().find((h) => h.name === 'two discs 0 apart, joined')!;
    for (let k = 0; k < 20; k++)
      for (const at of [20, 50, 100, 300]) {
        const move = ({ contours }: Region) => placedRegion({ contours }, at, -at, 0.157 * k);
        const moved = discs.pieces.map((p) => ({ ...p, region: move(p.region) }));
        expect(passed({ ...discs, pieces: moved })).toHaveLength(1);
      }
  });

  // A crumb left out between two arcs made a kink, which was taken for a tight place.
  it.each([1457, 2174, 2421])('random outline %d is settled', (seed) => {
    expect(passed(randomOutline(seed)).length).toBeGreaterThan(0);
  });

  // The middle line of a gap was sampled along one side, too coarsely where the balls grow fast.
  it.each([1324, 2130, 2667])('random outline %d is parted as its mirror image', (seed) => {
    expect(strayUnder(MIRRORED, randomOutline(seed))!).toBeLessThanOrEqual(EXACT);
  });

  // The arc of a ball at rest went about a middle that was a joint's width off: its mirror image was refused.
  it('random outline 1000476 is made as its mirror image', () => {
    expect(strayUnder(MIRRORED, randomOutline(1_000_476))!).toBeLessThanOrEqual(EXACT);
  });
});

describe('not yet', () => {
  const named = (name: RegExp) => hardOutlines().filter((h) => name.test(h.name));

  it.fails('a slit 1e-9 wide, wherever it lies', () => {
    expect(broken(followsMoves(FEW), named(/^slit 1e-9 wide$/)).lines).toEqual([]);
  });

  it.fails('a limb cut open by as much to spare at any scale', () => {
    const scaled = MOVES.find((m) => m.scale === 1.9)!;
    expect(strayUnder(scaled, randomOutline(1_000_732))!).toBeLessThanOrEqual(EXACT);
  });
});

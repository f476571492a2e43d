import { expect, it } from 'vitest';
import {
  acrossGrain,
  type Board,
  change,
  type Direction,
  faceStrain,
  gapChange,
  worstGapChange,
} from '../../src/shop/movement.js';

const at = (degrees: number): Direction => [
  Math.cos((degrees * Math.PI) / 180),
  Math.sin((degrees * Math.PI) / 180),
];
const board = (wood: string, angle: number, from: number, to: number, cut: Board['cut'] = 'flat'): Board => ({
  wood,
  cut,
  grain: at(angle),
  from,
  to,
});

it('gives the worked examples', () => {
  // 1. White fir, flat-grained, 232 mm (9.125 in), 8 to 11 %: 1.705 mm, 0.0671 in. Wood Handbook ch. 13, from memory;
  // its arithmetic computed.
  expect(change(232, 0.00245, 8, 11)).toBeCloseTo(1.705, 3);
  expect(change(9.125, 0.00245, 8, 11)).toBeCloseTo(0.0671, 4);
  // 2. Red alder, flat-sawn, 8 in, 6 % of moisture: 0.1248 in. WOOD magazine, Sept. 2021, published.
  expect(change(8, 0.0026, 8, 14)).toBeCloseTo(0.1248, 6);
  // 3. Mesquite 0.00129, 5 in, 6 to 9 %: 0.019 in. Flooring association's text, transcribed.
  expect(change(5, 0.00129, 6, 9)).toBeCloseTo(0.019, 3);
});

it('comes near the change by total shrinkage', () => {
  // Wood Handbook ch. 13 equation 13-3, from memory: dD = D (M2 - M1) / (3000/S - 30 + M1). Example 1: 1.712 mm (computed).
  const byShrinkage = (232 * 3) / (3000 / 7 - 30 + 8);
  expect(byShrinkage).toBeCloseTo(1.712, 3);
  expect(Math.abs(change(232, 0.00245, 8, 11) / byShrinkage - 1)).toBeLessThan(0.005);
});

it('refuses moistures the coefficients do not hold for', () => {
  expect(() => change(100, 0.002, 5, 9)).toThrow('moisture: is 5 %: give a value from 6 to 14 %');
  expect(() => change(100, 0.002, 9, 15)).toThrow('moisture: is 15 %');
});

it('takes the coefficient of the cut', () => {
  // Wood Handbook FPL-GTR-190 table 13-5, published.
  expect(acrossGrain('cherry', 'flat')).toBe(0.00248);
  expect(acrossGrain('cherry', 'quarter')).toBe(0.00126);
  expect(acrossGrain('cherry', 'between')).toBeCloseTo(0.00187, 12);
  expect(acrossGrain('unobtainium', 'flat')).toBeNull();
});

it('strains as two points of the board move apart', () => {
  // Another way to the same: take a point in the board's own directions, stretch it, take it back.
  for (const angle of [0, 17, 45, 90, 133]) {
    const b = board('sugar maple', angle, 7, 12);
    const g = at(angle);
    const h = at(angle + 90);
    const s = faceStrain(b)!;
    for (const p of [
      [10, 0],
      [0, 10],
      [7, -3],
    ] as const) {
      const along = (p[0] * g[0] + p[1] * g[1]) * 5 * (0.1 / 100 / 30);
      const across = (p[0] * h[0] + p[1] * h[1]) * 5 * 0.00353;
      expect(s.xx * p[0] + s.xy * p[1]).toBeCloseTo(along * g[0] + across * h[0], 12);
      expect(s.xy * p[0] + s.yy * p[1]).toBeCloseTo(along * g[1] + across * h[1], 12);
    }
  }
  expect(faceStrain({ ...board('cherry', 0, 8, 9), grain: [3, 4] })!.xx).toBeCloseTo(
    faceStrain({ ...board('cherry', 0, 8, 9), grain: [0.6, 0.8] })!.xx,
    15,
  );
});

it('shrinks 0.1 % along the grain over the whole 30 %', () => {
  // FPL report 1093 (rev. 1960), published: 0.1 to 0.3 %, green to ovendry.
  expect(faceStrain(board('white ash', 0, 6, 14))!.xx * (30 / 8)).toBeCloseTo(0.001, 12);
});

it('closes across the grain of a plug that swells more, worked by hand', () => {
  // Walnut plug and maple field, both flat-sawn along x, 7 to 11 %: 4 x (0.00353 - 0.00274) x 25 mm = 0.079 mm the field
  // grows more in half of 50 mm, so the gap opens along y; nothing happens along x.
  const plug = board('walnut', 0, 7, 11);
  const field = board('maple', 0, 7, 11);
  expect(gapChange(plug, field, [0, 25], [0, 3])).toBeCloseTo(0.079, 9);
  expect(gapChange(plug, field, [40, 0], [2, 0])).toBeCloseTo(0, 12);
  // Drying, it closes. A wall that faces the middle does the opposite.
  expect(gapChange(board('walnut', 0, 11, 7), board('maple', 0, 11, 7), [0, 25], [0, 1])).toBeCloseTo(
    -0.079,
    9,
  );
  expect(gapChange(plug, field, [0, 25], [0, -1])).toBeCloseTo(-0.079, 9);
  expect(gapChange(plug, board('unobtainium', 0, 7, 11), [0, 25], [0, 1])).toBeNull();
});

it('finds the worst direction', () => {
  // Crossed grains, the same wood: along x the field grows across its grain, along y the plug does.
  const worst = worstGapChange(board('cherry', 0, 8, 10), board('cherry', 90, 8, 10), 60, 40)!;
  const apart = 2 * (0.00248 - 0.001 / 30);
  expect(worst.closes).toBeCloseTo(apart * 20, 9);
  expect(worst.opens).toBeCloseTo(apart * 30, 9);
  expect(worst.closesAlong.map(Math.abs)).toEqual([0, 1]);
  expect(worst.opensAlong.map(Math.abs)).toEqual([1, 0]);
});

it('is the worst of all directions at any grain, and stays under its bound', () => {
  for (const [p, f, w, h] of [
    [20, 75, 80, 30],
    [45, 0, 30, 90],
    [100, 10, 50, 50],
  ] as const) {
    const plug = board('beech', p, 8, 12);
    const field = board('walnut', f, 9, 11, 'quarter');
    const worst = worstGapChange(plug, field, w, h)!;
    let closes = 0;
    let opens = 0;
    const corner = (Math.atan2(h, w) * 180) / Math.PI;
    const angles = Array.from({ length: 7200 }, (_, k) => k / 20);
    for (const a of [...angles, corner, 180 - corner]) {
      const u = at(a);
      const r = Math.min(w / 2 / Math.abs(u[0]), h / 2 / Math.abs(u[1]));
      const gap = gapChange(plug, field, [u[0] * r, u[1] * r], u)!;
      closes = Math.max(closes, -gap);
      opens = Math.max(opens, gap);
    }
    expect(worst.closes).toBeCloseTo(closes, 4);
    expect(worst.opens).toBeCloseTo(opens, 4);
    // Any place in the box, facing any way.
    let any = 0;
    for (const x of [-w / 2, 0, w / 3, w / 2])
      for (const y of [-h / 2, h / 5, h / 2])
        for (let a = 0; a < 360; a++) any = Math.max(any, Math.abs(gapChange(plug, field, [x, y], at(a))!));
    expect(any).toBeLessThanOrEqual(worst.bound);
    expect(any).toBeGreaterThan(worst.bound * 0.999);
  }
});

it('does nothing when both are the same board', () => {
  const b = board('teak', 30, 8, 13);
  const worst = worstGapChange(b, b, 100, 50)!;
  expect([worst.closes, worst.opens, worst.bound]).toEqual([0, 0, 0]);
  expect(worstGapChange(b, { ...b, wood: 'unobtainium' }, 100, 50)).toBeNull();
  expect(() => faceStrain({ ...b, grain: [0, 0] })).toThrow('grain: has no direction');
  expect(() => worstGapChange(b, b, 0, 50)).toThrow('width: is 0 mm: give a value over 0 mm');
});

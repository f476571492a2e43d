import { describe, expect, it } from 'vitest';
import { charts, chipRange, depthCorrection, HARD_FROM, woodKind } from '../../src/shop/chip-load.js';
import type { OwnWoods } from '../../src/shop/own.js';
import { woods } from '../../src/shop/woods.js';

const INCH = 25.4;

/**
 * Published charts, inches a tooth (read in copies of two cutter sellers' own pages): diameter, hardwood, softwood; the
 * second gives soft wood and plywood one column.
 */
const PUBLISHED: readonly [number, readonly [number, number], readonly [number, number]][] = [
  [0.125, [0.002, 0.004], [0.003, 0.005]],
  [0.25, [0.005, 0.007], [0.006, 0.008]],
  [0.375, [0.013, 0.015], [0.015, 0.017]],
  [0.5, [0.017, 0.019], [0.019, 0.021]],
  [0.125, [0.003, 0.005], [0.004, 0.006]],
  [0.25, [0.009, 0.011], [0.011, 0.013]],
  [0.375, [0.015, 0.018], [0.017, 0.02]],
];

describe('range of chip load', () => {
  it('holds every cell of both charts, and no more than they span', () => {
    for (const [diameter, hard, soft] of PUBLISHED)
      for (const [kind, [least, most]] of [
        ['hard', hard],
        ['soft', soft],
      ] as const) {
        const range = chipRange(diameter * INCH, kind);
        expect(range.least, `${diameter} ${kind}`).toBeLessThanOrEqual(least * INCH + 1e-12);
        expect(range.most, `${diameter} ${kind}`).toBeGreaterThanOrEqual(most * INCH - 1e-12);
        const cells = PUBLISHED.filter((p) => p[0] === diameter).map((p) => p[kind === 'hard' ? 1 : 2]);
        expect(range.least).toBeCloseTo(Math.min(...cells.map((c) => c[0])) * INCH, 12);
        expect(range.most).toBeCloseTo(Math.max(...cells.map((c) => c[1])) * INCH, 12);
      }
    expect(charts.every((c) => c.status === 'published' && c.source.length > 20)).toBe(true);
  });

  it('lies on straight lines between the diameters, in proportion below, and stays above: our own rule', () => {
    // 3/16 in, half way: (0.002 + 0.005) / 2 and (0.005 + 0.011) / 2.
    expect(chipRange(INCH * (3 / 16), 'hard').least).toBeCloseTo(0.0035 * INCH, 12);
    expect(chipRange(INCH * (3 / 16), 'hard').most).toBeCloseTo(0.008 * INCH, 12);
    // 1/16 in, half of 1/8 in.
    expect(chipRange(INCH / 16, 'soft').least).toBeCloseTo(0.0015 * INCH, 12);
    expect(chipRange(INCH / 16, 'soft').most).toBeCloseTo(0.003 * INCH, 12);
    expect(chipRange(25, 'hard')).toEqual(chipRange(INCH / 2, 'hard'));
  });

  it('never falls as the cutter grows, and is more in soft wood', () => {
    let before = chipRange(0.3, 'hard');
    for (let d = 0.4; d < 25; d += 0.1) {
      const [hard, soft] = [chipRange(d, 'hard'), chipRange(d, 'soft')];
      expect(hard.least).toBeGreaterThanOrEqual(before.least - 1e-12);
      expect(hard.most).toBeGreaterThanOrEqual(before.most - 1e-12);
      expect(hard.least).toBeLessThan(hard.most);
      expect(soft.least).toBeGreaterThan(hard.least);
      before = hard;
    }
  });

  it('wants a diameter', () => {
    expect(() => chipRange(0, 'hard')).toThrow('over 0 mm');
  });
});

describe('correction for depth', () => {
  it('gives the published examples, inches', () => {
    // First chart's page, published: 1/2 in, .020 x .75 = .015 at two diameters; 3/8 in, .018 x .5 = .009 at three.
    expect(0.02 * depthCorrection(1, 0.5).share).toBeCloseTo(0.015, 12);
    expect(0.018 * depthCorrection(3 * 0.375, 0.375).share).toBeCloseTo(0.009, 12);
    expect(depthCorrection(0.375, 0.375).share).toBe(1);
  });
  it('lies on straight lines between, and says where nothing is published', () => {
    expect(depthCorrection(1, 4).share).toBe(1);
    expect(depthCorrection(6, 4).share).toBeCloseTo(0.875, 12);
    expect(depthCorrection(10, 4).share).toBeCloseTo(0.625, 12);
    expect(depthCorrection(12, 4)).toEqual({ share: 0.5, beyond: false });
    expect(depthCorrection(12.1, 4)).toEqual({ share: 0.5, beyond: true });
    expect(depthCorrection(32, 4)).toEqual({ share: 0.5, beyond: true });
  });
});

describe('kind of wood', () => {
  it('is told by its hardness; what is not known is taken as hard', () => {
    // Side hardness, Wood Handbook table 5-3a, transcribed: basswood 1,800 N, poplar 2,400, pine 1,700, cherry 4,200.
    const soft = woods.filter((w) => woodKind(w.name).kind === 'soft').map((w) => w.name);
    expect(soft).toEqual(['basswood', 'eastern white pine', 'yellow-poplar']);
    expect(woodKind('cherry')).toEqual({ kind: 'hard', known: true });
    expect(woodKind('padauk')).toEqual({ kind: 'hard', known: true });
    for (const name of ['red alder', 'unobtainium', 'constructor'])
      expect(woodKind(name), name).toEqual({ kind: 'hard', known: false });
  });
  it("hears of the recipe's own woods", () => {
    const own = (hardness: number | null): OwnWoods => [
      {
        ...woods[0]!,
        name: 'my board',
        also: [],
        hardness,
        strength: null,
        movement: null,
        density: null,
        lightness: null,
      },
    ];
    expect(woodKind('My Board', own(HARD_FROM - 1))).toEqual({ kind: 'soft', known: true });
    expect(woodKind('my board', own(HARD_FROM))).toEqual({ kind: 'hard', known: true });
    expect(woodKind('my board', own(null))).toEqual({ kind: 'hard', known: false });
  });
});

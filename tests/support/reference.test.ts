import { describe, expect, it } from 'vitest';
import { quadrantSegments } from './engines/rings.mjs';
import {
  boundaryDistance,
  closing,
  combined,
  differenceArea,
  type EngineName,
  offsetBy,
  opening,
  openingClosing,
  polygonArea,
  type Ring,
} from './reference.js';

const r = 1.6;
const CHORD = 0.0005;
/** GEOS simplifies its input by 1 % of the distance: its own documented default, so its error is larger. */
const ENGINES: [EngineName, number][] = [
  ['jsts', 2e-5],
  ['clipper', 2e-5],
  ['geos', 1e-4],
];

const square = (x: number, y: number, side: number): Ring => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];
const ell: Ring = [
  [0, 0],
  [20, 0],
  [20, 10],
  [10, 10],
  [10, 20],
  [0, 20],
];

describe.each(ENGINES)('%s', (engine, relative) => {
  const close = (measured: number, exact: number): void =>
    expect(Math.abs(measured - exact) / exact).toBeLessThan(relative);

  it('grows a convex polygon by Steiner’s formula: A + P r + pi r^2 (Steiner 1840)', () => {
    close(polygonArea(offsetBy(engine, [square(0, 0, 20)], r, CHORD)), 400 + 80 * r + Math.PI * r * r);
  });

  it('opens a square to area a^2 - (4 - pi) r^2 (closed form: four corners, each a square less a quarter disc)', () => {
    close(polygonArea(opening(engine, [square(-10, -10, 20)], r, CHORD)), 400 - (4 - Math.PI) * r * r);
  });

  it('closes the inside corner of an L by (1 - pi / 4) r^2 and nothing else (closed form)', () => {
    close(polygonArea(closing(engine, [ell], r, CHORD)), 300 + (1 - Math.PI / 4) * r * r);
  });

  it('opens and closes an L: five outside corners off, one inside corner filled (closed form)', () => {
    close(polygonArea(openingClosing(engine, [ell], r, CHORD)), 300 - 4 * (1 - Math.PI / 4) * r * r);
  });

  it('keeps holes and separate polygons', () => {
    const rings = [square(0, 0, 20), square(5, 5, 10).reverse(), square(40, 0, 10)];
    const opened = opening(engine, rings, r, CHORD);
    expect(opened.length).toBe(3);
    close(polygonArea(opened), 400 - 100 + 100 - 2 * (4 - Math.PI) * r * r);
  });

  it('loses what is thinner than the disc', () => {
    expect(
      opening(
        engine,
        [
          [
            [0, 0],
            [20, 0],
            [20, 3],
            [0, 3],
          ],
        ],
        r,
        CHORD,
      ),
    ).toEqual([]);
    expect(opening(engine, [], r, CHORD)).toEqual([]);
  });
});

describe('measures', () => {
  it('takes quadrant segments from the sagitta r (1 - cos(a / 2))', () => {
    const n = quadrantSegments(r, CHORD);
    const sagitta = (k: number) => r * (1 - Math.cos(Math.PI / 4 / k));
    expect(sagitta(n)).toBeLessThanOrEqual(CHORD);
    expect(sagitta(n - 1)).toBeGreaterThan(CHORD);
  });

  it('combines overlapping squares (closed form)', () => {
    const a = [square(0, 0, 10)];
    const b = [square(5, 5, 10)];
    expect(polygonArea(combined('union', a, b))).toBeCloseTo(175, 6);
    expect(polygonArea(combined('intersection', a, b))).toBeCloseTo(25, 6);
    expect(polygonArea(combined('difference', a, b))).toBeCloseTo(75, 6);
    expect(differenceArea(a, b)).toBeCloseTo(150, 6);
    expect(differenceArea(a, a)).toBe(0);
  });

  it('gives a hole its sign', () => {
    expect(polygonArea([square(0, 0, 10), square(2, 2, 4).reverse()])).toBeCloseTo(84, 9);
  });

  it('measures boundary distance both ways', () => {
    const a = [square(0, 0, 10)];
    expect(boundaryDistance(a, a, 0.1).distance).toBe(0);
    // A square grown by 0.25 with sharp corners: the corners stray most, by 0.25 sqrt 2.
    const grown = [square(-0.25, -0.25, 10.5)];
    expect(boundaryDistance(a, grown, 0.1).distance).toBeCloseTo(0.25 * Math.SQRT2, 9);
    expect(boundaryDistance(grown, a, 0.1).distance).toBeCloseTo(0.25 * Math.SQRT2, 9);
    // One piece too many is seen whichever side it is on: the far corner is sqrt(20^2 + 1) from the nearer square.
    const more = [square(0, 0, 10), square(29, 10, 1)];
    expect(boundaryDistance(a, more, 0.1).distance).toBeCloseTo(Math.hypot(20, 1), 6);
    expect(boundaryDistance(more, a, 0.1).distance).toBeCloseTo(Math.hypot(20, 1), 6);
    expect(boundaryDistance(a, [], 1).distance).toBe(Number.POSITIVE_INFINITY);
  });

  it('tells the exact corner from a slightly wrong one', () => {
    const right = opening('clipper', [square(-10, -10, 20)], r, CHORD);
    const wrong = opening('clipper', [square(-10, -10, 20)], r + 0.02, CHORD);
    // Moving a 90 degree corner's radius by d moves the arc's middle by d (sqrt 2 - 1).
    expect(boundaryDistance(right, wrong, 0.05).distance).toBeGreaterThan(0.02 * (Math.SQRT2 - 1) - 0.001);
  });
});

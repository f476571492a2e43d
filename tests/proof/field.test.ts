import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FieldReach, fieldReach, PRESS, reach, readSvg } from '../../src/proof/index.js';
import { type Chain, circle, moved, reversed, rounded, starPoints, svgOf, turned } from './drawn.js';

/*
 * Expected values are closed forms of the definition (Federer 1959, 4.18, with balls pressing in by t = 0.0005): see
 * reach.test.ts. The field is flattened and sampled, so it may differ by the 0.005 mm that a proof allows.
 */
const t = PRESS;
const draw = (...chains: Chain[]) => readSvg(svgOf('pocket', chains));
const field = (side: 'inside' | 'outside', cap: number, ...chains: Chain[]): FieldReach =>
  fieldReach(draw(...chains), side, cap);
const near = (value: number, expected: number, by = 0.003) => {
  expect(Math.abs(value - expected), `${value} is not ${expected}`).toBeLessThanOrEqual(by);
};
const rectangle = (x: number, y: number, w: number, h: number): [number, number][] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

/** An ellipse as arcs, each through three of its points. */
function ellipse(x: number, y: number, a: number, b: number, n: number): Chain {
  const at = (k: number): [number, number] => {
    const s = (2 * Math.PI * k) / n;
    return [x + a * Math.cos(s), y + b * Math.sin(s)];
  };
  return Array.from({ length: n }, (_, k) => {
    const [p, m, q] = [at(k), at(k + 0.5), at(k + 1)];
    const chord = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const rise = ((m[0] - p[0]) * (q[1] - p[1]) - (m[1] - p[1]) * (q[0] - p[0])) / chord;
    return [p[0], p[1], (2 * rise) / chord] as const;
  });
}

describe('reach by distance field in closed form', () => {
  test('a circle: its radius from inside; from outside nothing limits it', () => {
    near(field('inside', 8, circle(30, 30, 5)).reach, 5 + t / 2);
    expect(field('outside', 8, circle(30, 30, 5))).toEqual({ reach: 8, at: null });
    expect(field('inside', 3, circle(30, 30, 5))).toEqual({ reach: 3, at: null });
  });

  test('a slot: half its width; a rounded rectangle: its corners', () => {
    near(field('inside', 8, rounded(rectangle(20, 20, 30, 6), 3)).reach, 3 + t / 2);
    near(field('inside', 8, rounded(rectangle(20, 20, 30, 25), 3)).reach, 3 + t);
  });

  test('an ellipse of 360 arcs: the radius of curvature at its ends, b b / a, and what pressing in gives', () => {
    const e = ellipse(60, 60, 30, 15, 360);
    // The definition's least over points u, near the end (a, 0), and s.
    let least = Number.POSITIVE_INFINITY;
    for (let u = 0; u < 0.5; u += 0.005) {
      const n = Math.hypot(15 * Math.cos(u), 30 * Math.sin(u));
      for (let s = -1; s < 1; s += 0.002) {
        const [dx, dy] = [30 * (Math.cos(s) - Math.cos(u)), 15 * (Math.sin(s) - Math.sin(u))];
        const along = (-15 * Math.cos(u) * dx - 30 * Math.sin(u) * dy) / n - t;
        if (along > 0) least = Math.min(least, (dx * dx + dy * dy - t * t) / (2 * along));
      }
    }
    expect(least).toBeGreaterThan(225 / 30);
    expect(least).toBeLessThan(225 / 30 + 0.1);
    near(field('inside', 12, e).reach, least, 0.005);
    near(field('inside', 12, e).reach, reach(draw(e), 'inside', 12).reach, 0.005);
  });

  test('two circles a gap apart: half the gap, and the place is in the gap', () => {
    const found = field('outside', 4, circle(30, 30, 5), circle(41, 30, 5));
    near(found.reach, (1 + t) / 2);
    near(Math.abs(found.at![0] - 35.5), 0.5, 0.01);
    near(found.at![1], 30, 0.02);
  });

  test('a gap wherever it falls between samples, as nearly as chords allow', () => {
    for (let k = 0; k < 40; k++) {
      const [c, s] = [Math.cos(0.4 + k / 25), Math.sin(0.4 + k / 25)];
      const [a, b] = [circle(60, 60, 5), circle(60 + 10.5 * c, 60 + 10.5 * s, 5)];
      // Chords lie up to 0.0002 mm inside either circle.
      near(field('outside', 4, a, b).reach, (0.5 + t) / 2, 2.5e-4);
    }
  });

  test('the tightest of many gaps that are nearly as tight', () => {
    for (const way of [1, -1]) {
      const pairs = Array.from({ length: 25 }, (_, k) => {
        const gap = 1.2 - (way > 0 ? k : 24 - k) * 0.01;
        const [x, y] = [12 + 30 * (k % 5), 12 + 25 * Math.floor(k / 5)];
        const [c, s] = [Math.cos(k), Math.sin(k)];
        const far = (6 + gap) / 2;
        return [circle(x + far * c, y + far * s, 3), circle(x - far * c, y - far * s, 3)];
      });
      near(field('outside', 4, ...pairs.flat()).reach, (0.96 + t) / 2, 0.001);
    }
  });

  test('an arc between two corners that turn away from the ball bounds it by itself', () => {
    // A bump of radius 1 and 120 degrees out of the lower side of a square.
    const half = Math.sin(Math.PI / 3);
    const bump: Chain = [
      [50 - half, 20, Math.tan(Math.PI / 6)],
      [50 + half, 20, 0],
      [90, 20, 0],
      [90, 60, 0],
      [10, 60, 0],
      [10, 20, 0],
    ];
    const square = rounded(
      bump.slice(2).map(([x, y]) => [x, y] as const),
      10,
    );
    const chain: Chain = [bump[0]!, bump[1]!, ...square.slice(0, -1), square[square.length - 1]!];
    // d = q - p is the chord, sqrt 3 long, and d.n = 1 - cos 120 = 1.5.
    near(field('inside', 4, chain).reach, (3 - t * t) / (2 * (1.5 - t)), 0.001);
  });

  test('a ring: half its width, whichever way its contours are travelled', () => {
    for (const outer of [circle(50, 50, 10), reversed(circle(50, 50, 10))]) {
      for (const hole of [circle(50, 50, 6), reversed(circle(50, 50, 6))]) {
        near(field('inside', 12, outer, hole).reach, (4 + t) / 2);
        near(field('outside', 12, outer, hole).reach, 6 + t / 2);
      }
    }
  });

  test('a part in the hole of another is inside again', () => {
    const [outer, hole, part] = [circle(50, 50, 30), circle(50, 50, 20), circle(50, 50, 7)];
    near(field('inside', 12, outer, hole, part).reach, (10 + t) / 2);
    near(field('outside', 12, outer, hole, part).reach, (13 + t) / 2);
  });

  test('a sharp corner: nothing but the press, and the place is the corner', () => {
    const found = field('inside', 4, rounded(rectangle(20, 20, 30, 25), 0));
    near(found.reach, t, 1e-4);
    near(Math.min(Math.abs(found.at![0] - 20), Math.abs(found.at![0] - 50)), 0, 0.01);
  });

  test('two sharp corners pointing at each other: half the gap, by the balls that turn about the corners', () => {
    near(
      field('outside', 6, rounded(rectangle(20, 20, 10, 10), 0), rounded(rectangle(33, 34, 10, 10), 0)).reach,
      (5 + t) / 2,
    );
  });

  test('a sharp tip near a long straight edge is not stepped over', () => {
    for (const gap of [0.01, 0.1, 1]) {
      const tip: Chain = [
        [51.2345, 40 + gap, 0],
        [52, 50, 0],
        [50, 50, 0],
      ];
      near(field('outside', 3.2, rounded(rectangle(10, 20, 120, 20), 0), tip).reach, (gap + t) / 2, 0.002);
    }
  });
});

describe('both routes', () => {
  const shapes = fc.record({
    points: fc.integer({ min: 3, max: 7 }),
    outer: fc.double({ min: 14, max: 20, noNaN: true }),
    inner: fc.double({ min: 7, max: 11, noNaN: true }),
    convex: fc.double({ min: 0.4, max: 2.2, noNaN: true }),
    concave: fc.double({ min: 0.4, max: 2.2, noNaN: true }),
    angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
    apart: fc.double({ min: 0.4, max: 6, noNaN: true }),
    hole: fc.double({ min: 0.6, max: 3, noNaN: true }),
    cap: fc.double({ min: 1, max: 5, noNaN: true }),
  });

  test('agree within 0.005 mm on 200 random patterns, at the first look', () => {
    let below = 0;
    fc.assert(
      fc.property(shapes, (s) => {
        const star = rounded(starPoints(0, 0, s.points, s.outer, s.inner), s.convex, s.concave);
        const chains = [star, circle(0.7, 0.3, s.hole), circle(s.outer + 5 + s.apart, 0, 5)];
        const d = draw(...chains.map((c) => moved(turned(c, s.angle), 80, 80)));
        for (const side of ['inside', 'outside'] as const) {
          const exact = reach(d, side, s.cap);
          const other = fieldReach(d, side, s.cap);
          expect(Math.abs(exact.reach - other.reach)).toBeLessThanOrEqual(0.005);
          if (!exact.capped) below++;
        }
      }),
      { numRuns: 200, seed: 71 },
    );
    // Or nothing would have been compared.
    expect(below).toBeGreaterThan(200);
  });

  test('finer, the field comes nearer', () => {
    const e = draw(ellipse(60, 60, 30, 15, 90));
    const exact = reach(e, 'inside', 12).reach;
    const off = [1, 4].map((fine) => Math.abs(fieldReach(e, 'inside', 12, fine).reach - exact));
    expect(off[1]).toBeLessThanOrEqual(off[0]! + 1e-6);
    expect(off[1]).toBeLessThan(0.001);
  });
});

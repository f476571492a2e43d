import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PRESS, reach, readSvg } from '../../src/proof/index.js';
import { type Chain, circle, moved, reversed, rounded, starPoints, svgOf, turned } from './drawn.js';

/*
 * Expected values are closed forms of the definition (Federer 1959, 4.18, with balls pressing in by t = 0.0005):
 * for points p, q with d = q - p the ball rolled at p may have rho <= (d.d - t t) / (2 (d.n - t)).
 */
const t = PRESS;
const draw = (...chains: Chain[]) => readSvg(svgOf('pocket', chains));
const inside = (...chains: Chain[]) => reach(draw(...chains), 'inside').reach;
const outside = (...chains: Chain[]) => reach(draw(...chains), 'outside').reach;
const near = (value: number, expected: number, by = 3e-6) => {
  expect(Math.abs(value - expected), `${value} is not ${expected}`).toBeLessThanOrEqual(by);
};
const rectangle = (x: number, y: number, w: number, h: number): [number, number][] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

describe('reach in closed form', () => {
  test('a circle: its radius, and half the press, from opposite points', () => {
    near(inside(circle(30, 30, 5)), 5 + t / 2);
  });

  test('a circle from outside, and a rounded square too: nothing limits it', () => {
    expect(reach(draw(circle(30, 30, 5)), 'outside').capped).toBe(true);
    expect(reach(draw(rounded(rectangle(20, 20, 30, 30), 3)), 'outside').capped).toBe(true);
  });

  test('two circles a gap apart: half the gap', () => {
    near(outside(circle(30, 30, 5), circle(41, 30, 5)), (1 + t) / 2);
    near(outside(circle(30, 30, 5), circle(30 + 13 * 0.6, 30 + 13 * 0.8, 5)), (3 + t) / 2);
  });

  test('a ring: half its width, whichever way its contours are travelled', () => {
    for (const outer of [circle(50, 50, 10), reversed(circle(50, 50, 10))]) {
      for (const hole of [circle(50, 50, 6), reversed(circle(50, 50, 6))]) {
        near(inside(outer, hole), (4 + t) / 2);
        near(outside(outer, hole), 6 + t / 2);
      }
    }
  });

  test('a rounded square: its corner radius; the press counts once, against the far side', () => {
    near(inside(rounded(rectangle(20, 20, 30, 25), 3)), 3 + t);
  });

  test('a slot: half its width', () => {
    near(inside(rounded(rectangle(20, 20, 30, 6), 3)), 3 + t / 2);
  });

  test('a star with 30 degree tips: the fillet radius, though its sides are nearer than that by the tips', () => {
    // Six tips: the inner corners' radius q makes each tip 30 degrees: tan 15 = q sin 30 / (R - q cos 30).
    const R = 40;
    const q = (R * Math.tan(Math.PI / 12)) / (0.5 + Math.cos(Math.PI / 6) * Math.tan(Math.PI / 12));
    const r = 1.7;
    const star = rounded(starPoints(60, 60, 6, R, q), r);
    // Normals at the ends of a tip's arc are 150 degrees apart: rho - t = r + (rho - r) cos 150.
    near(inside(star), r + t / (1 + Math.cos(Math.PI / 6)));
    // Inner corners turn by 30 + 60 = 90 degrees.
    near(outside(star), r + t, 1e-5);
  });

  test('a sharp square corner: nothing but the press; from outside it is no hindrance', () => {
    near(inside(rounded(rectangle(20, 20, 30, 25), 0)), t);
    expect(reach(draw(rounded(rectangle(20, 20, 30, 25), 0)), 'outside').capped).toBe(true);
  });

  test('two sharp corners pointing at each other: half the gap, by the balls that turn about the corners', () => {
    const a = rounded(rectangle(20, 20, 10, 10), 0);
    const b = rounded(rectangle(33, 34, 10, 10), 0);
    near(outside(a, b), (5 + t) / 2);
  });

  test('two needles pointing at each other: half the gap, however sharp they are', () => {
    // Their tips turn by up to 179.98 degrees; the gap between them is 1 mm.
    for (const half of [0.05, 0.006, 0.004, 0.001]) {
      const needle = (x: number, y: number, ahead: 1 | -1): [number, number][] => [
        [x, y],
        [x - 11.5 * ahead, y + half * ahead],
        [x - 11.5 * ahead, y - half * ahead],
      ];
      for (const apart of [0, 0.6]) {
        const across = Math.sqrt(1 - apart * apart);
        near(
          outside(rounded(needle(50, 50, 1), 0), rounded(needle(50 + across, 50 + apart, -1), 0)),
          (1 + t) / 2,
        );
      }
    }
  });

  test('a neck: half its width, and the place is in the neck', () => {
    const w = 3.1;
    const [y0, y1] = [50 - w / 2, 50 + w / 2];
    const bell: [number, number][] = [
      [20, 30],
      [50, 30],
      [50, y0],
      [70, y0],
      [70, 30],
      [100, 30],
      [100, 70],
      [70, 70],
      [70, y1],
      [50, y1],
      [50, 70],
      [20, 70],
    ];
    const found = reach(draw(rounded(bell, 4, 2)), 'inside');
    near(found.reach, (w + t) / 2);
    expect(Math.abs(found.at![0] - 60)).toBeLessThan(12.01);
    expect(Math.abs(Math.abs(found.at![1] - 50) - w / 2)).toBeLessThan(0.01);
  });

  test('a kink of d degrees allows t / (1 - cos d); 0.1 degree allows 328 mm', () => {
    for (const degrees of [1, 2, 4]) {
      const drop = 20 * Math.tan((degrees * Math.PI) / 360);
      const chain = rounded(
        [
          [20, 20],
          [40, 20 - drop, 0],
          [60, 20],
          [60, 60],
          [20, 60],
        ],
        15,
      );
      // The kink turns left, towards the inside: both its edges fall away from it at half the angle.
      near(
        inside(chain),
        Math.min(
          t / (1 - Math.cos((degrees * Math.PI) / 180)),
          inside(rounded(rectangle(20, 20, 40, 40), 15)),
        ),
        2e-4,
      );
    }
  });

  test('the cap is kept and told', () => {
    const d = draw(circle(30, 30, 5));
    expect(reach(d, 'inside', 3)).toEqual({ reach: 3, at: null, capped: true });
    near(reach(d, 'inside', 6).reach, 5 + t / 2);
    expect(reach(draw(circle(30, 30, 0.5)), 'outside', 4)).toMatchObject({ reach: 4, capped: true });
  });
});

/** Reach by the formula over sampled points only: a second route, which can only come out too large. */
function sampled(chains: readonly Chain[], inner: boolean): number {
  const points: { x: number; y: number; nx: number; ny: number }[] = [];
  for (const chain of chains) {
    chain.forEach(([x, y, b], i) => {
      const [u, v] = chain[(i + 1) % chain.length]!;
      const sweep = 4 * Math.atan(b);
      const heading = Math.atan2(v - y, u - x) - sweep / 2;
      const chord = Math.hypot(u - x, v - y);
      for (let k = 0; k <= 48; k++) {
        const s = k / 48;
        const a = heading + sweep * s;
        const part = b === 0 ? chord * s : (chord * Math.sin((sweep * s) / 2)) / Math.sin(sweep / 2);
        const way = heading + (sweep * s) / 2;
        const side = inner ? 1 : -1;
        points.push({
          x: x + part * Math.cos(way),
          y: y + part * Math.sin(way),
          nx: -Math.sin(a) * side,
          ny: Math.cos(a) * side,
        });
      }
    });
  }
  let least = Number.POSITIVE_INFINITY;
  for (const p of points) {
    for (const q of points) {
      const [dx, dy] = [q.x - p.x, q.y - p.y];
      const along = dx * p.nx + dy * p.ny - t;
      if (along > 0) least = Math.min(least, (dx * dx + dy * dy - t * t) / (2 * along));
    }
  }
  return least;
}

describe('reach by a second route and under motions', () => {
  const shapes = fc.record({
    points: fc.integer({ min: 3, max: 6 }),
    outer: fc.double({ min: 14, max: 20, noNaN: true }),
    inner: fc.double({ min: 7, max: 11, noNaN: true }),
    convex: fc.double({ min: 0.8, max: 2.2, noNaN: true }),
    concave: fc.double({ min: 0.8, max: 2.2, noNaN: true }),
    angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
    apart: fc.double({ min: 0.4, max: 6, noNaN: true }),
  });
  const make = (s: typeof shapes extends fc.Arbitrary<infer T> ? T : never, angle: number): Chain[] => {
    const star = rounded(starPoints(0, 0, s.points, s.outer, s.inner), s.convex, s.concave);
    return [star, circle(s.outer + 5 + s.apart, 0, 5)].map((c) => moved(turned(c, angle), 80, 80));
  };

  test('sampling the definition finds the same, a little more', () => {
    fc.assert(
      fc.property(shapes, (s) => {
        const chains = make(s, s.angle);
        for (const inner of [true, false]) {
          const exact = inner ? inside(...chains) : outside(...chains);
          const rough = sampled(chains, inner);
          expect(rough).toBeGreaterThanOrEqual(exact - 1e-5);
          expect(rough).toBeLessThanOrEqual(exact * 1.03 + 0.01);
        }
      }),
      { numRuns: 25, seed: 11 },
    );
  });

  test('turning, mirroring and travelling the other way change nothing', () => {
    fc.assert(
      fc.property(shapes, (s) => {
        const chains = make(s, 0);
        const others = [
          make(s, s.angle),
          chains.map(reversed),
          chains.map((c) => reversed(c.map(([x, y, b]) => [160 - x, y, -b]))),
        ];
        for (const other of others) {
          near(inside(...other), inside(...chains), 3e-5);
          near(outside(...other), outside(...chains), 3e-5);
        }
      }),
      { numRuns: 40, seed: 12 },
    );
  });

  test('a cap changes nothing below it', () => {
    fc.assert(
      fc.property(shapes, (s) => {
        const d = draw(...make(s, s.angle));
        for (const side of ['inside', 'outside'] as const) {
          const free = reach(d, side).reach;
          near(reach(d, side, free * 1.7).reach, free, 3e-7);
          expect(reach(d, side, free * 0.9)).toMatchObject({ reach: free * 0.9, capped: true });
        }
      }),
      { numRuns: 40, seed: 13 },
    );
  });
});

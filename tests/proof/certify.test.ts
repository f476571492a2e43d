import { describe, expect, test } from 'vitest';
import { certify, gap, gapRuns, type PlainEdge, PRESS, readSvg } from '../../src/proof/index.js';
import { type Chain, circle, rounded, svgOf } from './drawn.js';

/* Closed forms as in reach.test.ts; the outlines are given as plain edges, worked out here from bulges. */
const t = PRESS;

function edges(chain: Chain): PlainEdge[] {
  return chain.map(([x0, y0, b], i) => {
    const [x1, y1] = chain[(i + 1) % chain.length]!;
    if (b === 0) return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0 };
    const h = (1 - b * b) / (4 * b);
    const r = (Math.hypot(x1 - x0, y1 - y0) * (1 + b * b)) / (4 * b);
    const [cx, cy] = [(x0 + x1) / 2 - (y1 - y0) * h, (y0 + y1) / 2 + (x1 - x0) * h];
    return { x0, y0, x1, y1, cx, cy, r, wide: Math.abs(b) > 1 };
  });
}
const inside = { radius: 2, side: 'inside', top: 10 } as const;
const outside = { ...inside, side: 'outside' } as const;
const near = (value: number, expected: number, by = 1e-5) =>
  expect(Math.abs(value - expected), `${value} is not ${expected}`).toBeLessThanOrEqual(by);

describe('a certificate of plain edges', () => {
  test('a ring: its size, parts, holes and reach by both routes', () => {
    const c = certify([edges(circle(30, 30, 10)), edges(circle(30, 30, 7))], inside);
    expect(c).toMatchObject({ holds: false, parts: 1, holes: 1, capped: false });
    near(c.reach, (3 + t) / 2);
    near(c.field, (3 + t) / 2, 0.003);
    [20, 20, 40, 40].forEach((v, k) => {
      near(c.box[k]!, v);
    });
    expect(c.failures).toEqual([
      expect.stringMatching(/the reach is 1.500[23] mm at .*, and the cutter needs 2/),
    ]);
    expect(
      certify([edges(circle(30, 30, 10)), edges(circle(30, 30, 7))], { ...inside, radius: 1.5 }).holds,
    ).toBe(true);
  });

  test('a circle sweeping more than a half turn in one edge', () => {
    const s = Math.SQRT1_2 * 5;
    const c = certify(
      [
        [
          { x0: s, y0: s, x1: s, y1: -s, cx: 0, cy: 0, r: 5, wide: true },
          { x0: s, y0: -s, x1: s, y1: s, cx: 0, cy: 0, r: 5 },
        ],
      ],
      { ...inside, radius: 4 },
    );
    near(c.reach, 5 + t / 2);
    near(c.field, 5 + t / 2, 0.003);
    expect(c.holds).toBe(true);
  });

  test('every corner of a rectangle is a place of its own, the tightest first, on the corner', () => {
    const c = certify(
      [
        edges(
          rounded(
            [
              [20, 20, 0],
              [60, 20, 0.5],
              [60, 50, 1],
              [20, 50, 3],
            ],
            3,
          ),
        ),
      ],
      inside,
    );
    expect(c.places.map((p) => p.kind)).toEqual(Array(4).fill('inside corner'));
    c.places.forEach((p, k) => {
      near(p.radius, [0, 0.5, 1, 3][k]!, 0.002);
    });
    // A corner's place is on its boundary: the middle of its arc is r (sqrt 2 - 1) from where the sides would meet.
    const off = (r: number) => r * (1 - Math.SQRT1_2);
    for (const [k, x, y] of [
      [0, 20, 20],
      [1, 60 - off(0.5), 20 + off(0.5)],
      [2, 60 - off(1), 50 - off(1)],
    ] as const) {
      near(c.places[k]!.at[0], x, 0.01);
      near(c.places[k]!.at[1], y, 0.01);
    }
  });

  test('four sharp corners that share their walls are four places', () => {
    const { places } = certify(
      [
        edges([
          [20, 20, 0],
          [60, 20, 0],
          [60, 50, 0],
          [20, 50, 0],
        ]),
      ],
      inside,
    );
    expect(places.map((p) => p.at.map((v) => Number(v.toFixed(6))).join()).sort()).toEqual([
      '20,20',
      '20,50',
      '60,20',
      '60,50',
    ]);
  });

  test('a corner whose walls are in short pieces is one place, and so is a gap between walls with sharp corners', () => {
    // The sides that meet in (20, 20), at 58 degrees, cut into pieces that each open it by 3 degrees more.
    const side = (from: number, by: number): Chain => {
      let [x, y] = [20, 20];
      return Array.from({ length: 10 }, (_, k) => {
        const a = ((from + by * k) * Math.PI) / 180;
        x += 0.9 * Math.cos(a);
        y += 0.9 * Math.sin(a);
        return [x, y, 0] as const;
      });
    };
    const pieces: Chain = [
      [20, 20, 0],
      ...side(0, -3),
      [60, 20, 0.3],
      [60, 60, 0.3],
      ...[...side(58, 3)].reverse(),
    ];
    const near20 = certify([edges(pieces)], inside).places.filter(
      ({ at: [x, y] }) => Math.hypot(x - 20, y - 20) < 6,
    );
    expect(near20.map((p) => p.at.map((v) => Number(v.toFixed(3))))).toEqual([[20, 20]]);
    // From inside the bars' own corners are the tightest; the slot between the holes in the middle is told of too.
    const frame: Chain = [
      [0, 0, 0],
      [60, 0, 0],
      [60, 60, 0],
      [0, 60, 0],
    ];
    const hole = (x: number, y: number): Chain => [
      [x, y, 0],
      [x, y + 20, 0],
      [x + 18.5, y + 20, 0],
      [x + 18.5, y, 0],
    ];
    const { places } = certify([edges(frame), edges(hole(10, 20)), edges(hole(31, 20))], inside);
    expect(places.map((p) => p.kind).sort()).toEqual(['gap', ...Array(4).fill('inside corner')]);
    near(places[4]!.radius, (2.5 + t) / 2);
    near(places[4]!.at[0], 29.75, 1e-3);
  });

  test('gaps lie between two outlines, slots between two walls of one', () => {
    const two = certify([edges(circle(30, 30, 8)), edges(circle(49, 30, 8))], outside);
    expect(two.places).toHaveLength(1);
    expect(two.places[0]!.kind).toBe('gap');
    near(two.places[0]!.radius, (3 + t) / 2);
    near(two.places[0]!.at[0], 39.5, 1e-3);
    near(two.places[0]!.at[1], 30, 1e-3);
    // A square with a notch 3 wide and 12 deep, whose bottom corners have a radius of 1.5 too.
    const notched = rounded(
      [
        [20, 20],
        [50, 20],
        [50, 40],
        [36.5, 40],
        [36.5, 28, 1.499],
        [33.5, 28, 1.499],
        [33.5, 40],
        [20, 40],
      ],
      3,
    );
    const { places } = certify([edges(notched)], outside);
    const slot = places.find((p) => p.kind === 'slot')!;
    near(slot.radius, 1.5, 0.001);
    near(slot.at[0], 35, 0.001);
    expect(slot.at[1]).toBeGreaterThan(29);
    expect(slot.at[1]).toBeLessThan(40);
  });

  test('no more places than asked, and none that is not under twice the radius', () => {
    const many = Array.from({ length: 30 }, (_, k) => edges(circle(20 + 12 * k, 30, 2 + k / 20)));
    const c = certify(many, inside);
    expect(c.places).toHaveLength(10);
    c.places.forEach((p, k) => {
      near(p.radius, 2 + k / 20 + t / 2);
    });
    expect(certify([edges(circle(0, 0, 5))], inside).places).toEqual([]);
  });

  test('outlines that cross, enclose nothing, are open or no numbers', () => {
    const crossed = certify([edges(circle(30, 30, 8)), edges(circle(40, 30, 8))], inside);
    expect(crossed.holds).toBe(false);
    expect(crossed.failures.join()).toMatch(/crosses or touches itself at \(/);
    const [first, ...rest] = edges(circle(30, 30, 8));
    expect(() => certify([[{ ...first!, x1: first!.x1 + 0.1 }, ...rest]], inside)).toThrow(
      'outline 1 is open after edge 1',
    );
    expect(() => certify([[{ ...first!, r: Number.NaN }, ...rest]], inside)).toThrow('not made of numbers');
    expect(() => certify([], inside)).toThrow('nothing is drawn');
  });
});

describe('the gap in pieces', () => {
  const pocket = readSvg(svgOf('pocket', [circle(50, 50, 20)]));
  const plug = readSvg(svgOf('plug', [circle(50.3, 50, 19.9)]));

  test('is that of two circles off centre at every piece', () => {
    const runs = gapRuns(pocket, plug, 0.5);
    expect(runs.length).toBeGreaterThan(200);
    for (const { from, middle, to, gap: found } of runs) {
      near(found, 20 - Math.hypot(middle[0] - 50, middle[1] - 50), 1e-4);
      const way = (p: readonly [number, number]) => Math.hypot(p[0] - middle[0], p[1] - middle[1]);
      near(way(from), way(to), 0.1);
      expect(way(from)).toBeGreaterThan(0.1);
    }
    const whole = gap(pocket, plug);
    near(Math.min(...runs.map((r) => r.gap)), whole.least, 0.002);
    near(Math.max(...runs.map((r) => r.gap)), whole.most, 0.002);
    expect(gapRuns(pocket, plug, 0.001, 500).length).toBeLessThanOrEqual(500);
  });
});

import { describe, expect, test } from 'vitest';
import { crossing, difference, gap, mirrored, readDxf, readSvg, worstJoint } from '../../src/proof/index.js';
import { type Chain, circle, dxfOf, moved, rounded, svgOf, turned } from './drawn.js';

const pocket = (...chains: Chain[]) => readSvg(svgOf('pocket', chains));
const plug = (...chains: Chain[]) => readSvg(svgOf('plug', chains));
const box = (c: number, r: number): Chain =>
  rounded(
    [
      [20 + c, 20 + c],
      [70 - c, 20 + c],
      [70 - c, 55 - c],
      [20 + c, 55 - c],
    ],
    r,
  );

/** The gap's stated error, and the rounding of written coordinates. */
const FINE = 1e-4;

function expectGap(g: { least: number; most: number }, least: number, most: number) {
  expect(Math.abs(g.least - least), `least ${g.least}, expected ${least}`).toBeLessThan(FINE);
  expect(Math.abs(g.most - most), `most ${g.most}, expected ${most}`).toBeLessThan(FINE);
}

describe('gap', () => {
  test('concentric circles: the difference of radii, also where the arcs do not begin together', () => {
    expectGap(gap(pocket(circle(50, 50, 8)), plug(circle(50, 50, 7.92))), 0.08, 0.08);
    const other = moved(turned(circle(0, 0, 7.92), 0.7), 50, 50);
    expectGap(gap(pocket(circle(50, 50, 8)), plug(other)), 0.08, 0.08);
  });

  test('a rounded rectangle and its inset', () => {
    expectGap(gap(pocket(box(0, 4)), plug(box(0.09, 3.91))), 0.09, 0.09);
  });

  test('a corner that was not rounded along: the gap grows to c sqrt 2', () => {
    // Both corners of radius 4, insets by 0.09: centres are 0.09 sqrt 2 apart, on the diagonal.
    expectGap(gap(pocket(box(0, 4)), plug(box(0.09, 4))), 0.09, 0.09 * Math.SQRT2);
  });

  test('moved by 0.01: a hundredth less on one side, more on the other', () => {
    expectGap(gap(pocket(box(0, 4)), plug(moved(box(0.09, 3.91), 0.01, 0))), 0.08, 0.1);
    expectGap(gap(pocket(circle(50, 50, 8)), plug(circle(50.006, 50.008, 7.92))), 0.07, 0.09);
  });

  test('overlap is negative, by as much as the plug pokes out', () => {
    expectGap(gap(pocket(circle(50, 50, 8)), plug(circle(50, 50, 8.05))), -0.05, -0.05);
    expectGap(gap(pocket(circle(50, 50, 8)), plug(circle(50.2, 50, 7.9))), -0.1, 0.3);
    expectGap(gap(pocket(box(0, 4)), plug(box(-0.03, 4.03))), -0.03, -0.03);
  });

  test('holes: the plug must clear the field that stands in the pocket', () => {
    const ring = pocket(circle(50, 50, 20), circle(50, 50, 10));
    expectGap(gap(ring, plug(circle(50, 50, 19.9), circle(50, 50, 10.1))), 0.1, 0.1);
    expectGap(gap(ring, plug(circle(50, 50, 19.9), circle(50, 50, 9.95))), -0.05, 0.1);
    const solid = gap(ring, plug(circle(50, 50, 19.9)));
    expect(solid.least).toBeLessThan(-9.8);
  });

  test('a part missing from either is seen', () => {
    const two = [circle(30, 30, 8), circle(90, 30, 8)];
    const short = gap(pocket(...two), plug(circle(30, 30, 7.9)));
    expect(short.most).toBeGreaterThan(60 - 15.91 + 15.9);
    expect(short.least).toBeGreaterThan(0.0999);
    const extra = gap(pocket(circle(30, 30, 8)), plug(circle(30, 30, 7.9), circle(90, 30, 7.9)));
    expect(extra.least).toBeLessThan(-59);
  });

  test('an edge cut in two opposite an uncut one is no matter; a dent between vertices is', () => {
    const cut: Chain = box(0.09, 3.91).flatMap(([x, y, b], i, all) => {
      const [u, v] = all[(i + 1) % all.length]!;
      return b === 0
        ? [
            [x, y, b],
            [(x + u) / 2, (y + v) / 2, b],
          ]
        : [[x, y, b]];
    });
    expectGap(gap(pocket(box(0, 4)), plug(cut)), 0.09, 0.09);
    const bowed = cut.map(([x, y, b], i): readonly [number, number, number] => [
      x,
      y,
      i === 1 && b === 0 ? 0.004 : b,
    ]);
    const sag = gap(pocket(box(0, 4)), plug(bowed));
    const i = bowed.findIndex(([, , b]) => b === 0.004);
    const [p, q] = [bowed[i]!, bowed[i + 1]!];
    expectGap(sag, 0.09 - (0.004 * Math.hypot(q[0] - p[0], q[1] - p[1])) / 2, 0.09);
  });

  test('a plug turned in its pocket', () => {
    const turnedBox = moved(turned(moved(box(0.3, 3.7), -45, -37.5), 0.004), 45, 37.5);
    const g = gap(pocket(box(0, 4)), plug(turnedBox));
    // Corners' centres lie 21.3 by 13.8 from the middle; the long sides' ends swing by 21 sin a, the corners' by no more than their distance.
    const a = 0.004;
    const [hx, hy] = [25, 17.5];
    const shrink = (x: number, y: number) => x * Math.cos(a) + y * Math.sin(a);
    // The greatest reach of the turned box in x and y: its corner centres plus their radius.
    const least = Math.min(hx - shrink(hx - 4, hy - 4) - 3.7, hy - shrink(hy - 4, hx - 4) - 3.7);
    expect(Math.abs(g.least - least)).toBeLessThan(FINE);
  });
});

describe('joints, crossings, SVG against DXF', () => {
  test('the worst joint is the angle between neighbours', () => {
    expect(worstJoint(pocket(box(0, 0))).degrees).toBeCloseTo(90, 6);
    expect(worstJoint(pocket(box(0, 4))).degrees).toBeLessThan(1e-4);
    const bent = moved(
      [
        [20, 20, 0],
        [40, 20, 0],
        [60, 20 + 20 * Math.tan(Math.PI / 900), 0],
        [60, 60, 0],
        [20, 60, 0],
      ],
      0,
      0,
    );
    const joints = worstJoint(pocket(bent.map(([x, y, b], i) => (i > 1 ? [x, y, 0.3] : [x, y, b]))));
    expect(joints.degrees).toBeGreaterThan(10);
  });

  test('a kink of 0.2 degree is measured as such', () => {
    const tip = 20 - 20 * Math.tan((0.1 * Math.PI) / 180);
    const d = pocket(
      rounded(
        [
          [20, 20],
          [40, tip, 0],
          [60, 20],
          [60, 60],
          [20, 60],
        ],
        3,
      ),
    );
    expect(worstJoint(d).degrees).toBeCloseTo(0.2, 3);
    expect(worstJoint(d).at![0]).toBeCloseTo(40, 5);
  });

  test('a corner cannot hide in crumbs, nor do sound crumbs count as corners', () => {
    const crumbs: Chain = [
      [20, 20, 0],
      [60, 20, 0],
      [60.0001, 20.0001, 0],
      [60.0001, 60, 0],
      [20, 60, 0],
    ];
    expect(worstJoint(pocket(crumbs)).degrees).toBeCloseTo(90, 2);
    const straight: Chain = [...box(0, 4).slice(0, 1), ...box(0, 4).slice(1)];
    const [x, y] = straight[1]!;
    const sound = [
      ...straight.slice(0, 2),
      [x + 5, y, 0] as const,
      [x + 5.000003, y + 0.000001, 0] as const,
      ...straight.slice(2),
    ];
    expect(worstJoint(pocket(sound)).degrees).toBeLessThan(0.001);
  });

  test('crossing and touching boundaries are found, sound ones are not', () => {
    expect(crossing(pocket(box(0, 4), circle(45, 40, 5)))).toBeNull();
    expect(crossing(pocket(circle(50, 50, 8), circle(60, 50, 8)))).not.toBeNull();
    expect(crossing(pocket(circle(50, 50, 8), circle(66, 50, 8)))).not.toBeNull();
    const bow: Chain = [
      [20, 20, 0],
      [60, 60, 0],
      [60, 20, 0],
      [20, 60, 0],
    ];
    expect(crossing(pocket(bow))).not.toBeNull();
    const loop: Chain = [
      [20, 20, 0],
      [60, 20, 1.8],
      [60, 24, 0],
      [20, 60, 0],
    ];
    expect(crossing(pocket(loop))).toBeNull();
    const through: Chain = [
      [20, 20, 0],
      [60, 20, -1.8],
      [60, 24, 0],
      [20, 24, 0],
    ];
    expect(crossing(pocket(through))).not.toBeNull();
  });

  test('SVG and DXF of one thing agree; a vertex or an arc moved by 0.001 shows, a part more is Infinity', () => {
    const chains = [box(0, 4), circle(100, 100, 9)];
    expect(difference(pocket(...chains), readDxf(dxfOf('pocket', chains)))).toBeLessThan(3e-6);
    const nudged = chains.map((c) => c.map(([x, y, b], i) => [x + (i === 1 ? 0.001 : 0), y, b] as const));
    expect(difference(pocket(...chains), readDxf(dxfOf('pocket', nudged)))).toBeCloseTo(0.001, 5);
    const bowed = chains.map((c) => c.map(([x, y, b]) => [x, y, b === 0 ? 0 : b * 1.001] as const));
    expect(difference(pocket(...chains), readDxf(dxfOf('pocket', bowed)))).toBeGreaterThan(0.001);
    // What is no number is no agreement, whatever comes after it.
    const none = readDxf(dxfOf('pocket', chains));
    none.edges.x1[0] = Number.NaN;
    expect(difference(pocket(...chains), none)).toBe(Number.POSITIVE_INFINITY);
    expect(difference(pocket(...chains), readDxf(dxfOf('pocket', chains.slice(1))))).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  test('mirroring twice is no change', () => {
    const d = pocket(box(0, 4), circle(100, 100, 9));
    expect(difference(mirrored(mirrored(d, 200), 200), d)).toBeLessThan(1e-12);
    expect(mirrored(d, 200).edges.x0[0]).toBeCloseTo(200 - d.edges.x0[0]!, 12);
    expect(mirrored(d, 200).nesting.area[0]).toBeCloseTo(-d.nesting.area[0]!, 9);
  });
});

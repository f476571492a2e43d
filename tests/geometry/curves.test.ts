import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubicArcs, quadraticArcs } from '../../src/geometry/curves.js';
import {
  bulged,
  type Edge,
  endTangent,
  line,
  parameterEnd,
  pointAt,
  startTangent,
  sweep,
} from '../../src/geometry/edge.js';
import { curveArcs } from '../../src/geometry/parametric.js';
import { distanceToEdge } from '../../src/geometry/region.js';

type Point = readonly [number, number];
type Four = readonly [Point, Point, Point, Point];

/** de Casteljau's construction: another route to the curve than the power form in src. */
function casteljau(points: readonly Point[], t: number): Point {
  let row = points.map(([x, y]): Point => [x, y]);
  while (row.length > 1)
    row = row
      .slice(1)
      .map((q, i): Point => [row[i][0] + (q[0] - row[i][0]) * t, row[i][1] + (q[1] - row[i][1]) * t]);
  return row[0];
}

const distanceTo = (edges: readonly Edge[], [x, y]: Point): number =>
  Math.min(...edges.map((e) => distanceToEdge(e, x, y)));

/** Largest distance from curve to arcs and from arcs to curve (the curve as 8,000 chords). */
function strays(points: readonly Point[], edges: readonly Edge[]): [number, number] {
  const n = 8000;
  let there = 0;
  const dense: Point[] = [];
  for (let i = 0; i <= n; i++) dense.push(casteljau(points, i / n));
  for (let i = 0; i <= n; i += 8) there = Math.max(there, distanceTo(edges, dense[i]));
  let back = 0;
  for (const e of edges)
    for (let k = 1; k < 6; k++) {
      const [x, y] = pointAt(e, (parameterEnd(e) * k) / 6);
      let near = 0;
      let best = Number.POSITIVE_INFINITY;
      dense.forEach((p, i) => {
        const d = (p[0] - x) ** 2 + (p[1] - y) ** 2;
        if (d < best) [best, near] = [d, i];
      });
      const chords = dense.slice(Math.max(0, near - 1), near + 2);
      back = Math.max(
        back,
        Math.min(...chords.slice(1).map((q, i) => distanceToEdge(line(...chords[i], ...q), x, y))),
      );
    }
  return [there, back];
}

const turn = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]));

function expectChained(edges: readonly Edge[], first: Point, last: Point): void {
  expect([edges[0].x0, edges[0].y0]).toEqual([...first]);
  expect([edges.at(-1)!.x1, edges.at(-1)!.y1]).toEqual([...last]);
  for (let i = 1; i < edges.length; i++) {
    expect(edges[i].x0).toBe(edges[i - 1].x1);
    expect(edges[i].y0).toBe(edges[i - 1].y1);
  }
  for (const e of edges) expect(sweep(e)).toBeLessThan((170.01 / 180) * Math.PI);
}

describe('cubicArcs', () => {
  const plain: Record<string, Four> = {
    arch: [
      [0, 0],
      [0, 20],
      [40, 20],
      [40, 0],
    ],
    wave: [
      [0, 0],
      [30, 25],
      [-5, -25],
      [40, 3],
    ],
    'long and flat': [
      [0, 0],
      [100, 0.5],
      [200, 0.4],
      [300, 0],
    ],
    loop: [
      [0, 0],
      [60, 40],
      [-30, 40],
      [20, 0],
    ],
    'small letter bowl': [
      [0, 0],
      [0.3, 0.9],
      [1.4, 1.2],
      [2, 1],
    ],
    'one handle on its end': [
      [0, 0],
      [0, 0],
      [20, 30],
      [40, 0],
    ],
    'both handles on one end': [
      [0, 0],
      [0, 0],
      [0, 0],
      [40, 7],
    ],
    'handles on their ends': [
      [0, 0],
      [0, 0],
      [30, 9],
      [30, 9],
    ],
    'closed drop': [
      [0, 0],
      [40, 30],
      [-40, 30],
      [0, 0],
    ],
  };
  for (const [name, points] of Object.entries(plain)) {
    it(`follows the curve both ways, tangent at every joint: ${name}`, () => {
      const edges = cubicArcs(...points);
      expectChained(edges, points[0], points[3]);
      const [there, back] = strays(points, edges);
      expect(there).toBeLessThan(0.002);
      expect(back).toBeLessThan(0.002);
      for (let i = 1; i < edges.length; i++)
        expect(turn(endTangent(edges[i - 1]), startTangent(edges[i]))).toBeLessThan(1e-9);
    });
  }

  it('keeps the end tangents of the curve', () => {
    const edges = cubicArcs([0, 0], [3, 4], [30, 10], [40, -2]);
    expect(turn(startTangent(edges[0]), [0.6, 0.8])).toBeLessThan(1e-9);
    expect(turn(endTangent(edges.at(-1)!), [10, -12])).toBeLessThan(1e-9);
  });

  it('uses few arcs: a 40 mm quarter circle by its usual cubic is one biarc', () => {
    // 0.5523 is the usual handle length, off a true circle by 0.027 % at most (Goldapp, CAGD 8, 1991; from memory).
    const k = 0.5522847498;
    const edges = cubicArcs([5, 0], [5, 5 * k], [5 * k, 5], [0, 5]);
    expect(edges.length).toBe(2);
    for (const e of edges) expect(e.r).toBeCloseTo(5, 2);
    expect(cubicArcs([0, 0], [0, 20], [40, 20], [40, 0]).length).toBeLessThanOrEqual(24);
  });

  it('turns straight curves into lines, running back over themselves where the curve does', () => {
    expect(cubicArcs([0, 0], [1, 1], [2, 2], [3, 3])).toEqual([
      { x0: 0, y0: 0, x1: 3, y1: 3, cx: 0, cy: 0, r: 0 },
    ]);
    const over = cubicArcs([0, 0], [30, 0], [-20, 0], [10, 0]);
    expect(over.map((e) => e.r)).toEqual([0, 0, 0]);
    const [there] = strays(
      [
        [0, 0],
        [30, 0],
        [-20, 0],
        [10, 0],
      ],
      over,
    );
    expect(there).toBeLessThan(1e-9);
  });

  it('gives nothing for a curve that is a point', () => {
    expect(cubicArcs([2, 3], [2, 3], [2, 3], [2, 3])).toEqual([]);
    expect(quadraticArcs([2, 3], [2, 3], [2, 3])).toEqual([]);
  });

  it('meets a cusp as a corner', () => {
    // Handles crossed with both extents equal: B' vanishes at t = 1/2 (B' = 0 there by hand).
    const points: Four = [
      [0, 0],
      [20, 20],
      [0, 20],
      [20, 0],
    ];
    const edges = cubicArcs(...points);
    const [there, back] = strays(points, edges);
    expect(there).toBeLessThan(0.002);
    expect(back).toBeLessThan(0.002);
    const sharp = edges.filter((e, i) => i > 0 && turn(endTangent(edges[i - 1]), startTangent(e)) > 1e-6);
    expect(sharp.length).toBe(1);
    expect([sharp[0].x0, sharp[0].y0]).toEqual([expect.closeTo(10, 6), expect.closeTo(15, 6)]);
  });

  it('meets a loop or a bend too small to matter as one corner too, with few arcs', () => {
    for (const e of [1e-9, 1e-6, 1e-4, -1e-9, -1e-6, -1e-4]) {
      const points: Four = [
        [0, 0],
        [20 + e, 20],
        [-e, 20],
        [20, 0],
      ];
      const edges = cubicArcs(...points);
      expect(strays(points, edges)[0]).toBeLessThan(0.002);
      expect(edges.length).toBeLessThanOrEqual(24);
      const sharp = edges.filter((o, i) => i > 0 && turn(endTangent(edges[i - 1]), startTangent(o)) > 1e-6);
      expect(sharp).toHaveLength(1);
    }
  });

  it('follows any curve', () => {
    const coordinate = fc.oneof(
      fc.integer({ min: -40, max: 40 }),
      fc.double({ min: -40, max: 40, noNaN: true }),
    );
    const point = fc.tuple(coordinate, coordinate);
    let widest = 0;
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const edges = cubicArcs(a, b, c, d);
        if (edges.length === 0) return;
        expectChained(edges, edges.length ? a : d, d);
        let there = 0;
        for (let i = 0; i <= 600; i++)
          there = Math.max(there, distanceTo(edges, casteljau([a, b, c, d], i / 600)));
        widest = Math.max(widest, there);
        expect(there).toBeLessThan(0.002);
        expect(edges.length).toBeLessThan(150);
      }),
      { seed: 7, numRuns: 400 },
    );
    expect(widest).toBeGreaterThan(0.0005); // the property was put to the test
  });
});

describe('quadraticArcs', () => {
  it('follows a parabola exactly known', () => {
    // Control points (0,0), (10,20), (20,0): y = 2 x - x^2 / 10.
    const edges = quadraticArcs([0, 0], [10, 20], [20, 0]);
    let worst = 0;
    for (let x = 0; x <= 20; x += 0.05) worst = Math.max(worst, distanceTo(edges, [x, 2 * x - (x * x) / 10]));
    expect(worst).toBeLessThan(0.002);
    expect(worst).toBeGreaterThan(1e-5);
  });
});

it('a curve that is straight but for rounding gives lines, not arcs about a point too far to tell', () => {
  // A line by a formula whose derivative errs in the last digits.
  const edges = curveArcs(
    { point: (t) => [40 * t, 13 * t + 1e-13 * t * t], tangent: (t) => [40, 13 + 2e-9 * t] },
    0,
    1,
    4,
  );
  expect(edges.map((e) => e.r)).toEqual(edges.map(() => 0));
  expect(edges.length).toBeGreaterThan(0);
  // Just over the limit is an arc still, its ends on its circle.
  const arc = bulged(0, 0, 50, 0, 3e-6);
  expect(arc.r).toBeGreaterThan(1e6);
  expect(Math.abs(Math.hypot(arc.x1 - arc.cx, arc.y1 - arc.cy) - arc.r)).toBeLessThan(1e-8);
});

import { describe, expect, it } from 'vitest';
import { bulge, bulged, edgeLength, part, pointAt, splitArc, sweep } from '../../src/geometry/edge.js';
import {
  area,
  bounds,
  bulgedContour,
  circle,
  contains,
  distanceToBoundary,
  edgeBox,
  flatten,
  parts,
  perimeter,
  polygon,
  reversedContour,
} from '../../src/geometry/region.js';
import { mirrorX, placed } from '../../src/geometry/transform.js';
import { seeded } from '../support/random.js';

describe('edges', () => {
  it('turns bulges into arcs as the DXF reference defines them: bulge = tan(included angle / 4)', () => {
    // Values of the DXF reference's definition at 30, 90, 120 and 150 degrees.
    for (const [degrees, b] of [
      [30, 0.131652],
      [90, 0.414214],
      [120, 0.57735],
      [150, 0.767327],
    ] as const) {
      const e = bulged(0, 0, 10, 0, b);
      expect((sweep(e) * 180) / Math.PI).toBeCloseTo(degrees, 3);
      expect(bulge(e)).toBeCloseTo(b, 12);
      // The table has six figures, so the radius agrees to four.
      expect(e.r).toBeCloseTo(5 / Math.sin((degrees * Math.PI) / 360), 3);
    }
  });

  it('puts a counter-clockwise arc on the right of its chord, and a clockwise one on the left', () => {
    expect(pointAt(bulged(0, 0, 10, 0, 0.4), 0.2)[1]).toBeLessThan(0);
    expect(pointAt(bulged(0, 0, 10, 0, -0.4), 0.2)[1]).toBeGreaterThan(0);
  });

  it('cuts edges into parts that add up', () => {
    for (const b of [0, 0.3, -0.7]) {
      const e = bulged(1, 2, 7, -3, b);
      const t = b === 0 ? 2.5 : 0.2;
      expect(edgeLength(part(e, 0, t)) + edgeLength(part(e, t, 1e9))).toBeCloseTo(edgeLength(e), 12);
    }
  });

  it('splits wide arcs into arcs of at most 170 degrees on the same circle', () => {
    const e = bulged(0, 0, 0.1, 0, 3);
    const total = 4 * Math.atan(3);
    const split = splitArc(e, total);
    expect(split.length).toBe(2);
    expect(split.reduce((s, x) => s + edgeLength(x), 0)).toBeCloseTo(Math.abs(e.r) * total, 10);
  });

  it('boxes arcs by sampling: no point outside, every side touched', () => {
    const random = seeded(4);
    for (let k = 0; k < 400; k++) {
      const e = bulged(random() * 9, random() * 9, random() * 9, random() * 9, (random() - 0.5) * 1.8);
      const box = edgeBox(e);
      const end = e.r === 0 ? edgeLength(e) : Math.tan(sweep(e) / 2);
      let [minX, minY, maxX, maxY] = [1e9, 1e9, -1e9, -1e9];
      for (let i = 0; i <= 2000; i++) {
        const [x, y] = pointAt(e, (end * i) / 2000);
        [minX, minY] = [Math.min(minX, x), Math.min(minY, y)];
        [maxX, maxY] = [Math.max(maxX, x), Math.max(maxY, y)];
      }
      const slack = edgeLength(e) * 1e-3;
      for (const [a, b] of [
        [box.minX, minX],
        [box.minY, minY],
        [maxX, box.maxX],
        [maxY, box.maxY],
      ] as const) {
        expect(a).toBeLessThanOrEqual(b + 1e-9);
        expect(b - a).toBeLessThan(slack);
      }
    }
  });
});

describe('regions', () => {
  const ring = { contours: [circle(2, 3, 5), reversedContour(circle(2, 3, 3))] };

  it('measure areas and perimeters in closed form', () => {
    expect(area(ring)).toBeCloseTo(Math.PI * (25 - 9), 11);
    expect(perimeter(ring)).toBeCloseTo(2 * Math.PI * 8, 11);
    // A stadium 6 long between centres, radius 2: 6 x 4 + pi 4.
    const stadium = bulgedContour([
      { x: -3, y: -2, bulge: 0 },
      { x: 3, y: -2, bulge: 1 },
      { x: 3, y: 2, bulge: 0 },
      { x: -3, y: 2, bulge: 1 },
    ]);
    expect(area({ contours: [stadium] })).toBeCloseTo(24 + 4 * Math.PI, 11);
    expect(bounds([stadium])).toEqual({ minX: -5, minY: -2, maxX: 5, maxY: 2 });
  });

  it('know inside from outside, holes included', () => {
    expect(contains(ring, 2, 3)).toBe(false);
    expect(contains(ring, 6.2, 3)).toBe(true);
    expect(contains(ring, 2, -1.5)).toBe(true);
    expect(contains(ring, 7.2, 3)).toBe(false);
    const random = seeded(11);
    for (let k = 0; k < 3000; k++) {
      const x = random() * 14 - 5;
      const y = random() * 14 - 4;
      const d = Math.hypot(x - 2, y - 3);
      if (Math.abs(d - 5) > 1e-6 && Math.abs(d - 3) > 1e-6) expect(contains(ring, x, y)).toBe(d < 5 && d > 3);
      expect(distanceToBoundary(ring, x, y)).toBeCloseTo(Math.min(Math.abs(d - 5), Math.abs(d - 3)), 9);
    }
  });

  it('sort contours into parts with their own holes', () => {
    const far = placed(circle(0, 0, 1), 20, 0);
    const island = circle(2, 3, 1);
    const sorted = parts({ contours: [...ring.contours, far, island] });
    expect(sorted.map((p) => p.length)).toEqual([2, 1, 1]);
  });

  it('flatten within the chord tolerance', () => {
    for (const chord of [0.1, 0.001]) {
      const points = flatten(circle(0, 0, 7), chord);
      const polygonArea = area({ contours: [polygon(points)] });
      expect(polygonArea).toBeLessThan(49 * Math.PI);
      points.forEach((p, i) => {
        const q = points[(i + 1) % points.length]!;
        expect(7 - Math.hypot((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)).toBeLessThanOrEqual(chord * 1.0001);
      });
    }
  });

  it('mirror and move without changing size', () => {
    expect(area(mirrorX(ring))).toBeCloseTo(area(ring), 11);
    const moved = { contours: ring.contours.map((c) => placed(c, 4, -2, 0.7, 2)) };
    expect(area(moved)).toBeCloseTo(4 * area(ring), 10);
  });
});

import { describe, expect, it } from 'vitest';
import { union } from '../../../src/geometry/boolean.js';
import { capsule } from '../../../src/geometry/capsule.js';
import { arc } from '../../../src/geometry/edge.js';
import {
  type Contour,
  circle,
  contains,
  flatten,
  polygon,
  type Region,
  reversedContour,
} from '../../../src/geometry/region.js';
import { stroke } from '../../../src/geometry/stroke.js';
import { thickened } from '../../../src/geometry/thicken/thicken.js';
import { combined, offsetBy, polygonArea } from '../../support/reference.js';
import { ringsOf } from '../../support/rings.js';

/** The cutter's corner radius in all these tests, mm. */
const R = 1;

type Point = readonly [number, number];

/** Points of the region's boundary, no further apart than 0.05 mm. */
function boundaryPoints(region: Region): Point[] {
  return region.contours.flatMap((c) => {
    const points = flatten(c, 1e-4);
    return points.flatMap((p, i) => {
      const q = points[(i + 1) % points.length]!;
      const n = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / 0.05));
      return Array.from(
        { length: n },
        (_, k): Point => [p[0] + ((q[0] - p[0]) * k) / n, p[1] + ((q[1] - p[1]) * k) / n],
      );
    });
  });
}

/** Distance of a point from a polyline: plain segments, nothing of the kernel. */
function distanceTo(points: readonly Point[], [x, y]: Point): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < points.length; i++) {
    const [[ax, ay], [bx, by]] = [points[i]!, points[i + 1]!];
    const [dx, dy] = [bx - ax, by - ay];
    const l2 = dx * dx + dy * dy;
    const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / l2));
    best = Math.min(best, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  }
  return best;
}

/** Least and largest distance of a region's boundary from a polyline that runs inside it. */
function spread(region: Region, middle: readonly Point[]): { least: number; most: number } {
  const all = boundaryPoints(region).map((p) => distanceTo(middle, p));
  return { least: Math.min(...all), most: Math.max(...all) };
}

/** Area of what of `a` lies outside `b`, mm2 (Clipper2). */
function outside(a: Region, b: ReturnType<typeof offsetBy>): number {
  return polygonArea(combined('difference', ringsOf(a.contours, 2e-5), b));
}

const along = (n: number, f: (t: number) => Point): Point[] =>
  Array.from({ length: n + 1 }, (_, i) => f(i / n));

describe('thickened', () => {
  it('leaves a region in which nothing is thin as it is', () => {
    const square: Region = {
      contours: [
        polygon([
          [0, 0],
          [9, 0],
          [9, 9],
          [0, 9],
        ]),
      ],
    };
    const frame: Region = { contours: [circle(0, 0, 9), reversedContour(circle(0, 0, 5))] };
    const wedge: Region = {
      contours: [
        polygon([
          [0, 0],
          [9, -4],
          [9, 4],
        ]),
      ],
    };
    for (const region of [square, frame, wedge]) {
      const t = thickened(region, R);
      expect(t.region).toBe(region);
      expect([...t.grown, ...t.opened]).toEqual([]);
    }
  });

  it('grows a capsule about its own line, and no longer', () => {
    for (const w of [0.3, 0.6, 0.9]) {
      const t = thickened({ contours: [capsule(0, 0, 10, 4, w)] }, R);
      // By hand: the ends of the line within move in by R - w, so that both tips stay.
      const [ux, uy] = [10 / Math.hypot(10, 4), 4 / Math.hypot(10, 4)];
      const m = R - w;
      const { least, most } = spread(t.region, [
        [m * ux, m * uy],
        [10 - m * ux, 4 - m * uy],
      ]);
      expect(least, `w ${w}`).toBeGreaterThan(R - 1e-6);
      expect(most, `w ${w}`).toBeLessThan(R + 0.008);
      expect(t.grown).toHaveLength(1);
      expect(t.grown[0]!.width).toBeCloseTo(2 * w, 6);
    }
  });

  it('grows a ring on both sides', () => {
    const t = thickened({ contours: [circle(3, 4, 6.7), reversedContour(circle(3, 4, 5.3))] }, R);
    expect(t.region.contours).toHaveLength(2);
    const middle = along(1200, (s) => [3 + 6 * Math.cos(2 * Math.PI * s), 4 + 6 * Math.sin(2 * Math.PI * s)]);
    const { least, most } = spread(t.region, middle);
    expect(least).toBeGreaterThan(R - 1e-3);
    expect(most).toBeLessThan(R + 0.005);
  });

  it('grows an S of arcs about its own line', () => {
    const w = 0.7;
    // Two three-quarter circles of radius 4 that meet tangentially at the origin.
    const upper = [arc(0, 0, -4, 4, 0, 4, -4), arc(-4, 4, 0, 8, 0, 4, -4), arc(0, 8, 4, 4, 0, 4, -4)];
    const lower = upper.map((e) => arc(-e.x1, -e.y1, -e.x0, -e.y0, -e.cx, -e.cy, 4)).reverse();
    const path = [...lower.map((e) => arc(e.x0, e.y0, e.x1, e.y1, e.cx, e.cy, e.r)), ...upper];
    const t = thickened(stroke(path, 2 * w, { closed: false, cap: 'round' }), R);
    // The line within, cut short by R - w at both ends (an angle of (R - w) / 4 on the circles).
    const cut = (R - w) / 4;
    const half = along(1000, (s): Point => {
      const a = -Math.PI / 2 - s * (1.5 * Math.PI - cut);
      return [4 * Math.cos(a), 4 + 4 * Math.sin(a)];
    });
    const middle = [...half.map(([x, y]): Point => [-x, -y]).reverse(), ...half];
    const { least, most } = spread(t.region, middle);
    expect(least).toBeGreaterThan(R - 0.002);
    expect(most).toBeLessThan(R + 0.01);
  });

  it('widens only the thin part of a tapered bar, up to where it is wide enough', () => {
    // Half-width from 0.5 at x = 0 to 1.5 at x = 20: it is 1 at x = 10.
    const bar: Contour = polygon([
      [0, -0.5],
      [20, -1.5],
      [20, 1.5],
      [0, 0.5],
    ]);
    const t = thickened({ contours: [bar] }, R);
    for (const [x, y] of boundaryPoints(t.region)) {
      const drawn = 0.5 + x / 20;
      if (x > 10.6) expect(distanceTo([...flatten(bar, 1), [0, -0.5]], [x, y])).toBeLessThan(0.002);
      else if (x > 0.01) expect(Math.abs(Math.abs(y) - Math.max(R, drawn)), `at ${x}`).toBeLessThan(0.006);
      expect(x).toBeGreaterThan(-0.005);
    }
  });

  const w = 0.65;
  const limbs: Record<string, { region: Region; middles: Point[][] }> = {
    T: strokes(
      w,
      [
        [-6, 0],
        [6, 0],
      ],
      [
        [0, 0],
        [0, -8],
      ],
    ),
    cross: strokes(
      w,
      [
        [-6, 0],
        [6, 0],
      ],
      [
        [0, 7],
        [0, -7],
      ],
    ),
    Y: strokes(
      w,
      [
        [0, 0],
        [0, -6],
      ],
      [
        [0, 0],
        [5, 5],
      ],
      [
        [0, 0],
        [-5, 5],
      ],
    ),
    comb: strokes(
      w,
      [
        [0, -6],
        [0, 6],
      ],
      [
        [0, 6],
        [7, 6],
      ],
      [
        [0, 0],
        [6, 0],
      ],
      [
        [0, -6],
        [7, -6],
      ],
    ),
    slanted: strokes(
      w,
      [
        [-6, 0],
        [6, 0],
      ],
      [
        [0, 0],
        [5, 7],
      ],
    ),
    bend: strokes(
      w,
      [
        [0, 0],
        [8, 0],
      ],
      [
        [8, 0],
        [8, 7],
      ],
    ),
    V: strokes(
      w,
      [
        [-3.5, 8],
        [0, 0],
      ],
      [
        [0, 0],
        [3.5, 8],
      ],
    ),
  };

  for (const [name, { region, middles }] of Object.entries(limbs)) {
    it(`widens ${name} without notch, neck or blob`, () => {
      const t = thickened(region, R);
      // No blob: nothing lies further out than R - w from the drawn figure (Clipper2's offset).
      const most = offsetBy('clipper', ringsOf(region.contours, 2e-5), R - w + 0.006, 2e-5);
      expect(outside(t.region, most)).toBeLessThan(2e-3);
      // No notch: all within R of the drawn lines, cut short by R - w at their free ends, is wood.
      for (const middle of middles)
        for (const [x, y] of flattenPolyline(middle, 0.1))
          for (let a = 0; a < 24; a++) {
            const p: Point = [x + 0.999 * R * Math.cos(a * 0.2618), y + 0.999 * R * Math.sin(a * 0.2618)];
            expect(contains(t.region, p[0], p[1]), `${name} at ${p}`).toBe(true);
          }
    });
  }

  it('makes a disc of what is smaller than the cutter, in its place', () => {
    const square = polygon([
      [2, 2],
      [3, 2],
      [3, 3],
      [2, 3],
    ]);
    const hyphen = capsule(-3, 0, -2.4, 0, 0.4);
    const dot = circle(8, 8, 0.5);
    for (const [c, x, y] of [
      [square, 2.5, 2.5],
      [hyphen, -2.7, 0],
      [dot, 8, 8],
    ] as [Contour, number, number][]) {
      const t = thickened({ contours: [c] }, R);
      expect(t.region.contours).toHaveLength(1);
      for (const p of boundaryPoints(t.region)) {
        const d = Math.hypot(p[0] - x, p[1] - y);
        expect(Math.abs(d - R)).toBeLessThan(0.005);
      }
      expect(t.grown).toHaveLength(1);
    }
  });

  it('opens a slot between wide sides to 2r, each side giving the same', () => {
    // A block of 12 by 10 with a slot of 1.2 open at the right, 6 deep.
    const block = polygon([
      [0, 0],
      [12, 0],
      [12, 4.4],
      [6, 4.4],
      [6, 5.6],
      [12, 5.6],
      [12, 10],
      [0, 10],
    ]);
    const t = thickened({ contours: [block] }, R);
    expect(t.opened).toHaveLength(1);
    expect(t.opened[0]!.width).toBeCloseTo(1.2, 6);
    for (const x of [7.2, 9, 11, 11.9]) {
      expect(contains(t.region, x, 4.001), `${x}`).toBe(false);
      expect(contains(t.region, x, 5.999), `${x}`).toBe(false);
      expect(contains(t.region, x, 3.98), `${x}`).toBe(true);
      expect(contains(t.region, x, 6.02), `${x}`).toBe(true);
    }
    expect(contains(t.region, 5.97, 5)).toBe(true);
  });

  it('takes all from the side that has it, and leaves a gap between two thin sides alone', () => {
    // Sides of 2.2 and 6 mm: the thin one has only 0.2 to give.
    const uneven = polygon([
      [0, 0],
      [12, 0],
      [12, 6],
      [5, 6],
      [5, 7.2],
      [12, 7.2],
      [12, 9.4],
      [0, 9.4],
    ]);
    const t = thickened({ contours: [uneven] }, R);
    expect(t.opened).toHaveLength(1);
    expect(contains(t.region, 10, 7.21)).toBe(true);
    expect(contains(t.region, 10, 5.21)).toBe(false);
    expect(contains(t.region, 10, 5.17)).toBe(true);
    const thin = polygon([
      [0, 0],
      [12, 0],
      [12, 2.2],
      [5, 2.2],
      [5, 3.4],
      [12, 3.4],
      [12, 5.6],
      [0, 5.6],
    ]);
    const left = { contours: [thin] };
    expect(thickened(left, R).region).toBe(left);
  });

  it('leaves the crotch of a V between wide limbs alone', () => {
    const v = polygon([
      [0, 0],
      [4, 0],
      [6, 9],
      [8, 0],
      [12, 0],
      [8, 14],
      [4, 14],
    ]);
    const region = { contours: [v] };
    expect(thickened(region, R).region).toBe(region);
  });

  it('opens a hole too small for the cutter where the wood round it allows', () => {
    const plate = { contours: [circle(0, 0, 6), reversedContour(circle(1, 0, 0.7))] };
    const t = thickened(plate, R);
    expect(t.opened).toHaveLength(1);
    for (const p of boundaryPoints({ contours: t.region.contours.slice(1) }).filter(
      (q) => Math.hypot(...q) < 4,
    ))
      expect(Math.abs(Math.hypot(p[0] - 1, p[1]) - R)).toBeLessThan(0.005);
    const ring = { contours: [circle(0, 0, 2.8), reversedContour(circle(0, 0, 0.7))] };
    expect(thickened(ring, R).opened).toEqual([]);
  });
});

/** Straight strokes of half-width w with round ends, and their middle lines cut short at free ends as they must be. */
function strokes(w: number, ...lines: [Point, Point][]): { region: Region; middles: Point[][] } {
  const region = union([{ contours: lines.map(([p, q]) => capsule(p[0], p[1], q[0], q[1], w)) }]);
  const touches = (p: Point): number => lines.filter(([a, b]) => distanceTo([a, b], p) < 1e-9).length;
  const middles = lines.map(([p, q]): Point[] => {
    const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const back = (a: Point, b: Point): Point => {
      const k = touches(a) > 1 ? R / l : (R - w) / l;
      return [a[0] + (b[0] - a[0]) * k, a[1] + (b[1] - a[1]) * k];
    };
    return [back(p, q), back(q, p)];
  });
  return { region, middles };
}

function flattenPolyline(points: readonly Point[], step: number): Point[] {
  const [p, q] = [points[0]!, points[1]!];
  const n = Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / step);
  return along(n, (t) => [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
}

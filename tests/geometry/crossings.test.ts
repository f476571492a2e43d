import { describe, expect, it } from 'vitest';
import { union } from '../../src/geometry/boolean.js';
import { crossings } from '../../src/geometry/crossings.js';
import { arc, bulged, type Edge, line } from '../../src/geometry/edge.js';
import { area, circle, polygon } from '../../src/geometry/region.js';

const found = (a: Edge, b: Edge): [number, number][] => {
  const out: [number, number][] = [];
  crossings(a, b, (x, y) => out.push([x, y]));
  return out;
};

describe('crossings', () => {
  it('of a nearly straight arc with a small one are found, though the radii differ ten thousand times', () => {
    const flat = bulged(-5, 0.3, 5, 0.31, 2e-4);
    const small = arc(1.75, 0, -1.75, 0, 0, 0, 1.75);
    const points = found(flat, small);
    expect(points).toHaveLength(2);
    for (const [x, y] of points) {
      expect(Math.abs(Math.hypot(x, y) - 1.75)).toBeLessThan(1e-11);
      expect(Math.abs(Math.hypot(x - flat.cx, y - flat.cy) - Math.abs(flat.r))).toBeLessThan(1e-10);
    }
  });

  it.each([0.04, 0.4, 4])(
    'of arcs of 100 m with one of %s mm are found to 1e-9 mm, wherever they cross',
    (r) => {
      const half = Math.max(2 * r, 0.8);
      for (let k = -9; k <= 9; k++) {
        const y = (r * k) / 10;
        const flat = bulged(-half, y - 0.01 * r, half, y + 0.013 * r, half / (2e5 + 1711 * k));
        expect(Math.abs(flat.r)).toBeGreaterThan(9e4);
        for (const half of [arc(r, 0, -r, 0, 0, 0, r), arc(-r, 0, r, 0, 0, 0, r)])
          for (const [u, v] of found(flat, half)) expect(Math.abs(Math.hypot(u, v) - r)).toBeLessThan(1e-9);
        const both = [arc(r, 0, -r, 0, 0, 0, r), arc(-r, 0, r, 0, 0, 0, r)].flatMap((half) =>
          found(flat, half),
        );
        expect([k, both.length]).toEqual([k, 2]);
      }
    },
  );

  it('of a line that touches an arc are one point, the foot of the centre, also when rounding makes it dip in', () => {
    for (const dip of [-5e-10, -1e-15, 0, 1e-15, 5e-10]) {
      const points = found(line(-3, 2 - dip, 4, 2 - dip), arc(2, 0, -2, 0, 0, 0, 2));
      expect(new Set(points.map(([x, y]) => `${x} ${y}`)).size).toBe(1);
      expect(points[0][0]).toBe(0);
    }
    // A dip that is one has two crossings.
    expect(found(line(-3, 1.9, 4, 1.9), arc(2, 0, -2, 0, 0, 0, 2))).toHaveLength(2);
  });

  it('of circles that touch inside or outside are one point', () => {
    const unit = arc(1, 0, -1, 0, 0, 0, 1);
    const tops = [arc(-2, 3, 2, 3, 0, 3, 2), arc(0.4, 0.6, -0.4, 0.6, 0, 0.6, 0.4)];
    for (const other of tops) {
      const points = found(unit, other);
      expect(new Set(points.map(([x, y]) => `${x.toFixed(9)} ${y.toFixed(9)}`)).size).toBe(1);
      expect(points[0][1]).toBeCloseTo(1, 9);
    }
  });
});

it('a union of figures whose rounded corners share one circle closes', () => {
  // Three tiles round a corner, each grown by 2.2: lines and arcs all but coincide about the corner.
  const tile = (turn: number): Edge[] => {
    const at = (a: number, d: number): [number, number] => [d * Math.cos(turn + a), d * Math.sin(turn + a)];
    return [...polygon([at(0, 0), at(0, 11), at(Math.PI / 3, 11)])];
  };
  const thirds = [0, 1, 2, 3, 4, 5].map((k) => ({ contours: [tile((k * Math.PI) / 3)] }));
  const whole = union([...thirds, { contours: [circle(0, 0, 2.2)] }]);
  // A hexagon of side 11 (area 3 sqrt 3 / 2 s^2).
  expect(area(whole)).toBeCloseTo(((3 * Math.sqrt(3)) / 2) * 121, 6);
  for (const c of whole.contours)
    c.forEach((e, i) => {
      const next = c[(i + 1) % c.length];
      expect([e.x1, e.y1]).toEqual([next.x0, next.y0]);
    });
});

import { describe, expect, it } from 'vitest';
import { arc, bulged, type Edge, line } from '../../src/geometry/edge.js';
import { curveArcs } from '../../src/geometry/parametric.js';
import { area, circle, contains, distanceToEdge, perimeter } from '../../src/geometry/region.js';
import { stroke } from '../../src/geometry/stroke.js';
import { cos, sin } from '../../src/geometry/trig.js';
import { seeded } from '../support/random.js';

const chain = (...points: [number, number][]): Edge[] =>
  points.slice(1).map((q, i) => line(points[i]![0], points[i]![1], q[0], q[1]));

describe('stroke', () => {
  it('has the area of its length by its width, with each cap', () => {
    const path = chain([0, 0], [10, 0]);
    expect(area(stroke(path, 2, { closed: false }))).toBeCloseTo(20, 9);
    expect(area(stroke(path, 2, { closed: false, cap: 'square' }))).toBeCloseTo(24, 9);
    expect(area(stroke(path, 2, { closed: false, cap: 'round' }))).toBeCloseTo(20 + Math.PI, 9);
  });

  it('joins a right angle with a mitre, an arc or a bevel', () => {
    const path = chain([0, 0], [10, 0], [10, 10]);
    // Two strips of 20 share a square of 1 inside the corner; the outside gains what the join fills of 1.
    expect(area(stroke(path, 2, { closed: false }))).toBeCloseTo(39 + 1, 9);
    expect(area(stroke(path, 2, { closed: false, join: 'round' }))).toBeCloseTo(39 + Math.PI / 4, 9);
    expect(area(stroke(path, 2, { closed: false, join: 'bevel' }))).toBeCloseTo(39 + 0.5, 9);
    // The other way round the corner is the same.
    expect(area(stroke(chain([0, 0], [10, 0], [10, -10]), 2, { closed: false }))).toBeCloseTo(40, 9);
  });

  it('bevels a mitre longer than four widths', () => {
    const sharp = chain([0, 0], [10, 0], [0, 2]);
    const box = (join: 'miter' | 'bevel'): number => area(stroke(sharp, 1, { closed: false, join }));
    expect(box('miter')).toBeCloseTo(box('bevel'), 9);
  });

  it('rounds a turn on the spot', () => {
    const there = chain([0, 0], [10, 0], [0, 0]);
    expect(area(stroke(there, 2, { closed: false, join: 'round' }))).toBeCloseTo(20 + Math.PI / 2, 6);
  });

  it('makes a ring of a closed circle either way round', () => {
    const ring = circle(0, 0, 10);
    for (const path of [ring, ring.map((e) => ({ ...e, x0: -e.x0, x1: -e.x1, cx: -e.cx, r: -e.r }))]) {
      const region = stroke(path, 2, { closed: true });
      expect(area(region)).toBeCloseTo(Math.PI * (121 - 81), 9);
      expect(region.contours).toHaveLength(2);
    }
  });

  it('fills an arc tighter than half the width to its centre', () => {
    const tight = [arc(1, 0, -1, 0, 0, 0, 1)].flatMap((e) => [
      bulged(1, 0, 0, 1, Math.SQRT2 - 1),
      bulged(0, 1, e.x1, 0, Math.SQRT2 - 1),
    ]);
    const path = [line(1, -5, 1, 0), ...tight, line(-1, 0, -1, -5)];
    // Two strips of 2 x 5 that touch along x = 0 overlap by nothing at a half width of 1; at 1.5 they overlap.
    const region = stroke(path, 3, { closed: false });
    expect(area(region)).toBeCloseTo(5 * 5 + (Math.PI * 2.5 * 2.5) / 2, 6);
  });

  it('is what lies within half the width of a curve that crosses itself', () => {
    const rose = curveArcs(
      {
        point: (t) => [30 * cos(2 * t) * cos(t), 30 * cos(2 * t) * sin(t)],
        tangent: (t) => [
          -60 * sin(2 * t) * cos(t) - 30 * cos(2 * t) * sin(t),
          -60 * sin(2 * t) * sin(t) + 30 * cos(2 * t) * cos(t),
        ],
      },
      0,
      2 * Math.PI,
      32,
    );
    const region = stroke(rose, 3, { closed: true });
    const random = seeded(5);
    let inside = 0;
    for (let i = 0; i < 4000; i++) {
      const x = (random() - 0.5) * 70;
      const y = (random() - 0.5) * 70;
      const d = Math.min(...rose.map((e) => distanceToEdge(e, x, y)));
      if (Math.abs(d - 1.5) < 0.01) continue;
      expect(contains(region, x, y), `at ${x}, ${y}`).toBe(d < 1.5);
      if (d < 1.5) inside++;
    }
    expect(inside).toBeGreaterThan(200);
    expect(perimeter(region)).toBeGreaterThan(100);
  });

  it('is one piece round bends tighter than half the width that follow each other', () => {
    const arcs: Edge[] = [];
    let [x, y, a] = [0, 0, 0];
    // Arcs of growing radius, each turning left by 0.3 where the last left off: centres at 90 degrees to the left.
    for (const r of [4, 4.4, 5.1, 5.9, 6.1]) {
      const [cx, cy] = [x - r * Math.sin(a), y + r * Math.cos(a)];
      const b = a + 0.3;
      const [u, v] = [cx + r * Math.sin(b), cy - r * Math.cos(b)];
      arcs.push(arc(x, y, u, v, cx, cy, r));
      [x, y, a] = [u, v, b];
    }
    const region = stroke([...arcs, line(x, y, x + 1e-9, y)], 12.6, { closed: false });
    expect(region.contours).toHaveLength(1);
    // Outer half: rings of each arc; inner half: sectors to each centre (what lies beyond them is the ends' own).
    const outer = [4, 4.4, 5.1, 5.9, 6.1].reduce((sum, r) => sum + (((r + 6.3) ** 2 - r ** 2) * 0.3) / 2, 0);
    expect(area(region)).toBeGreaterThan(outer);
    expect(contains(region, 0.2, 3.5)).toBe(true);
  });

  it('is nothing for no path', () => {
    expect(stroke([], 2, { closed: false }).contours).toHaveLength(0);
  });
});

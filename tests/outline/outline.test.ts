import { describe, expect, it } from 'vitest';
import { offset } from '../../src/geometry/offset.js';
import { area, bounds, contains, distanceToBoundary, flatten, perimeter } from '../../src/geometry/region.js';
import { makeOutline, outlineShapes } from '../../src/outline/index.js';
import { BadInput } from '../../src/schema/fault.js';
import type { Values } from '../../src/schema/parameter.js';

const examples: Record<string, Values[]> = {
  circle: [{ diameter: 96, margin: 6 }],
  rectangle: [
    { width: 130, height: 70, corner: 0, margin: 9 },
    { width: 130, height: 70, corner: 12, margin: 5 },
    { width: 130, height: 70, corner: 12, margin: 12 },
    { width: 130, height: 70, corner: 12, margin: 20 },
    { width: 80, height: 80, corner: 40, margin: 4 },
  ],
  polygon: [
    { sides: 6, across: 100, turn: 0, margin: 6 },
    { sides: 3, across: 60, turn: 0.3, margin: 4 },
    { sides: 11, across: 60, turn: 0, margin: 4 },
  ],
  stave: [
    { bottom: 70, top: 100, height: 120, margin: 6 },
    { bottom: 100, top: 12, height: 90, margin: 6 },
    { bottom: 8, top: 100, height: 60, margin: 14 },
    { bottom: 60, top: 60, height: 90, margin: 8 },
  ],
  ring: [{ diameter: 200, bore: 120, margin: 8 }],
};

describe('outlines', () => {
  it('has an example here of every shape', () => {
    expect(Object.keys(examples).sort()).toEqual(outlineShapes.map((s) => s.name).sort());
  });

  for (const [shape, sets] of Object.entries(examples))
    for (const values of sets) {
      it(`${shape} ${JSON.stringify(values)}: centred, and inner everywhere exactly the margin inside the face`, () => {
        const o = makeOutline(shape, values);
        const box = bounds(o.face.contours);
        expect(box.minX + box.maxX).toBeCloseTo(0, 9);
        expect(box.minY + box.maxY).toBeCloseTo(0, 9);
        expect(o.box.maxX).toBeCloseTo(box.maxX, 9);
        expect(o.box.minY).toBeCloseTo(box.minY, 9);
        for (const c of o.inner.contours)
          for (const [x, y] of flatten(c, 0.05)) {
            expect(contains(o.face, x, y)).toBe(true);
            expect(distanceToBoundary(o.face, x, y)).toBeCloseTo(Number(values.margin), 9);
          }
        // A second route to the same region.
        const moved = offset(o.face, -Number(values.margin));
        expect(area(o.inner)).toBeCloseTo(area(moved), 6);
        expect(perimeter(o.inner)).toBeCloseTo(perimeter(moved), 6);
        expect(o.sizes.margin).toBe(values.margin);
      });
    }

  // Closed forms of plane geometry.
  it('has the areas of the closed forms', () => {
    const face = (shape: string, values: Values): number => area(makeOutline(shape, values).face);
    expect(face('circle', { diameter: 96, margin: 0 })).toBeCloseTo(Math.PI * 48 ** 2, 8);
    expect(face('ring', { diameter: 200, bore: 120, margin: 0 })).toBeCloseTo(
      Math.PI * (100 ** 2 - 60 ** 2),
      8,
    );
    expect(face('rectangle', { width: 130, height: 70, corner: 12, margin: 0 })).toBeCloseTo(
      130 * 70 - (4 - Math.PI) * 144,
      8,
    );
    expect(face('stave', { bottom: 70, top: 100, height: 120, margin: 0 })).toBeCloseTo(85 * 120, 8);
    // A regular n-gon about a circle of radius a: n a^2 tan(pi / n).
    for (const n of [3, 6, 7, 24])
      expect(face('polygon', { sides: n, across: 100, turn: 0.2, margin: 0 })).toBeCloseTo(
        n * 2500 * Math.tan(Math.PI / n),
        7,
      );
  });

  it('lays a side of a polygon along the bottom at turn 0', () => {
    for (const sides of [3, 5, 6, 8]) {
      const { face } = makeOutline('polygon', { sides, across: 50, turn: 0, margin: 2 });
      const lowest = bounds(face.contours).minY;
      expect(face.contours[0].filter((e) => Math.abs(e.y0 - lowest) < 1e-9)).toHaveLength(2);
    }
  });

  it('names the margin and the largest that works when nothing would be left', () => {
    for (const [shape, sets] of Object.entries(examples))
      for (const values of sets) {
        let message = '';
        try {
          makeOutline(shape, { ...values, margin: 900 });
        } catch (e) {
          expect(e).toBeInstanceOf(BadInput);
          message = (e as Error).message;
        }
        const most = /^outline\.margin: 900 mm leaves nothing of the \w+; use ([\d.]+) mm at most$/.exec(
          message,
        );
        expect(most, message).not.toBeNull();
        const deepest = makeOutline(shape, { ...values, margin: Number(most![1]) });
        expect(area(deepest.inner)).toBeGreaterThan(0);
        expect(offset(deepest.inner, -0.6).contours).toHaveLength(0);
        expect(() => makeOutline(shape, { ...values, margin: Number(most![1]) + 0.002 })).toThrow(
          'outline.margin',
        );
      }
  });

  it('refuses sizes at odds and unknown shapes in one clear line', () => {
    expect(() => makeOutline('ring', { diameter: 90, bore: 90, margin: 1 })).toThrow(
      'outline.bore: 90 mm is not smaller than the diameter, 90 mm; make it smaller',
    );
    expect(() => makeOutline('rectangle', { width: 50, height: 30, corner: 16, margin: 1 })).toThrow(
      'outline.corner: 16 mm is more than half the shorter side; use 15 mm at most',
    );
    expect(() => makeOutline('egg', {})).toThrow('outline.shape: "egg" is not a shape; use one of circle,');
  });
});

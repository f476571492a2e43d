import { describe, expect, it } from 'vitest';
import { recorder } from '../../src/generators/recorder.js';
import { drawContour } from '../../src/geometry/draw-region.js';
import { area, circle, contains, polygon, type Region, reversedContour } from '../../src/geometry/region.js';
import { Refusal } from '../../src/schema/fault.js';
import { expectSound } from '../support/artwork.js';

type Recorder = ReturnType<typeof recorder>;

function drawn(draw: (pen: Recorder) => void): ReturnType<Recorder['artwork']> {
  const pen = recorder();
  draw(pen);
  return pen.artwork();
}

function square(pen: Recorder, x: number, y: number, size: number): void {
  pen.move(x, y);
  pen.line(x + size, y);
  pen.line(x + size, y + size);
  pen.line(x, y + size);
  pen.close();
}

describe('recorder', () => {
  it('turns a contour drawn either way into an outer one', () => {
    for (const contour of [circle(0, 0, 5), reversedContour(circle(0, 0, 5))]) {
      const art = drawn((pen) => {
        pen.piece('disc');
        drawContour(pen, contour);
      });
      expect(art.pieces[0].name).toBe('disc');
      expect(area(art.pieces[0].region)).toBeCloseTo(Math.PI * 25, 9);
    }
  });

  it('keeps what has winding number other than 0', () => {
    const overlap = drawn((pen) => {
      pen.piece('two squares');
      square(pen, 0, 0, 10);
      square(pen, 5, 5, 10);
    });
    expect(area(overlap.pieces[0].region)).toBeCloseTo(175, 9);
    const hole = drawn((pen) => {
      pen.piece('frame');
      square(pen, 0, 0, 10);
      drawContour(
        pen,
        reversedContour(
          polygon([
            [2, 2],
            [8, 2],
            [8, 8],
            [2, 8],
          ]),
        ),
      );
    });
    expect(area(hole.pieces[0].region)).toBeCloseTo(64, 9);
    // A five-pointed star drawn in one stroke: its middle has winding number 2 and is in.
    const star = drawn((pen) => {
      pen.piece('star');
      for (let i = 0; i < 5; i++) {
        const a = (i * 4 * Math.PI) / 5;
        if (i === 0) pen.move(10 * Math.cos(a), 10 * Math.sin(a));
        else pen.line(10 * Math.cos(a), 10 * Math.sin(a));
      }
      pen.close();
    });
    expectSound(star.pieces[0].region);
    expect(star.pieces[0].region.contours).toHaveLength(1);
    expect(star.pieces[0].region.contours[0]).toHaveLength(10);
  });

  it('splits wide arcs and follows curves', () => {
    const art = drawn((pen) => {
      pen.piece('most of a circle');
      pen.move(5, 0);
      pen.arc(0, -5, Math.tan((270 / 4 / 180) * Math.PI));
      pen.line(0, 0);
      pen.close();
      pen.piece('parabola');
      pen.move(0, 0);
      pen.quadratic(10, 20, 20, 0);
      pen.close();
    });
    expect(area(art.pieces[0].region)).toBeCloseTo(0.75 * Math.PI * 25, 6);
    // Archimedes: two thirds of the triangle of the control points.
    expect(Math.abs(area(art.pieces[1].region) - (2 / 3) * 200)).toBeLessThan(0.05);
  });

  it('drops steps too small to have a direction, and pieces that enclose nothing', () => {
    const art = drawn((pen) => {
      pen.piece('square');
      pen.move(0, 0);
      pen.line(10, 0);
      pen.line(10, 1e-9);
      pen.line(10, 10);
      pen.line(0, 10);
      pen.line(0, 1e-9);
      pen.close();
      pen.piece('line');
      pen.move(0, 0);
      pen.line(5, 5);
      pen.close();
      pen.piece('nothing');
    });
    expect(art.pieces.map((p) => p.name)).toEqual(['square']);
    expect(art.pieces[0].region.contours[0]).toHaveLength(4);
    expectSound(art.pieces[0].region);
  });

  it('refuses faulty drawing', () => {
    const open = (pen: Recorder): void => {
      pen.piece('p');
      pen.move(0, 0);
      pen.line(1, 1);
    };
    expect(() => drawn(open)).toThrow('a path was left open');
    expect(() =>
      drawn((pen) => {
        open(pen);
        pen.piece('q');
      }),
    ).toThrow('a path was left open');
    expect(() => drawn((pen) => pen.move(0, 0))).toThrow('a piece must be named');
    expect(() =>
      drawn((pen) => {
        pen.piece('p');
        pen.line(0, 1);
      }),
    ).toThrow('a path must start with move');
    expect(() =>
      drawn((pen) => {
        open(pen);
        pen.line(Number.NaN, 0);
      }),
    ).toThrow('not a finite number');
    expect(() =>
      drawn((pen) => {
        open(pen);
        for (let i = 0; i < 400_001; i++) pen.line(i, i % 2);
      }),
    ).toThrow(Refusal);
  });

  it('takes a whole region as it is, and unites several', () => {
    const ring: Region = { contours: [circle(0, 0, 10), reversedContour(circle(0, 0, 6))] };
    const one = drawn((pen) => {
      pen.piece('ring');
      pen.region(ring);
    });
    expect(one.pieces[0].region).toBe(ring);
    const two = drawn((pen) => {
      pen.piece('ring and bar');
      pen.region(ring);
      pen.region({
        contours: [
          polygon([
            [-8, -1],
            [8, -1],
            [8, 1],
            [-8, 1],
          ]),
        ],
      });
      square(pen, 20, 0, 5);
    });
    expect(contains(two.pieces[0].region, 0, 0)).toBe(true);
    expect(contains(two.pieces[0].region, 0, 3)).toBe(false);
    expect(contains(two.pieces[0].region, 22, 2)).toBe(true);
    expect(() => drawn((pen) => pen.region(ring))).toThrow(/must be named/);
  });
});

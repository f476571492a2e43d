import { describe, expect, it } from 'vitest';
import { drawFilled, fieldOf, placer } from '../../src/generators/field.js';
import { recorder } from '../../src/generators/recorder.js';
import { area, bounds, circle, polygon, type Region, reversedContour } from '../../src/geometry/region.js';
import { outlineWith } from '../support/artwork.js';

const square = (x: number, side = 1): Region['contours'][number] =>
  polygon([
    [x, 0],
    [x + side, 0],
    [x + side, side],
    [x, side],
  ]);
const ring: Region = { contours: [circle(0, 0, 50), reversedContour(circle(0, 0, 20))] };

describe('placer', () => {
  const place = placer(ring);

  it('tells inside, outside and across', () => {
    expect(place({ contours: [square(30)] })).toBe('inside');
    expect(place({ contours: [square(0)] })).toBe('outside');
    expect(place({ contours: [square(60)] })).toBe('outside');
    expect(place({ contours: [square(49.5)] })).toBe('across');
    // The whole opening lies within the figure.
    expect(place({ contours: [circle(0, 0, 30)] })).toBe('across');
  });

  it('sees every part of a figure', () => {
    expect(place({ contours: [square(22), square(17)] })).toBe('across');
    expect(place({ contours: [square(17), square(22)] })).toBe('across');
  });

  it('takes what just fits as inside', () => {
    const lid: Region = { contours: [square(0, 10)] };
    expect(placer(lid)({ contours: [square(0, 10)] })).toBe('inside');
    expect(placer(lid)({ contours: [square(-0.01, 10)] })).toBe('across');
  });
});

describe('drawFilled', () => {
  const motifs = [10, 30, 49.5].map((x) => ({ name: `at ${x}`, region: { contours: [square(x)] } }));

  it('clips figures at the edge or leaves them out', () => {
    for (const [fill, count, total] of [
      ['clip', 2, 1.5],
      ['whole', 1, 1],
    ] as const) {
      const pen = recorder();
      expect(drawFilled(pen, motifs, ring, fill)).toBe(count);
      const { pieces } = pen.artwork();
      expect(pieces.map((p) => p.name)).toEqual(['at 30', 'at 49.5'].slice(0, count));
      expect(Math.abs(pieces.reduce((s, p) => s + area(p.region), 0) - total)).toBeLessThan(0.02);
    }
  });
});

it('a band is cut out of the outline, or is all of it', () => {
  const lid = outlineWith('rectangle', { width: 80, height: 60, margin: 5 });
  expect(fieldOf(lid, 0)).toBe(lid.inner);
  expect(fieldOf(lid, 100)).toBe(lid.inner);
  expect(bounds(fieldOf(lid, 20).contours)).toEqual({ minX: -35, maxX: 35, minY: -10, maxY: 10 });
});

import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import { arc, type Edge, line } from '../../src/geometry/edge.js';
import { polygon, type Region } from '../../src/geometry/region.js';
import { tidied } from '../../src/geometry/tidy.js';

/** A square with a square hole, one corner of which is a line, a crumb of it, a corner of `degrees` and an arc. */
function square(crumb: number, degrees: number, r: number): Region {
  const a = (degrees / 180) * Math.PI;
  const cx = 5 - r;
  const start: [number, number] = [cx + Math.sin(a) * r, 5];
  const cy = 5 - Math.cos(a) * r;
  const hole: Edge[] = [
    line(-5, -5, -5, 5),
    line(-5, 5, start[0] - crumb, 5),
    line(start[0] - crumb, 5, ...start),
    arc(...start, 5, cy, cx, cy, -r),
    line(5, cy, 5, -5),
    line(5, -5, -5, -5),
  ];
  const outer = polygon([
    [-20, -20],
    [20, -20],
    [20, 20],
    [-20, 20],
  ]);
  return { contours: [outer, hole] };
}

describe('a crumb beside a corner', () => {
  const cases = [
    [0.0009, 45, 0.05],
    [0.0009, 80, 0.01],
    [0.0009, 20, 0.02],
    [0.0005, 20, 0.1],
  ] as const;

  it.each(cases)('of %d mm, %d degrees, radius %d leaves the arc on its circle', (crumb, degrees, r) => {
    const [, hole] = square(crumb, degrees, r).contours.map(tidied);
    for (const e of hole.filter((e) => e.r !== 0))
      for (const [x, y] of [
        [e.x0, e.y0],
        [e.x1, e.y1],
      ])
        expect(Math.abs(Math.hypot(x - e.cx, y - e.cy) - Math.abs(e.r))).toBeLessThan(1e-12);
  });

  it.each(cases)('of %d mm, %d degrees, radius %d is settled', (crumb, degrees, r) => {
    const region = square(crumb, degrees, r);
    const safe = enforce({ pieces: [{ name: 'p', region }] }, { r: 1.8, thin: 'drop', touch: 'part' });
    expect(safe.region.contours).toHaveLength(2);
  });
});

describe('a hair', () => {
  const hair = (width: number, tip: number) =>
    polygon([
      [0, 0],
      [20, 0],
      [20, 20],
      [10 + width, 20],
      [10 + width / 2, tip],
      [10, 20],
      [0, 20],
    ]);

  it('of wood a billionth of a millimetre wide goes, and leaves a straight edge', () => {
    const left = tidied(hair(1e-9, 35));
    expect(left.map((e) => [e.x0, e.y0])).toEqual([
      [0, 0],
      [20, 0],
      [20, 20],
      [0, 20],
    ]);
  });

  it('goes where a contour begins in it, too', () => {
    const [a, b, c, d, e, ...rest] = hair(1e-9, 35);
    expect(tidied([e!, ...rest, a!, b!, c!, d!])).toHaveLength(4);
    expect(tidied([d!, e!, ...rest, a!, b!, c!])).toHaveLength(4);
  });

  it('a ten-millionth wide stays, and so does a slit', () => {
    expect(tidied(hair(1e-7, 35))).toHaveLength(7);
    expect(tidied(hair(1e-9, 5))).toHaveLength(7);
  });
});

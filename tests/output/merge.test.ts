import { describe, expect, it } from 'vitest';
import { arc, line, MAX_SWEEP, sweep } from '../../src/geometry/edge.js';
import { circle, contourArea, polygon } from '../../src/geometry/region.js';
import { merged } from '../../src/output/merge.js';

describe('merged', () => {
  it('makes one line of lines on one line, also across the start', () => {
    const square = polygon([
      [5, 0],
      [10, 0],
      [10, 4],
      [10, 10],
      [0, 10],
      [0, 0],
      [2, 0],
    ]);
    const out = merged(square);
    expect(out).toHaveLength(4);
    expect(contourArea(out)).toBeCloseTo(100, 12);
    out.forEach((e, i) => {
      const next = out[(i + 1) % out.length]!;
      expect([e.x1, e.y1]).toEqual([next.x0, next.y0]);
    });
  });

  it('keeps a corner of a ten-thousandth of a millimetre and a spike', () => {
    const bent = polygon([
      [0, 0],
      [5, -1e-4],
      [10, 0],
      [5, 8],
    ]);
    expect(merged(bent)).toHaveLength(4);
    const spike = polygon([
      [0, 0],
      [10, 0],
      [4, 0],
      [4, 5],
    ]);
    expect(merged(spike)).toHaveLength(4);
  });

  it('does not let many tiny turns add up to a corner', () => {
    // A circle of 10 m radius in chords of 1 mm: each bends by 1e-4 rad, 2.5e-5 mm off its neighbours' chord.
    const points = Array.from(
      { length: 200 },
      (_, i) => [10000 * Math.sin(i * 1e-4), 10000 * (1 - Math.cos(i * 1e-4))] as const,
    );
    expect(merged(polygon([...points, [100, 50]])).length).toBeGreaterThan(190);
  });

  it('joins arcs of one circle up to 170 degrees and not past it', () => {
    const at = (degrees: number) =>
      [3 * Math.cos((degrees * Math.PI) / 180), 3 * Math.sin((degrees * Math.PI) / 180)] as const;
    const arcs = Array.from({ length: 12 }, (_, i) => {
      const [x0, y0] = at(30 * i);
      const [x1, y1] = at(30 * i + 30);
      return arc(x0, y0, x1, y1, 0, 0, 3);
    });
    const out = merged(arcs);
    // 150 + 150 + 60: a sixth piece of 30 would make 180.
    expect(out).toHaveLength(3);
    for (const e of out) expect(sweep(e)).toBeLessThanOrEqual(MAX_SWEEP);
    expect(contourArea(out)).toBeCloseTo(Math.PI * 9, 9);
    expect(merged(circle(0, 0, 5))).toHaveLength(4);
  });

  it('splits an arc past 170 degrees', () => {
    const angle = (175 * Math.PI) / 180;
    const [x, y] = [2 * Math.cos(angle), 2 * Math.sin(angle)];
    const out = merged([arc(2, 0, x, y, 0, 0, 2), line(x, y, 2, 0)]);
    expect(out).toHaveLength(3);
    for (const e of out) expect(sweep(e)).toBeLessThanOrEqual(MAX_SWEEP);
  });
});

import { describe, expect, it } from 'vitest';
import { endTangent, startTangent } from '../../src/geometry/edge.js';
import { curveArcs } from '../../src/geometry/parametric.js';
import { contourArea, distanceToEdge } from '../../src/geometry/region.js';
import { CURVE_FIT } from '../../src/geometry/tolerances.js';

const ellipse = {
  point: (t: number) => [40 * Math.cos(t), 15 * Math.sin(t)] as const,
  tangent: (t: number) => [-40 * Math.sin(t), 15 * Math.cos(t)] as const,
};

describe('curveArcs', () => {
  const edges = curveArcs(ellipse, 0, 2 * Math.PI, 8);

  it('stays within the fit of an ellipse, has its area and few arcs', () => {
    for (let i = 0; i < 2000; i++) {
      const [x, y] = ellipse.point((2 * Math.PI * i) / 2000);
      const d = Math.min(...edges.map((e) => distanceToEdge(e, x, y)));
      expect(d).toBeLessThan(1.05 * CURVE_FIT);
    }
    // Area of an ellipse: pi a b.
    expect(Math.abs(contourArea(edges) - Math.PI * 40 * 15)).toBeLessThan(0.1);
    expect(edges.length).toBeLessThan(70);
  });

  it('closes to the last bit and is tangent everywhere', () => {
    edges.forEach((e, i) => {
      const next = edges[(i + 1) % edges.length]!;
      expect([e.x1, e.y1]).toEqual([next.x0, next.y0]);
      const [ax, ay] = endTangent(e);
      const [bx, by] = startTangent(next);
      expect(Math.abs(ax * by - ay * bx)).toBeLessThan(1e-6);
      expect(ax * bx + ay * by).toBeGreaterThan(0);
    });
  });
});

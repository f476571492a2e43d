import { describe, expect, it } from 'vitest';
import { arc } from '../../src/geometry/edge.js';
import { edgeBox, windingNumber } from '../../src/geometry/region.js';

describe('arcs that meet at the lowest point of their circle', () => {
  const low = -0.2645833333333334;
  const r = 0.5291666666666667;
  // Centres that agree to the last digit or two, as rounding leaves them: the centre less the radius is above `low` for some.
  const centres = [0.2645833333333332, 0.26458333333333334, 0.2645833333333334, 0.2645833333333335];

  it('have it in their boxes, and a ray through it enters as often as it leaves', () => {
    for (const a of centres)
      for (const b of centres) {
        const ring = [
          arc(-r, a, 0, low, 0, a, r),
          arc(0, low, r, a, 0, b, r),
          arc(r, a, 0, a + r, 0, a, r),
          arc(0, a + r, -r, a, 0, a, r),
        ];
        expect(edgeBox(ring[0]).minY).toBeLessThanOrEqual(low);
        expect(edgeBox(ring[1]).minY).toBeLessThanOrEqual(low);
        expect(windingNumber([ring], -1, low)).toBe(0);
      }
  });
});

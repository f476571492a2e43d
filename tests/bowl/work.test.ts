import { describe, expect, it } from 'vitest';
import { fillersOf } from '../../src/bowl/fillers.js';
import { jigsOf } from '../../src/bowl/jig.js';
import { makeVessel } from '../../src/bowl/vessel.js';
import { under } from '../../src/bowl/wall.js';
import { workOf } from '../../src/bowl/work.js';
import { area, contains } from '../../src/geometry/region.js';
import { bowl, tube } from '../support/vessel.js';

describe('clamp jigs', () => {
  it('are the shell’s polygon with a round at each corner, at two levels', () => {
    const vessel = makeVessel(bowl);
    const [low, high] = jigsOf(vessel, 4);
    expect([low!.z, high!.z]).toEqual([18, 72]);
    for (const jig of [low!, high!]) {
      const apothem = vessel.stave.apothem + jig.z / Math.tan(bowl.slope) + 0.2;
      expect(jig.across / 2).toBeCloseTo(apothem, 9);
      // A regular 12-gon, and at each corner what a disc through it has beyond its angle of 150 degrees: all of the
      // disc less a kite of two triangles to the corner and a sector of it, the angle at the middle being 2 * 30 degrees.
      const polygon = 12 * apothem * apothem * Math.tan(Math.PI / 12);
      const h = (75 * Math.PI) / 180;
      const beyond = 2 * (8 * (Math.PI - 2 * h) - 8 * Math.sin(Math.PI - 2 * h));
      expect(area(jig.opening)).toBeCloseTo(polygon + 12 * beyond, 3);
      // The corner itself is within.
      const corner = apothem / Math.cos(Math.PI / 12);
      expect(
        contains(jig.opening, corner * Math.sin(Math.PI / 12), -corner * Math.cos(Math.PI / 12) + 1e-3),
      ).toBe(true);
      // The first stave's side lies level in front.
      expect(contains(jig.opening, 0, -apothem + 0.01)).toBe(true);
      expect(contains(jig.opening, 0, -apothem - 0.01)).toBe(false);
      expect(jig.board).toBeGreaterThan(2 * (apothem / Math.cos(Math.PI / 12) + 30));
    }
  });
});

describe('filler blocks', () => {
  it('are none where the staves hold the wall', () => {
    expect(fillersOf(makeVessel(bowl))).toEqual([]);
  });

  it('lie where they do not, and fill what is missing', () => {
    const vessel = makeVessel({ ...bowl, thickness: 24, fillers: true });
    const [block, ...more] = fillersOf(vessel);
    expect(more).toEqual([]);
    const deep = under(vessel.stave, vessel.wall.inside);
    for (let z = 8; z <= 90; z += 0.5) {
      const missing = deep(z) + bowl.under - 24;
      if (missing > 0) {
        expect(z).toBeGreaterThanOrEqual(block!.from);
        expect(z).toBeLessThanOrEqual(block!.to);
        expect(missing).toBeLessThanOrEqual(block!.thickness + 1e-9);
      }
    }
    expect(block!.thickness).toBeLessThan(vessel.left.thickness - 24 + 0.11);
  });
});

describe('the work', () => {
  it('of an upright square box is what a square says', () => {
    const vessel = makeVessel(tube);
    const t = vessel.stave.thickness;
    const { angles, outer, inner, hole, rim, dowels, flip } = workOf(vessel);
    expect(angles!.miter).toBeCloseTo(0, 9);
    expect(angles!.bevel).toBeCloseTo(Math.PI / 4, 9);
    expect(outer.bottom).toBeCloseTo(104, 9);
    expect(inner.bottom).toBeCloseTo(104 - 2 * t, 9);
    expect(hole.flats).toBeCloseTo(104 - 2 * t, 9);
    expect(hole.corners).toBeCloseTo((104 - 2 * t) * Math.SQRT2, 9);
    expect(rim).toBeCloseTo(104 * 104 - (104 - 2 * t) ** 2, 6);
    // At the corner the wall lies 52 sqrt 2 - 50 under the arris: square to the face, 52 - 50 cos 45.
    expect(dowels.map((d) => d.along)).toEqual([20, 60]);
    for (const d of dowels) expect(d).toMatchObject({ stays: false });
    expect(dowels[0]!.deep).toBeCloseTo((52 - 50 * Math.SQRT1_2) / 2, 9);
    expect(flip[1]![0]).toBeGreaterThanOrEqual(52 * Math.SQRT2 + 25);
  });

  it('measures along a sloping joint, not up', () => {
    const { dowels, outer } = workOf(makeVessel(bowl));
    const edge = Math.hypot(outer.length, (outer.top - outer.bottom) / 2);
    expect(dowels[0]!.along).toBeCloseTo(0.25 * edge, 6);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arc, straight } from '../../src/bowl/profile.js';
import { depthOf, halfAngle, halfWidth, type Stave, toStave, toVessel } from '../../src/bowl/stave.js';
import { apothemFor, woodLeft } from '../../src/bowl/wall.js';

const stave = (more: Partial<Stave> = {}): Stave => ({
  sides: 12,
  slope: (72 * Math.PI) / 180,
  thickness: 26,
  apothem: 70,
  ...more,
});

describe('a place on a stave', () => {
  it('is the same seen from the vessel, there and back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 24 }),
        fc.double({ min: 0.1, max: Math.PI / 2, noNaN: true }),
        fc.double({ min: 20, max: 200, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 150, noNaN: true }),
        (sides, slope, r, share, z) => {
          const s = stave({ sides, slope });
          const angle = share * halfAngle(s);
          const back = toVessel(s, toStave(s, r, angle, z));
          expect(back.r).toBeCloseTo(r, 8);
          expect(back.angle).toBeCloseTo(angle, 8);
          expect(back.z).toBeCloseTo(z, 8);
        },
      ),
    );
  });

  it('lies on the joint where the angle is half a stave’s', () => {
    const s = stave();
    const { x, y, depth } = toStave(s, 64, halfAngle(s), 40);
    expect(x).toBeCloseTo(halfWidth(s, y, depth), 9);
  });
});

describe('the depth of a wall', () => {
  it('is that of the point of the wall it was asked for', () => {
    const s = stave();
    const wall = arc(0, 100, 55, 90, 6);
    for (let z = 2; z < 100; z += 7)
      for (const share of [-0.95, -0.4, 0, 0.3, 0.9]) {
        const { x, y, depth } = toStave(s, wall.radius(z), share * halfAngle(s), z);
        expect(depthOf(s, wall, x, y)!).toBeCloseTo(depth, 7);
      }
  });

  it('of an upright cylinder in an upright box is a circle’s sagitta', () => {
    const box = stave({ sides: 4, slope: Math.PI / 2, apothem: 50, thickness: 40 });
    const cylinder = straight(0, 80, 48, 48);
    for (const x of [0, 10, 30])
      expect(depthOf(box, cylinder, x, 20)!).toBeCloseTo(50 - Math.sqrt(48 * 48 - x * x), 8);
    expect(depthOf(box, cylinder, 0, 90)).toBeNull();
    expect(depthOf(box, cylinder, 49, 20)).toBeNull();
  });
});

describe('wood left by a wall', () => {
  it('is what grid and bisection find too', () => {
    const s = stave({ apothem: 0 });
    const wall = { outside: arc(0, 100, 60, 92, 5), inside: arc(8, 100, 48, 84, 6) };
    const set = { ...s, apothem: apothemFor(s.slope, wall.outside, 1.5) };
    const left = woodLeft(set, wall, 2);
    let [least, deepest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let k = 0; k <= 1000; k++)
      for (let share = -20; share <= 20; share++) {
        const z = k / 10;
        const angle = (share / 20) * halfAngle(set);
        least = Math.min(least, toStave(set, wall.outside.radius(z), angle, z).depth);
        if (z >= 8) deepest = Math.max(deepest, toStave(set, wall.inside.radius(z), angle, z).depth);
      }
    expect(left.over.mm).toBeCloseTo(least, 2);
    expect(left.over.mm).toBeCloseTo(1.5, 6);
    expect(left.thickness).toBeCloseTo(deepest + 2, 2);
    expect(left.under.mm).toBeCloseTo(set.thickness - deepest, 2);
  });

  it('of a cylinder in a box is known: the corner’s diagonal rules', () => {
    // A square box round a cylinder of radius 50: at the joint the inside, radius 40, lies 50 - 40 cos 45 degrees deep.
    const box = stave({ sides: 4, slope: Math.PI / 2, apothem: 50, thickness: 25 });
    const left = woodLeft(box, { outside: straight(0, 80, 50, 50), inside: straight(0, 80, 40, 40) }, 0);
    expect(left.over.mm).toBeCloseTo(0, 9);
    expect(left.thickness).toBeCloseTo(50 - 40 * Math.SQRT1_2, 9);
    expect(left.under.mm).toBeCloseTo(25 - (50 - 40 * Math.SQRT1_2), 9);
    expect(left.wall.mm).toBeCloseTo(10, 9);
  });
});

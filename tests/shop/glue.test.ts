import { expect, it } from 'vitest';
import { areaToCoat, gapVolume, type Joint, leastGlueGap, trapped } from '../../src/shop/glue.js';

/** A round plug of radius r in a pocket wider by c: with the perimeter midway. */
const round = (r: number, c: number, depth: number, glueGap: number): Joint => ({
  perimeter: 2 * Math.PI * (r + c / 2),
  area: Math.PI * (r + c) ** 2,
  depth,
  clearance: c,
  glueGap,
});

it('has the volume between two cylinders', () => {
  // Pocket less plug, by the volume of a cylinder.
  const [r, c, d, g] = [12, 0.1, 8, 0.6];
  const { walls, floor, total } = gapVolume(round(r, c, d, g));
  expect(total).toBeCloseTo(Math.PI * (r + c) ** 2 * d - Math.PI * r ** 2 * (d - g), 9);
  expect(walls + floor).toBe(total);
});

it('coats walls and floor', () => {
  // A square of 20 mm, 8 deep: four walls of 160 mm2, a floor of 400.
  expect(areaToCoat({ perimeter: 80, area: 400, depth: 8, clearance: 0, glueGap: 0 })).toEqual({
    walls: 640,
    floor: 400,
    total: 1040,
  });
});

it('accounts for all the glue and air', () => {
  // 20 mm square, coat 0.15: 156 mm3 on; walls hold 0.1 x 80 x 7.5 = 60; under the plug 0.5 x 400 = 200, so 96 of glue
  // and 104 of air; 3200 - 156 of air at the mouth.
  const joint = { perimeter: 80, area: 400, depth: 8, clearance: 0.1, glueGap: 0.5 };
  const t = trapped(joint, 0.15);
  expect(t.applied).toBeCloseTo(156, 9);
  expect(t.surplus).toBeCloseTo(96, 9);
  expect(t.airLeft).toBeCloseTo(104, 9);
  expect(t.squeezedOut).toBe(0);
  expect(t.airAtEntry).toBeCloseTo(3044, 9);
  // No gap: 156 - 64 has nowhere to go.
  const tight = trapped({ ...joint, glueGap: 0 }, 0.15);
  expect(tight.squeezedOut).toBeCloseTo(92, 9);
  expect(tight.airLeft).toBe(0);
});

it('finds the glue gap that just takes the surplus up', () => {
  const joint = round(15, 0.08, 9, 0);
  const gap = leastGlueGap(joint, 0.2)!;
  expect(gap).toBeGreaterThan(0.1);
  const at = trapped({ ...joint, glueGap: gap }, 0.2);
  expect(at.squeezedOut).toBeCloseTo(0, 9);
  expect(at.airLeft).toBeCloseTo(0, 9);
  expect(at.surplus).toBeCloseTo(gap * joint.area, 9);
  expect(trapped({ ...joint, glueGap: gap * 0.99 }, 0.2).squeezedOut).toBeGreaterThan(0);
  expect(trapped({ ...joint, glueGap: gap * 1.01 }, 0.2).airLeft).toBeGreaterThan(0);
});

it('needs no gap where the walls hold the glue, and has none to offer a sliver', () => {
  expect(leastGlueGap({ perimeter: 80, area: 400, depth: 8, clearance: 0.1 }, 0.05)).toBe(0);
  // 2 mm wide: the coats on its walls are half the pocket.
  expect(leastGlueGap({ perimeter: 104, area: 100, depth: 10, clearance: 0.05 }, 1.5)).toBeNull();
});

it('names what is out of range', () => {
  const joint = { perimeter: 80, area: 400, depth: 8, clearance: 0.1, glueGap: 0.5 };
  expect(() => gapVolume({ ...joint, glueGap: 9 })).toThrow('glueGap: is 9 mm: give a value from 0 to 8 mm');
  expect(() => trapped(joint, -0.1)).toThrow('coat: is -0.1 mm: give a value of 0 mm or more');
  expect(() => gapVolume({ ...joint, depth: 0 })).toThrow('depth: is 0 mm: give a value over 0 mm');
});

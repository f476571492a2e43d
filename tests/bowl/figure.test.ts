import { describe, expect, it } from 'vitest';
import { fromFace, outlineOf, surviving, toFace } from '../../src/bowl/face.js';
import { figureShown, under } from '../../src/bowl/figure.js';
import type { BowlSetup } from '../../src/bowl/vessel.js';
import { makeVessel } from '../../src/bowl/vessel.js';
import { area, contains, distanceToBoundary } from '../../src/geometry/region.js';
import { bowl, tube as box, strip } from '../support/vessel.js';

describe('the drawn face', () => {
  it('is as large as the box’s side, seen from outside and from inside', () => {
    const { bottom, top, height } = outlineOf(makeVessel(box)).values;
    expect(Number(bottom)).toBeCloseTo(104, 9);
    expect(Number(top)).toBeCloseTo(104, 9);
    expect(height).toBe(80);
    const within = makeVessel({ ...box, face: 'inside' });
    const { thickness } = within.stave;
    expect(Number(outlineOf(within).values.bottom)).toBeCloseTo(104 - 2 * thickness, 9);
  });

  it('is the stave’s, there and back; from inside the other way round', () => {
    for (const face of ['outside', 'inside'] as const) {
      const sloping: BowlSetup = {
        ...box,
        face,
        sides: 9,
        slope: 1.1,
        outside: { shape: 'straight', values: { bottom: 90, top: 150 }, points: [] },
        inside: null,
      };
      const vessel = makeVessel(sloping);
      const at = fromFace(vessel, 7, -11, 3);
      const back = toFace(vessel, at);
      expect(back.u).toBeCloseTo(7, 9);
      expect(back.v).toBeCloseTo(-11, 9);
      expect(back.depth).toBeCloseTo(3, 9);
      expect(at.x).toBe(face === 'outside' ? 7 : -7);
      // Its middle lies half way up between the level ends.
      const { apothem, slope, thickness } = vessel.stave;
      const { y, depth } = fromFace(vessel, 0, 0, 0);
      expect(depth).toBe(face === 'outside' ? 0 : thickness);
      expect(y * Math.sin(slope) + depth * Math.cos(slope)).toBeCloseTo(40, 9);
      expect(apothem).toBeGreaterThan(0);
    }
  });
});

describe('a figure on the wall of a cylinder', () => {
  const vessel = makeVessel(box);
  const sagitta = (r: number, x: number): number => 52 - Math.sqrt(r * r - x * x);

  it('lies as deep as circles say', () => {
    for (const x of [0, 8, 20]) {
      expect(under(vessel, 'outside', x, 10)!).toBeCloseTo(sagitta(50, x), 7);
      expect(under(vessel, 'inside', x, -10)!).toBeCloseTo(sagitta(40, x), 7);
    }
    // The joint lies at 45 degrees: 40 sin 45 across on the inside.
    expect(under(vessel, 'inside', 28.2, 0)).not.toBeNull();
    expect(under(vessel, 'inside', 28.4, 0)).toBeNull();
  });

  it('needs a pocket as deep as the inside is at its edges', () => {
    const { leastDepth, outside, inside, skinLeft } = figureShown(vessel, strip(15, 20), {
      depth: 15.5,
      glueGap: 0.5,
    });
    expect(leastDepth!.mm).toBeCloseTo(sagitta(40, 15) + 0.5, 6);
    expect(Math.abs(leastDepth!.at[0])).toBeCloseTo(15, 9);
    expect(outside).toMatchObject({ survives: 1, shows: 1, missing: null });
    expect(inside).toMatchObject({ survives: 1, shows: 1, missing: null });
    expect(skinLeft).toBeNull();
  });

  it('does not show where the foot does not reach: the share is that of the strip’s width', () => {
    // At a foot of 13 mm the inside is reached where 52 - sqrt(40^2 - x^2) is less: up to x = sqrt(40^2 - 39^2).
    const reach = Math.sqrt(40 * 40 - 39 * 39);
    const { inside, skinLeft } = figureShown(vessel, strip(15, 20), { depth: 13, glueGap: 0 });
    expect(inside.shows).toBeCloseTo(reach / 15, 1);
    expect(inside.missing!.mm).toBeCloseTo(sagitta(40, 15) - 13, 6);
    expect(skinLeft!.mm).toBeCloseTo(sagitta(40, 15) - 13, 6);
  });

  it('is cut away beyond the joint', () => {
    const { inside, outside } = figureShown(vessel, strip(40, 20), { depth: 30, glueGap: 0 });
    expect(inside.survives).toBeCloseTo((40 * Math.SQRT1_2) / 40, 1);
    expect(outside.survives).toBeCloseTo((50 * Math.SQRT1_2) / 40, 1);
  });

  it('does not move up an upright wall, and is wider round the inside by the cosines of its edges', () => {
    const { shift } = figureShown(vessel, strip(15, 20), { depth: 16, glueGap: 0 });
    expect(shift!.rise.mm).toBeCloseTo(0, 9);
    const [outer, inner] = [Math.asin(15 / 50), Math.asin(15 / 40)];
    expect(shift!.widest).toBeCloseTo(Math.cos(outer) / Math.cos(inner), 6);
    expect(shift!.narrowest).toBeCloseTo(1, 3);
  });

  it('shows the same when it is cut into the inside', () => {
    const within = makeVessel({ ...box, face: 'inside' });
    const { thickness } = within.stave;
    expect(under(within, 'outside', 8, 0)!).toBeCloseTo(thickness - sagitta(50, 8), 7);
    const { leastDepth } = figureShown(within, strip(10, 20), { depth: 5, glueGap: 0 });
    // Now the outside is far: deepest in the middle.
    expect(leastDepth!.mm).toBeCloseTo(thickness - sagitta(50, 0), 3);
  });
});

describe('a figure on a sloping wall', () => {
  it('rises by the cosine of the slope for every millimetre into the wood', () => {
    const vessel = makeVessel({
      ...box,
      sides: 12,
      slope: Math.PI / 3,
      outside: { shape: 'straight', values: { bottom: 100, top: 100 + 160 / Math.sqrt(3) }, points: [] },
      inside: null,
      wall: 10,
    });
    // The wall follows the stave: its two faces are 10 sin 60 apart in the middle, so the rise is that times cos 60.
    const { shift } = figureShown(vessel, strip(0.5, 3), { depth: 30, glueGap: 0 });
    expect(shift!.rise.mm).toBeCloseTo(10 * Math.sin(Math.PI / 3) * 0.5, 2);
  });
});

describe('a flat board', () => {
  it('is its own stave: a plate’s faces are where its profiles have that radius', () => {
    const plate = makeVessel({
      ...box,
      sides: 1,
      slope: 0,
      height: 24,
      floor: 8,
      outside: { shape: 'straight', values: { bottom: 100, top: 240 }, points: [] },
      inside: { shape: 'straight', values: { bottom: 90, top: 200 }, points: [] },
    });
    expect(outlineOf(plate)).toEqual({ shape: 'circle', values: { diameter: 244 } });
    // Half way out between 50 and 120 the underside is half way up.
    expect(under(plate, 'outside', 85, 0)!).toBeCloseTo(12, 7);
    expect(under(plate, 'outside', 0, 85)!).toBeCloseTo(12, 7);
    // The hollow's radius is 45 at 8 and 100 at 24.
    expect(under(plate, 'inside', -72.5, 0)!).toBeCloseTo(16, 7);
  });
});

describe('the part of the stave that survives', () => {
  it('of a tube in a box is as wide as its joints are on the outside', () => {
    const region = surviving(makeVessel(box), 0);
    expect(area(region)).toBeCloseTo(2 * 50 * Math.SQRT1_2 * 80, 6);
    expect(area(surviving(makeVessel(box), 3))).toBeCloseTo(2 * (50 * Math.SQRT1_2 + 3) * 80, 6);
  });

  it('is where the wall has a face under the point, and nowhere else', () => {
    for (const face of ['outside', 'inside'] as const) {
      const vessel = makeVessel({ ...bowl, face });
      const region = surviving(vessel, 0);
      let [within, beyond] = [0, 0];
      for (let u = -31; u <= 31; u += 1.7)
        for (let v = -62; v <= 62; v += 2.3) {
          // A chord's width from the edge either may be.
          if (distanceToBoundary(region, u, v) < 0.05) continue;
          const there = under(vessel, 'outside', u, v) !== null || under(vessel, 'inside', u, v) !== null;
          expect(contains(region, u, v), `${face} at ${u}, ${v}`).toBe(there);
          if (there) within++;
          else beyond++;
        }
      expect(within).toBeGreaterThan(300);
      expect(beyond).toBeGreaterThan(300);
    }
  });
});

import { beforeAll, describe, expect, it } from 'vitest';
import { fromFace } from '../../src/bowl/face.js';
import { under } from '../../src/bowl/figure.js';
import { fillersOf } from '../../src/bowl/fillers.js';
import { shellVolume, turnedVolume } from '../../src/bowl/shell.js';
import { toSpace, toStave } from '../../src/bowl/stave.js';
import { makeVessel, type Vessel } from '../../src/bowl/vessel.js';
import type { Kernel } from '../../src/solid/kernel.js';
import { stockOf } from '../../src/solid/stock.js';
import { vesselModel } from '../../src/solid/vessel.js';
import { bowl, kernel, openEdges, rayMeets, strip, tube, volumeOf } from '../support/vessel.js';

describe('the solid model', () => {
  let k: Kernel;
  beforeAll(async () => {
    k = await kernel();
  });
  const model = (vessel: Vessel, u = 15, v = 20, more = {}) =>
    vesselModel(k, {
      vessel,
      field: 'maple',
      figures: [{ wood: 'walnut', region: strip(u, v) }],
      foot: 40,
      ...more,
    });

  it('holds as much wood as the turned profile, field and inlay together', () => {
    for (const setup of [tube, bowl]) {
      const vessel = makeVessel(setup);
      const { bodies } = model(vessel);
      const all = bodies.reduce((sum, b) => sum + volumeOf(b.mesh), 0);
      const turned = turnedVolume(vessel.wall.outside) - turnedVolume(vessel.wall.inside);
      expect(all / turned).toBeGreaterThan(0.9994);
      expect(all / turned).toBeLessThan(1.0001);
      for (const b of bodies) {
        expect(b.volume / volumeOf(b.mesh)).toBeCloseTo(1, 4);
        expect(openEdges(b.mesh)).toBe(0);
      }
    }
  });

  it('has an inlay of the closed form: strips of a tube, cut by two cylinders', () => {
    // The area of the wall's ring between x = -15 and 15 on one side: R^2 asin(15/R) + 15 sqrt(R^2 - 15^2), outer less inner.
    const half = (r: number): number => r * r * Math.asin(15 / r) + 15 * Math.sqrt(r * r - 225);
    const exact = 4 * 40 * (half(50) - half(40));
    const [, inlay] = model(makeVessel(tube), 15, 20, { chord: 0.001 }).bodies;
    expect(volumeOf(inlay!.mesh) / exact).toBeCloseTo(1, 3);
  });

  it('cut in two is half of each body', () => {
    const { bodies, cutAway } = model(makeVessel(bowl));
    for (const [i, b] of bodies.entries()) expect(cutAway[i]!.volume / b.volume).toBeCloseTo(0.5, 2);
    for (const b of cutAway)
      for (let p = 1; p < b.mesh.points.length; p += 3)
        expect(b.mesh.points[p]!).toBeGreaterThanOrEqual(-1e-4);
  });

  it('lies as deep under the stave’s face as the sums say, by rays: to a hundredth of a millimetre', () => {
    for (const setup of [tube, bowl, { ...bowl, face: 'inside' as const }]) {
      const vessel = makeVessel(setup);
      // Nothing is let in, so that only the wall is met.
      const [whole] = vesselModel(k, { vessel, field: 'maple', figures: [], foot: 1, chord: 0.002 }).bodies;
      let met = 0;
      for (let u = -14; u <= 14; u += 4.7)
        for (let v = -30; v <= 30; v += 7.3) {
          const start = toSpace(vessel.stave, fromFace(vessel, u, v, -30));
          const end = toSpace(vessel.stave, fromFace(vessel, u, v, -29));
          const from = [start.across, -start.out, start.up] as const;
          const along = [end.across - start.across, -(end.out - start.out), end.up - start.up] as const;
          const hits = rayMeets(whole!.mesh, from, along).map((d) => d - 30);
          for (const face of ['outside', 'inside'] as const) {
            const depth = under(vessel, face, u, v);
            if (depth === null) continue;
            met++;
            expect(Math.min(...hits.map((h) => Math.abs(h - depth))), `${face} at ${u}, ${v}`).toBeLessThan(
              0.01,
            );
          }
        }
      expect(met).toBeGreaterThan(60);
    }
  });

  it('is glued up from as much wood as the closed form of its frustums says', () => {
    for (const setup of [tube, bowl, { ...bowl, sides: 24, slope: 0.9, inlaid: [1] }]) {
      const vessel = makeVessel(setup);
      const stock = stockOf(k, vessel, []);
      const exact = shellVolume(vessel.stave, setup.height);
      expect(volumeOf(stock.shell) / exact).toBeCloseTo(1, 5);
      expect(volumeOf(stock.stave) / (exact / setup.sides)).toBeCloseTo(1, 5);
      expect(openEdges(stock.stave)).toBe(0);
    }
  });

  it('has its wall within the glued shell, blocks and all: nothing of it stands out', () => {
    const thin = { ...bowl, thickness: 20, fillers: true };
    const vessel = makeVessel(thin);
    const [whole] = vesselModel(k, { vessel, field: 'maple', figures: [], foot: 1 }).bodies;
    const blocks = fillersOf(vessel);
    expect(vessel.left.under.mm).toBeLessThan(0);
    const { points } = whole!.mesh;
    let deepest = 0;
    for (let p = 0; p < points.length; p += 3) {
      const [x, y, z] = [points[p]!, points[p + 1]!, points[p + 2]!];
      // What lies lower than the inside is the floor's.
      if (z < thin.floor - 1e-3 || Math.hypot(x, y) < 10) continue;
      const turn = Math.PI / 6;
      const off = Math.atan2(x, -y);
      const { depth } = toStave(vessel.stave, Math.hypot(x, y), off - turn * Math.round(off / turn), z);
      const block = blocks.find((b) => z >= b.from - 1e-3 && z <= b.to + 1e-3)?.thickness ?? 0;
      expect(depth).toBeGreaterThan(-0.01);
      expect(depth).toBeLessThan(20 + block + 0.01);
      deepest = Math.max(deepest, depth);
    }
    expect(deepest).toBeGreaterThan(20.5);
  });

  it('leaves a later wood whole where woods overlap, and counts nothing twice', () => {
    const vessel = makeVessel(tube);
    const { bodies } = vesselModel(k, {
      vessel,
      field: 'maple',
      figures: [
        { wood: 'walnut', region: strip(15, 20) },
        { wood: 'cherry', region: strip(5, 30) },
      ],
      foot: 40,
    });
    const alone = vesselModel(k, {
      vessel,
      field: 'maple',
      figures: [{ wood: 'cherry', region: strip(5, 30) }],
      foot: 40,
    });
    expect(bodies[2]!.volume).toBeCloseTo(alone.bodies[1]!.volume, 0);
    const all = bodies.reduce((sum, b) => sum + b.volume, 0);
    expect(all / alone.bodies.reduce((sum, b) => sum + b.volume, 0)).toBeCloseTo(1, 6);
  });

  it('inlays only the staves it is told to', () => {
    const all = model(makeVessel(bowl)).bodies[1]!.volume;
    const third = model(makeVessel({ ...bowl, inlaid: [1, 5, 9, 12] })).bodies[1]!.volume;
    expect(third / all).toBeCloseTo(4 / 12, 4);
  });

  it('of a flat board is a plate', () => {
    const plate = makeVessel({
      ...tube,
      sides: 1,
      slope: 0,
      height: 24,
      floor: 8,
      outside: { shape: 'straight', values: { bottom: 100, top: 240 }, points: [] },
      inside: { shape: 'straight', values: { bottom: 90, top: 200 }, points: [] },
      inlaid: [1],
      face: 'inside',
    });
    const { bodies } = vesselModel(k, {
      vessel: plate,
      field: 'maple',
      figures: [{ wood: 'walnut', region: strip(10, 10) }],
      foot: 20,
    });
    // In the middle the hollow's floor lies at 8 mm: 16 mm of a plug of 20 mm are turned away.
    expect(volumeOf(bodies[1]!.mesh)).toBeCloseTo(20 * 20 * 4, 0);
  });
});

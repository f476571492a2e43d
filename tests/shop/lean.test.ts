import { expect, it } from 'vitest';
import { deflection, FLUTED, type Rod, YOUNGS } from '../../src/shop/cantilever.js';
import { leanGap, type SideCut, wallLean } from '../../src/shop/lean.js';

const rod = (diameter: number, stickout: number, youngs: number): Rod => ({
  diameter,
  flute: stickout,
  shank: diameter,
  stickout,
  youngs,
});

it('gives the worked deflections', () => {
  // d = F L^3 / (3 E I), I = pi D^4 / 64 (tool maker's training page, published); 0.8 D: Kops and Vo 1990 (abstract
  // published). Examples A and B, computed beforehand: 5.57 um at 0.8 D, 2.28 um as a solid rod.
  expect(deflection(rod(6.35, 25.4, 600_000), 20, 0)).toBeCloseTo(0.00557, 5);
  expect(deflection(rod(3.175, 12.7, 600_000), 10, 0)).toBeCloseTo(0.00557, 5);
  const solid: Rod = { ...rod(6.35, 25.4, 600_000), diameter: 6.35 / FLUTED };
  expect(deflection(solid, 20, 0)).toBeCloseTo(0.00228, 5);
});

it('scales as a cantilever does', () => {
  // L doubled: 8 times; D doubled: a sixteenth. Tool maker's training page, published.
  const one = deflection(rod(3, 10, YOUNGS.carbide), 10, 0);
  expect(deflection(rod(3, 20, YOUNGS.carbide), 10, 0) / one).toBeCloseTo(8, 9);
  expect(deflection(rod(6, 10, YOUNGS.carbide), 10, 0) / one).toBeCloseTo(1 / 16, 9);
  // 1 / 0.8^4 = 2.441: computed.
  expect(one / deflection(rod(3 / FLUTED, 10, YOUNGS.carbide), 10, 0)).toBeCloseTo(2.441, 3);
});

it('follows the curve of a stepped cantilever, integrated another way', () => {
  // Curvature F s / (E I) integrated twice from the collet, where slope and deflection are zero.
  const stepped: Rod = { diameter: 3, flute: 12, shank: 6, stickout: 25, youngs: 580_000 };
  const force = 8;
  const steps = 250_000;
  const ds = stepped.stickout / steps;
  const seen = new Map<number, number>();
  let slope = 0;
  let aside = 0;
  for (let k = steps; k > 0; k--) {
    const s = (k - 0.5) * ds;
    const d = s < stepped.flute ? 0.8 * stepped.diameter : stepped.shank;
    const bend = (force * s) / (stepped.youngs * ((Math.PI * d ** 4) / 64));
    aside += slope * ds + (bend * ds * ds) / 2;
    slope += bend * ds;
    if ((k - 1) % 50_000 === 0) seen.set((k - 1) * ds, aside);
  }
  expect([...seen.keys()]).toEqual([20, 15, 10, 5, 0]);
  for (const [above, mm] of seen) expect(deflection(stepped, force, above)).toBeCloseTo(mm, 8);
  expect(deflection(stepped, force, 25)).toBe(0);
});

const slim: SideCut = { rod: rod(3.175, 20, YOUNGS.carbide), force: 10, depth: 8 };

it('leans as in the example of the docstring', () => {
  const wall = wallLean(slim);
  // F x^2 (3 L - x) / (6 E I), x from the collet: the textbook's curve, from memory.
  const inertia = (Math.PI * 2.54 ** 4) / 64;
  const curve = (x: number): number => (10 * x * x * (60 - x)) / (6 * 580_000 * inertia);
  expect(wall.foot).toBeCloseTo(curve(20), 12);
  expect(wall.top).toBeCloseTo(curve(12), 12);
  expect(wall.foot).toBeCloseTo(0.0225, 4);
  expect(wall.top).toBeCloseTo(0.0097, 4);
  expect(wall.lean).toBeCloseTo(0.0128, 4);
  expect(wall.angle).toBeCloseTo(0.0016, 4);
});

it('wedges face up and nests face down', () => {
  const fit = { pocket: slim, plug: slim, engaged: 8, clearance: 0.08 };
  const up = leanGap({ ...fit, face: 'up' });
  const down = leanGap({ ...fit, face: 'down' });
  expect(up.mouth).toBeCloseTo(0.0606, 4);
  expect(up.foot).toBeCloseTo(0.035, 4);
  expect(up.least).toBe(up.foot);
  expect(up.leans).toBe('wedge');
  expect(down.mouth).toBeCloseTo(0.0478, 4);
  expect(down.foot).toBeCloseTo(down.mouth, 12);
  expect(down.leans).toBe('nest');
});

it('is least at an end, walls drawn point by point', () => {
  // Walls as functions of depth, from wallLean of shallower places by the textbook's curve; the plug turned over by hand.
  const inertia = (d: number): number => (Math.PI * (0.8 * d) ** 4) / 64;
  const aside = (c: SideCut, fromTop: number): number => {
    const x = c.rod.stickout - (c.depth - fromTop);
    return (c.force * x * x * (3 * c.rod.stickout - x)) / (6 * c.rod.youngs * inertia(c.rod.diameter));
  };
  const plug: SideCut = { rod: rod(3.175, 22, YOUNGS.carbide), force: 14, depth: 11 };
  for (const face of ['up', 'down'] as const) {
    const gap = leanGap({ pocket: slim, plug, face, engaged: 7.4, clearance: 0.1 });
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k <= 1000; k++) {
      const z = (k / 1000) * 7.4;
      const above = 7.4 - z;
      const fromTop = face === 'up' ? plug.depth - above : above;
      least = Math.min(least, 0.1 - aside(slim, z) - aside(plug, fromTop));
    }
    expect(gap.least, face).toBeCloseTo(least, 12);
  }
});

it('names what is out of range', () => {
  expect(() => wallLean({ ...slim, depth: 21 })).toThrow('depth: is 21 mm: give a value from 0 to 20 mm');
  expect(() => leanGap({ pocket: slim, plug: slim, face: 'up', engaged: 9, clearance: 0.1 })).toThrow(
    'engaged: is 9 mm: give a value from 0 to 8 mm',
  );
  expect(() => wallLean({ ...slim, force: Number.NaN })).toThrow('force: is not a number');
});

it('takes heights whose sum misses by a last digit', () => {
  // (26.73 - 1.17) + 1.17 is 26.730000000000004 in doubles: found by trying pairs.
  expect(26.73 - 1.17 + 1.17).toBeGreaterThan(26.73);
  const long: SideCut = { rod: rod(6, 30, YOUNGS.carbide), force: 10, depth: 26.73 };
  const gap = leanGap({ pocket: long, plug: long, face: 'up', engaged: 1.17, clearance: 0.08 });
  expect(gap.least).toBeLessThan(0.08);
});

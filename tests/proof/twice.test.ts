import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Reach } from '../../src/proof/index.js';
import { circle, dxfOf, rounded, svgOf } from './drawn.js';

/** Faults planted in one route or the other, mm. */
const fault = vi.hoisted(() => ({ field: 0, exact: 0, looks: 0 }));

vi.mock('../../src/proof/field-reach.js', async (original) => {
  const real = await original<typeof import('../../src/proof/field-reach.js')>();
  return {
    ...real,
    fieldReach: (...args: Parameters<typeof real.fieldReach>) => {
      fault.looks++;
      const found = real.fieldReach(...args);
      return { ...found, reach: found.reach + fault.field };
    },
  };
});
vi.mock('../../src/proof/reach.js', async (original) => {
  const real = await original<typeof import('../../src/proof/reach.js')>();
  return {
    ...real,
    reach: (...args: Parameters<typeof real.reach>): Reach => {
      const found = real.reach(...args);
      return { ...found, reach: found.reach + fault.exact };
    },
  };
});
const { prove } = await import('../../src/proof/prove.js');
const { certify } = await import('../../src/proof/certify.js');

afterEach(() => Object.assign(fault, { field: 0, exact: 0, looks: 0 }));

const c = 0.08;
const box = (inset: number): [number, number][] => [
  [30 + inset, 30 + inset],
  [90 - inset, 30 + inset],
  [90 - inset, 70 - inset],
  [30 + inset, 70 - inset],
];
const [pocket, plug] = [
  [rounded(box(0), 2), circle(120, 100, 9)],
  [rounded(box(c), 2 - c), circle(120, 100, 9 - c)],
];
const files = {
  pocketSvg: svgOf('pocket', pocket),
  plugSvg: svgOf('plug', plug),
  pocketDxf: dxfOf('pocket', pocket),
  plugDxf: dxfOf('plug', plug),
};
const proof = () => prove(files, { radius: 1.8, clearance: c, carrier: false });

describe('the proof measures reach by two routes', () => {
  test('and gives both', () => {
    const p = proof();
    expect(p.failures).toEqual([]);
    expect(Math.abs(p.pocket.field - 2.0005)).toBeLessThan(0.003);
    expect(p.plug.field).toBe(3.6);
    expect(fault.looks).toBe(2);
  });

  test.each([
    ['field', 0.006],
    ['field', -0.006],
    ['exact', 0.006],
    ['exact', -0.006],
    ['field', Number.NaN],
    ['exact', Number.NaN],
  ] as const)('a fault of the %s route, %d mm, fails it', (route, by) => {
    fault[route] = by;
    const p = proof();
    expect(p.holds).toBe(false);
    expect(p.failures.join('\n')).toMatch(/two measures of the pocket's reach from inside differ: .* mm/);
    expect(p.failures.join('\n')).toMatch(/two measures of the plug's reach from outside differ/);
    for (const f of p.failures.filter((line) => /two measures/.test(line)))
      expect(f).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('0.004 mm may be rounding', () => {
    fault.field = 0.004;
    expect(proof().failures).toEqual([]);
  });

  test('a certificate fails too', () => {
    const edge = (x0: number, y0: number, x1: number, y1: number) => ({ x0, y0, x1, y1, cx: 0, cy: 0, r: 4 });
    const ring = [edge(4, 0, 0, 4), edge(0, 4, -4, 0), edge(-4, 0, 0, -4), edge(0, -4, 4, 0)];
    const ask = { radius: 3, side: 'inside', top: 10 } as const;
    expect(certify([ring], ask)).toMatchObject({ holds: true, failures: [] });
    fault.field = -0.01;
    expect(certify([ring], ask)).toMatchObject({
      holds: false,
      failures: [expect.stringMatching(/two measures/)],
    });
  });
});

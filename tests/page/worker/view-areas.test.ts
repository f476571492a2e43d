import { describe, expect, it } from 'vitest';
import { ladder } from '../../../src/fit/ladder.js';
import type { View } from '../../../src/page/worker/protocol.js';
import { answerer, drawn, shippedText, view } from './asking.js';
import { pathArea, pathBox, pathLength, readPath } from './svg-path.js';

/** Discs of 16 mm, 24 mm apart, on a plate; the clearance is the plug's. */
function discs(changes: object = {}): string {
  return JSON.stringify({
    name: 'discs',
    outline: { shape: 'rectangle', width: 130, height: 80, margin: 5 },
    pattern: { generator: 'dots', lattice: 'square', size: 16, gap: 8, centre: 'figure' },
    cutter: { diameter: 3, flute: 16, ease: 0.3 },
    fit: { clearance: 0.2, from: 'plug', plug: 'loose' },
    depth: 10,
    woods: { field: 'sugar maple', plug: 'black walnut' },
    ...changes,
  });
}

/** 120 by 70 mm are left of the plate: five columns of three. */
const COUNT = 15;
const circle = (r: number): number => Math.PI * r * r;

async function viewOf(text: string, name: Parameters<typeof view>[1], units?: 'mm' | 'in'): Promise<View> {
  const a = answerer();
  await drawn(a, text);
  return view(a, name, units);
}

function areaOf({ shapes }: View, look: string): number {
  return shapes.filter((s) => s.look === look).reduce((sum, s) => sum + pathArea(s.d), 0);
}

describe('how large what a view shows is', () => {
  it('pockets are the discs', async () => {
    const got = await viewOf(discs(), 'pocket');
    expect(Math.abs(areaOf(got, 'pocket') - COUNT * circle(8))).toBeLessThan(0.05);
    expect(areaOf(got, 'face')).toBe(130 * 80);
    // The cutter cuts 3 mm: its radius is half of it.
    expect(got.says).toBe(
      '15 pockets, 10 mm deep, every inside corner round enough for a cutter of radius 1.5 mm.',
    );
  });

  it.each([
    ['plug', 8, 7.8],
    ['pocket', 8.2, 8],
    ['both', 8.1, 7.9],
  ])('the gap is a ring round every disc, from the %s', async (from, outer, inner) => {
    const got = await viewOf(discs({ fit: { clearance: 0.2, from, plug: 'loose' } }), 'gap');
    expect(Math.abs(areaOf(got, 'gap') - COUNT * circle(outer))).toBeLessThan(0.05);
    expect(Math.abs(areaOf(got, 'seated') - COUNT * circle(inner))).toBeLessThan(0.05);
    expect(got.says).toContain('0.2 mm on each side all round');
  });

  it('no clearance leaves no gap', async () => {
    const got = await viewOf(discs({ fit: { clearance: 0, from: 'plug', plug: 'loose' } }), 'gap');
    expect(areaOf(got, 'gap')).toBe(areaOf(got, 'seated'));
    expect(got.says).toMatch(/^No gap/);
  });

  it('plugs on a carrier lie the other way about, and in the gap the right way', async () => {
    const text = discs({
      pattern: {
        generator: 'dots',
        size: 16,
        gap: 8,
        centre: 'figure',
        within: { shape: 'circle', diameter: 20, x: 30, y: 12 },
      },
      fit: { clearance: 0.2, from: 'plug', plug: 'carrier' },
      cutter: { diameter: 3, flute: 30 },
      stock: { field: 18, plug: 25 },
    });
    const a = answerer();
    await drawn(a, text);
    const middle = (got: View, look: string): number[] => {
      const b = pathBox(got.shapes.find((s) => s.look === look)!.d);
      return [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2].map((v) => Math.round(v * 100) / 100);
    };
    const [plug, gap] = [await view(a, 'plug'), await view(a, 'gap')];
    expect(middle(plug, 'plug')).toEqual([-30, -12]);
    expect(plug.says).toMatch(/^One part, on a carrier, .* mirrored/);
    expect(middle(gap, 'seated')).toEqual([30, -12]);
    expect(middle(gap, 'gap')).toEqual([30, -12]);
    const loose = await viewOf(text.replace('"carrier"', '"loose"'), 'plug');
    expect(middle(loose, 'plug')).toEqual([30, -12]);
    expect(loose.says).toBe('One part, cut free.');
  });

  it('the piece is drawn in its woods, plug in pocket', async () => {
    const got = await viewOf(discs(), 'piece');
    expect(got.shapes.map((s) => s.look)).toEqual(['wood', 'joint', 'wood']);
    expect(pathArea(got.shapes[0].d)).toBe(10_400);
    expect(Math.abs(pathArea(got.shapes[1].d) - COUNT * circle(8))).toBeLessThan(0.05);
    expect(Math.abs(pathArea(got.shapes[2].d) - COUNT * circle(7.8))).toBeLessThan(0.05);
    expect(got.key.map((k) => k.text)).toEqual(['sugar maple', 'black walnut']);
    expect(got.key.map((k) => k.fill)).toEqual([got.shapes[0].fill, got.shapes[2].fill]);
    expect(new Set(got.key.map((k) => k.fill)).size).toBe(2);
  });

  it('a roughing cutter leaves its allowance on the walls, and a corner that is rounder than it', async () => {
    const squares = {
      pattern: { generator: 'dots', lattice: 'square', shape: 'square', size: 30, gap: 50, centre: 'figure' },
      roughing: { diameter: 8 },
      passes: { allowance: 0.5 },
    };
    const got = await viewOf(discs(squares), 'reach');
    // A square of 29 mm whose corners have the roughing cutter's radius of 4 mm.
    const swept = 29 * 29 - (4 - Math.PI) * 16;
    expect(Math.abs(areaOf(got, 'roughed') - swept)).toBeLessThan(0.05);
    // The pocket: 30 mm, its corners rounded to the cutter's 1.5 mm and the ease of 0.3.
    const pocket = 900 - (4 - Math.PI) * 1.8 * 1.8;
    expect(Math.abs(areaOf(got, 'finished') - pocket)).toBeLessThan(0.05);
    expect(got.says).toBe(
      `The roughing cutter takes ${((100 * swept) / pocket).toFixed(1)} % of the pockets, with 0.5 mm left on the walls. The 3 mm cutter gets everywhere.`,
    );
    expect(got.shapes.some((s) => s.look === 'missed')).toBe(false);
  });

  it("without a roughing cutter all is the finishing cutter's", async () => {
    const got = await viewOf(discs(), 'reach', 'in');
    expect(Math.abs(areaOf(got, 'finished') - COUNT * circle(8))).toBeLessThan(0.05);
    expect(areaOf(got, 'roughed')).toBe(0);
    // 3 / 25.4
    expect(got.says).toBe(
      'No roughing cutter is named: the 0.1181 in cutter clears it all. The 0.1181 in cutter gets everywhere.',
    );
  });

  it('thin walls are as thin as what is left between two discs', async () => {
    const near = discs({
      pattern: { generator: 'dots', lattice: 'square', size: 16, gap: 2, centre: 'figure' },
      cutter: { diameter: 1, flute: 16, ease: 0.1 },
    });
    const got = await viewOf(near, 'walls');
    // 10 mm deep and 2 mm wide: five times as high as thick.
    expect(got.says).toMatch(/^The thinnest wall of field is 2 mm, 5 times as high as thick/);
    expect(got.labels).toHaveLength(8);
    expect(new Set(got.labels.map((l) => l.text))).toEqual(new Set(['2']));
    // Halfway between two neighbours, whose middles lie whole steps of 18 mm apart.
    for (const { x, y } of got.labels) {
      const [i, j] = [x / 18, y / 18];
      const half = Math.abs(Math.abs(i - Math.round(i)) - 0.5) < 0.01;
      expect(half ? j - Math.round(j) : i - Math.round(i)).toBeCloseTo(0, 2);
      expect(Math.abs(Math.abs(half ? i - Math.round(i) : j - Math.round(j)) - 0.5)).toBeLessThan(0.01);
    }
    // 2 / 25.4
    expect((await viewOf(near, 'walls', 'in')).labels[0].text).toBe('0.079');
    expect((await viewOf(discs(), 'walls')).says).toBe(
      'No wall of field is thin for its height. No limb of plug is thin for its height.',
    );
  });

  it('grain is drawn along the grain', async () => {
    const woods = { field: 'sugar maple', plug: 'black walnut', fieldGrain: 30, plugGrain: 90 };
    const { shapes } = await viewOf(discs({ woods }), 'walls');
    const slope = (look: string): number => {
      const [[x0, y0], [x1, y1]] = readPath(shapes.find((s) => s.look === look)!.d)[0].points;
      return Math.atan2(-(y1 - y0), x1 - x0);
    };
    expect(slope('grain-field')).toBeCloseTo(Math.PI / 6, 3);
    expect(Math.abs(slope('grain-plug'))).toBeCloseTo(Math.PI / 2, 3);
  });

  it('a coupon has the steps of the ladder, each with its own gap', async () => {
    const text = shippedText('hexagon-coaster');
    const a = answerer();
    const { recipe } = await drawn(a, text);
    const got = await view(a, 'coupon');
    const steps = ladder({ repeatability: recipe.machine.repeatability });
    expect(steps.length).toBeGreaterThan(3);
    expect(got.labels.map((l) => Number.parseFloat(l.text))).toEqual(steps.map((c) => Number(c.toFixed(3))));
    const [gaps, plugs] = ['gap', 'seated'].map((look) => got.shapes.filter((s) => s.look === look));
    expect([gaps.length, plugs.length]).toEqual([steps.length, steps.length]);
    steps.forEach((c, k) => {
      // Its number stands over its figure, and over no other's.
      const { x, y } = got.labels[k];
      const { minX, maxX, minY } = pathBox(gaps[k].d);
      expect(x > minX && x < maxX && y < minY && y > minY - (maxX - minX)).toBe(true);
      // Steiner's formula (Minkowski sum with a disc, 1840), holes counted the other way: what is left of the areas'
      // difference is far less than the paths' grid of a thousandth.
      const holes =
        readPath(gaps[k].d).length - readPath(gaps[k].d).filter((_, i) => outer(gaps[k].d, i)).length;
      const outers = readPath(gaps[k].d).length - holes;
      const length = pathLength(gaps[k].d);
      const ring = pathArea(gaps[k].d) - pathArea(plugs[k].d);
      expect(Math.abs((ring + Math.PI * c * c * (outers - holes)) / length - c)).toBeLessThan(0.0007);
    });
  });
});

function outer(d: string, k: number): boolean {
  return pathArea(`${d.split('Z')[k]}Z`) > 0;
}

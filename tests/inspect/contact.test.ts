import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import type { Pair } from '../../src/fit/pair.js';
import { bulgedContour, type Contour, type Region } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import { fullDepthContact } from '../../src/inspect/full-depth-contact.js';
import { contacts, deflectionAt, forceAt, MORE } from '../../src/inspect/sums/reach/contact.js';
import { readRecipe } from '../../src/recipe/read.js';
import { exampleText } from '../recipe/example.js';
import { assets } from '../support/artwork.js';
import { divided, Milling } from '../support/milling.js';
import { ringsOf } from '../support/rings.js';

const read = (changes: Record<string, unknown> = {}) =>
  readRecipe(
    exampleText({ cutter: { diameter: 3, flute: 22, ease: 0.3 }, roughing: { diameter: 6 }, ...changes }),
    'x.json',
  );
const recipe = read();
const A = 0.3;
const R = 3;

/** A rectangle about (x, y) with round corners of radius r. */
function rounded(width: number, height: number, r: number, x = 0, y = 0): Contour {
  const [w, h] = [width / 2, height / 2];
  const bulge = Math.SQRT2 - 1;
  const corners = [
    [w, -h + r, 0, w, h - r, bulge],
    [w - r, h, 0, -w + r, h, bulge],
    [-w, h - r, 0, -w, -h + r, bulge],
    [-w + r, -h, 0, w - r, -h, bulge],
  ] as const;
  return bulgedContour(
    corners
      .flatMap(([px, py, a, qx, qy, b]) => [
        { x: px + x, y: py + y, bulge: a },
        { x: qx + x, y: qy + y, bulge: b },
      ])
      .filter(
        (p, i, all) =>
          Math.hypot(p.x - all[(i + 1) % all.length]!.x, p.y - all[(i + 1) % all.length]!.y) > 1e-9,
      ),
  );
}

const pairOf = (pocket: Region, plug: Region = { contours: [] }, mirrored = false): Pair => ({
  pocket,
  plug,
  mirrored,
});

describe('contact in a round corner, closed form', () => {
  const r = 1.8;
  const found = contacts(recipe, pairOf({ contours: [rounded(20, 20, r)] }));

  it("is told at each corner, with its width at the corner's middle", () => {
    expect(found).toHaveLength(4);
    // Line of the allowance: radius r - a. The roughing arc of R in the same corner stands (sqrt 2 - 1)(R - (r - a)) off it.
    const width = A + (Math.SQRT2 - 1) * (R - (r - A));
    for (const c of found) {
      expect(c.part).toBe('pocket');
      expect(c.slot).toBe(false);
      // Looked at every 0.4 mm along the wall, so the very middle may lie between two looks.
      expect(c.width).toBeLessThanOrEqual(width + 1e-9);
      expect(c.width).toBeGreaterThan(width - 0.03);
      const middle = 10 - r + r * Math.SQRT1_2;
      expect(Math.hypot(Math.abs(c.at[0]) - middle, Math.abs(c.at[1]) - middle)).toBeLessThan(0.25);
    }
  });
  it('ends where what stands is the allowance and a little, to 0.01 mm', () => {
    // The ball touches the straight line of the allowance R + a from the wall across; s further in, R - sqrt(R^2 - s^2)
    // stands besides the allowance.
    const s = Math.sqrt(R * R - (R - MORE) * (R - MORE));
    const straight = R + A - r - s;
    const length = 2 * straight + (r * Math.PI) / 2;
    for (const c of found) {
      expect(c.length).toBeGreaterThan(length - 0.01);
      expect(c.length).toBeLessThan(length + 0.01);
      const first = c.edges[0]!;
      const last = c.edges.at(-1)!;
      const far = 10 - (R + A - s);
      expect(Math.min(Math.abs(first.x0), Math.abs(first.y0))).toBeCloseTo(far, 2);
      expect(Math.min(Math.abs(last.x1), Math.abs(last.y1))).toBeCloseTo(far, 2);
      c.edges.slice(1).forEach((e, i) => {
        expect(Math.hypot(e.x0 - c.edges[i]!.x1, e.y0 - c.edges[i]!.y1)).toBeLessThan(1e-6);
      });
    }
  });
  it('is none where the corner is as round as the cutter and its allowance', () => {
    expect(contacts(recipe, pairOf({ contours: [rounded(20, 20, R + A + 1e-6)] }))).toEqual([]);
  });
});

describe('contact in a slot', () => {
  const slot: Region = { contours: [rounded(30, 4, 2)] };
  const [found, ...more] = contacts(recipe, pairOf(slot));

  it('goes all round, with the whole width of the finishing cutter', () => {
    expect(more).toEqual([]);
    expect(found!.slot).toBe(true);
    expect(found!.width).toBe(3);
    expect(found!.length).toBeCloseTo(2 * 26 + 4 * Math.PI, 6);
    expect(found!.depth).toBe(8);
  });
  it('a simulated cutter is in the wood with its whole width along the first wall, and with little along the second', () => {
    // By tests/support/milling.ts; straight stretches of both walls.
    const walls = divided(
      slot.contours.map((c) => ringsOf([c], 0.005)[0]!),
      1,
    );
    const milling = new Milling({ walls, window: [-16, -3, 16, 3], cell: 0.05 }, R + A + 0.1);
    milling.rough({ radius: R, allowance: A });
    const bites = milling.finish(1.5, 0.2, () => undefined);
    const along = (side: number) =>
      bites.filter((b) => Math.abs(b.at[0]) < 8 && b.at[1] * side > 0).map((b) => b.width);
    const mean = (w: readonly number[]) => w.reduce((x, y) => x + y, 0) / w.length;
    const means = [mean(along(1)), mean(along(-1))].sort((p, q) => p - q);
    expect(means[1]).toBeGreaterThan(2.9);
    expect(means[1]).toBeLessThan(3.1);
    // What the first pass leaves of the 4 mm.
    expect(means[0]).toBeGreaterThan(0.9);
    expect(means[0]).toBeLessThan(1.1);
  });
  it('between two parts of a plug lies as the pocket does, though the plug is mirrored', () => {
    const plug: Region = { contours: [rounded(10, 30, 2, 8, 0), rounded(10, 30, 2, 22, 0)] };
    const all = contacts(recipe, pairOf({ contours: [] }, mirrorX(plug), true));
    expect(all.map((c) => c.part)).toEqual(['plug', 'plug']);
    const xs = all.map((c) => c.at[0]).sort((a, b) => a - b);
    // The gap is 4 mm wide, from 13 to 17.
    expect(xs[0]).toBeCloseTo(13, 6);
    expect(xs[1]).toBeCloseTo(17, 6);
    for (const c of all) {
      expect(Math.abs(c.at[1])).toBeLessThan(1);
      expect(c.width).toBe(3);
      expect(c.depth).toBe(12);
    }
  });
});

describe('when there is none', () => {
  const pair = pairOf({ contours: [rounded(20, 20, 1.8)] });
  it('without a roughing cutter: the same cutter clears in steps', () => {
    expect(contacts(read({ roughing: undefined }), pair)).toEqual([]);
  });
  it('with a clearing pass', () => {
    expect(contacts(read({ passes: { clearing: true } }), pair)).toEqual([]);
  });
  it('is asked again for another recipe', () => {
    expect(contacts(recipe, pair)).toHaveLength(4);
    expect(contacts(read({ roughing: { diameter: 3.1 } }), pair)).toEqual([]);
    expect(contacts(read({ passes: { finishingStep: 4 } }), pair)[0]!.depth).toBe(4);
  });
});

describe('force and deflection', () => {
  it('grow with what stands, from the force assumed for the allowance', () => {
    expect(forceAt(recipe, A)).toBeCloseTo(recipe.machine.sideForce, 12);
    expect(forceAt(recipe, 3)).toBeCloseTo(10 * recipe.machine.sideForce, 12);
    // With no allowance a light pass of 0.1 mm is assumed.
    expect(forceAt(read({ passes: { allowance: 0 } }), 1)).toBeCloseTo(10 * recipe.machine.sideForce, 12);
  });
  it('bend the cutter as worked examples A and B say', () => {
    // Computed beforehand from d = F L^3 / (3 E I) at 0.8 D with 600 GPa: 5.57 um. Carbide here is 580 GPa.
    const um = (changes: Record<string, unknown>) =>
      1000 * deflectionAt(read({ roughing: { diameter: 8 }, ...changes }), A);
    const a = um({
      cutter: { diameter: 6.35, flute: 25.4, stickout: 25.4, ease: 0.3 },
      machine: { sideForce: 20 },
    });
    expect((a * 580) / 600).toBeCloseTo(5.57, 2);
    const b = um({
      cutter: { diameter: 3.175, flute: 12.7, stickout: 12.7, ease: 0.3 },
      machine: { sideForce: 10 },
    });
    expect((b * 580) / 600).toBeCloseTo(5.57, 2);
  });
});

describe('the finding', () => {
  const built = build(readRecipe(exampleText(), 'x.json'), assets);
  // Same pattern whatever the passes are.
  const setup = (changes: Record<string, unknown> = {}) => ({
    recipe: readRecipe(exampleText(changes), 'x.json'),
    outline: built.outline,
    artwork: { pieces: [] },
    safe: built.safe,
    pair: built.pair,
  });

  it('says where, how much, how far the cutter bends, and the cures with numbers', () => {
    const s = setup();
    const [first, ...rest] = fullDepthContact(s);
    expect(first!.severity).toBe('warn');
    // 12 petals: 24 walls of the gaps between them.
    expect(first!.numbers.places).toBe(24);
    expect(first!.zone!.lines).toHaveLength(24);
    expect(first!.numbers.diameters).toBeCloseTo(12 / 3.175, 9);
    expect(first!.do).toMatch(/whole width \(3\.19 mm\), 3\.8 diameters deep in one pass/);
    expect(first!.do).toMatch(/\(estimate, from an assumed 10 N in a light pass\)/);
    expect(first!.do).toMatch(/in 4 steps of 3 mm \(passes\.clearing\)/);
    expect(first!.do).toMatch(
      /in 2 steps of 6 mm \(passes\.finishingStep\) and then once lightly at full depth/,
    );
    expect(first!.do).toMatch(/\(roughing\.open\)/);
    expect(rest.length).toBeGreaterThan(0);
    expect(rest.length).toBeLessThan(6);
    // No place is lost in the grouping.
    const places = [first!, ...rest].reduce((n, f) => n + f.numbers.places!, 0);
    expect(places).toBe(contacts(s.recipe, s.pair).length);
    // The pocket of 8 mm is no deeper than finishing steps may be: only a note.
    const pocket = [first!, ...rest].filter((f) => f.numbers.depth === 8);
    expect(new Set(pocket.map((f) => f.severity))).toEqual(new Set(['note']));
  });
  it('is silent with finishing steps of 3 diameters, and speaks with deeper ones', () => {
    expect(fullDepthContact(setup({ passes: { finishingStep: 9.525 } }))).toEqual([]);
    expect(fullDepthContact(setup({ passes: { finishingStep: 9.6 } })).map((f) => f.severity)).toContain(
      'warn',
    );
  });
  it('is silent without a roughing cutter and with a clearing pass', () => {
    expect(fullDepthContact(setup({ roughing: undefined }))).toEqual([]);
    expect(fullDepthContact(setup({ passes: { clearing: true } }))).toEqual([]);
  });
  it('names a roughing cutter that gets everywhere', () => {
    const s = {
      ...setup({ 'cutter.cuts': undefined, 'cutter.diameter': 2 }),
      pair: pairOf({ contours: [rounded(20, 20, 2.4)] }),
    };
    expect(fullDepthContact(s)[0]!.do).toMatch(/rough with 4 mm, which gets everywhere/);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import type { Pair } from '../../src/fit/pair.js';
import { type Contour, circle, polygon } from '../../src/geometry/region.js';
import { leaningWalls } from '../../src/inspect/leaning-walls.js';
import { movingWood } from '../../src/inspect/moving-wood.js';
import { pressLoad } from '../../src/inspect/press-load.js';
import type { Setup } from '../../src/inspect/setup.js';
import { shortFlute } from '../../src/inspect/short-flute.js';
import { stainingDust } from '../../src/inspect/staining-dust.js';
import { thinPlug } from '../../src/inspect/thin-plug.js';
import { thinSkin } from '../../src/inspect/thin-skin.js';
import { trappedGlue } from '../../src/inspect/trapped-glue.js';
import { uncertainClearance } from '../../src/inspect/uncertain-clearance.js';
import { weakContrast } from '../../src/inspect/weak-contrast.js';
import { makeOutline } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { exampleText } from '../recipe/example.js';
import { assets } from '../support/artwork.js';

/** What is found about the fit; the rest has tests of its own. */
const ABOUT_FIT = [
  shortFlute,
  thinSkin,
  thinPlug,
  uncertainClearance,
  leaningWalls,
  movingWood,
  trappedGlue,
  pressLoad,
  weakContrast,
  stainingDust,
];

const FIT_CODES =
  /^(short-flute|no-skin|thin-(skin|plug)|uncertain-|leans-|plug-swells|gap-opens|trapped-|press-|weak-|staining-)/;

/** A rectangle about (cx, cy), mm. */
function box(width: number, height: number, cx = 0, cy = 0): Contour {
  const [a, b] = [width / 2, height / 2];
  return polygon([
    [cx - a, cy - b],
    [cx + a, cy - b],
    [cx + a, cy + b],
    [cx - a, cy + b],
  ]);
}

/** Findings about a recipe whose pocket is these contours; the plug is drawn alike, which these sums do not mind. */
function findings(changes: Record<string, unknown>, ...contours: Contour[]) {
  const recipe = readRecipe(
    exampleText({ 'outline.diameter': 300, 'woods.plugGrain': 0, ...changes }),
    'x.json',
  );
  const pair: Pair = { pocket: { contours }, plug: { contours }, mirrored: false };
  const setup: Setup = {
    recipe,
    outline: makeOutline(recipe.outline.shape, recipe.outline.values),
    artwork: { pieces: [] },
    safe: { region: { contours: [] }, pieces: [], changes: [] },
    pair,
  };
  return ABOUT_FIT.flatMap((find) => find(setup));
}
const codes = (changes: Record<string, unknown>, ...contours: Contour[]) =>
  findings(changes, ...contours).map((f) => `${f.code} ${f.severity}`);

describe('clearance against accuracy', () => {
  it('warns when one wall alone may close it, with the limits of both', () => {
    const [found] = findings({ 'fit.clearance': 0.04 }, box(30, 30));
    expect(found).toMatchObject({ code: 'uncertain-clearance', severity: 'warn' });
    // ISO 286-1: least = 0.04 - 2 x 0.05, greatest = 0.04 + 2 x 0.05.
    expect(found!.numbers.least).toBeCloseTo(-0.06, 9);
    expect(found!.numbers.greatest).toBeCloseTo(0.14, 9);
    expect(found!.do).toContain('an interference of up to 0.06 mm per side');
  });
  it('is silent from there on, and where the machine was measured', () => {
    expect(codes({ 'fit.clearance': 0.05, 'cutter.flute': 14 }, box(30, 30))).toEqual([]);
    expect(
      codes({ 'fit.clearance': 0.04, 'cutter.flute': 14, machine: { accuracy: 0.03 } }, box(30, 30)),
    ).toEqual([]);
  });
});

describe('seasonal movement', () => {
  it('warns of crossed grains in a large part, by the sum done by hand', () => {
    const found = findings({ 'woods.plugGrain': 90 }, box(150, 150));
    expect(found.map((f) => f.code)).toEqual(['plug-swells', 'gap-opens']);
    // Walnut and ash both 0.00274 across (Wood Handbook table 13-5), 0.001 / 30 along; 2 % of moisture; 75 mm.
    for (const f of found) {
      expect(f.numbers.closes).toBeCloseTo(75 * (0.00274 - 0.001 / 30) * 2, 4);
      expect(f.do).toContain('Lay both grains the same way');
    }
  });
  it('is silent with both grains alike, with small parts, and where the figures do not hold', () => {
    expect(codes({}, box(150, 150))).toEqual([]);
    expect(codes({ 'woods.plugGrain': 90 }, box(60, 60))).toEqual([]);
    expect(codes({ 'woods.plugGrain': 90, moisture: { driest: 4 } }, box(150, 150))).toEqual([]);
  });
});

describe('lean of the cutter', () => {
  const slim = { 'cutter.diameter': 2, 'cutter.cuts': undefined, 'stock.plug': 8.5 };
  it('warns when it eats the clearance, and knows wedging from nesting', () => {
    const [found] = findings(slim, box(60, 60));
    expect(found).toMatchObject({ code: 'leans-wedge', severity: 'warn' });
    // F L^3 / (3 E I) at the tip of both, I = pi (0.8 D)^4 / 64; the plug stands 0.5 mm above its own tip's depth.
    const tip = (10 * 22 ** 3) / (3 * 580_000 * ((Math.PI * 1.6 ** 4) / 64));
    expect(tip).toBeGreaterThan(0.18);
    expect(found!.numbers.foot).toBeLessThan(0.08 - 1.9 * tip);
    expect(found!.numbers.foot).toBeGreaterThan(0.08 - 2 * tip);
    expect(codes({ ...slim, 'fit.face': 'down' }, box(60, 60))).toEqual(['leans-tight warn']);
  });
  it('is silent with a stout cutter, with no side force, and with no clearance to eat', () => {
    expect(codes({ 'stock.plug': 8.5 }, box(60, 60))).toEqual([]);
    expect(codes({ ...slim, machine: { sideForce: 0 } }, box(60, 60))).toEqual([]);
    expect(codes({ ...slim, fit: { clearance: 0 }, machine: { accuracy: 0 } }, box(60, 60))).toEqual([]);
  });
});

describe('trapped glue', () => {
  it('warns of a slot whose gaps do not hold a coat, with the gap that does', () => {
    const [found] = findings({}, box(60, 60, -40), box(100, 2, 0, 50));
    expect(found).toMatchObject({ code: 'trapped-glue', severity: 'warn', where: [0, 50] });
    // gap x (area - c P) = coat (P d + area) - c P d, with P midway in the gap: 204 - pi c.
    const p = 204 - Math.PI * 0.08;
    const needed = (0.15 * (p * 8 + 200) - 0.08 * p * 8) / (200 - 0.08 * p);
    expect(found!.numbers.needed).toBeCloseTo(needed, 9);
  });
  it('is silent where the gap is near enough, is made so, or the pocket goes through', () => {
    expect(codes({}, box(100, 3))).toEqual([]);
    expect(codes({ 'fit.glueGap': 0.8 }, box(100, 2))).toEqual([]);
    expect(codes({ skin: 0, 'stock.field': 8 }, box(100, 2))).toEqual(['no-skin note']);
  });
});

describe('press', () => {
  const plate = box(40, 100);
  it('warns from half the crushing load, and louder over it: 40 cm2 of walnut, 28 kN', () => {
    // 7000 kPa x 4000 mm2 (Wood Handbook table 5-3a) = 28 kN = 3.15 US tons of 8.896 kN.
    expect(codes({ press: { tons: 1.5 } }, plate)).toEqual([]);
    expect(codes({ press: { tons: 2 } }, plate)).toEqual(['press-strong warn']);
    const [found] = findings({ press: { tons: 4 } }, plate);
    expect(found).toMatchObject({ code: 'press-crushes', severity: 'warn' });
    expect(found!.do).toMatch(/^Danger: .*28 kN \(3\.15 US tons\).*Never go over 14 kN/);
    expect(codes({ press: { tons: 3, kind: 'metric' } }, plate)).toEqual(['press-crushes warn']);
  });
  it('says nothing of a wood without a figure, and nothing with no press named', () => {
    expect(codes({ press: { tons: 100 }, 'woods.plug': 'teak' }, plate)).toEqual([]);
    expect(codes({}, plate)).toEqual([]);
  });
  it('warns of a wall that shut-in glue could burst', () => {
    const walls = [box(30, 60, -17), box(30, 60, 17)];
    // A wall 4 thick and 8 high: 6500 kPa (white ash) / (3 (8/4)^2) = 542 kPa on 36 cm2 = 1.95 kN = 0.219 US tons.
    expect(codes({ press: { tons: 0.21 } }, ...walls)).toEqual([]);
    const [found] = findings({ press: { tons: 0.23 } }, ...walls);
    expect(found).toMatchObject({ code: 'press-bursts', severity: 'warn' });
    expect(found!.numbers).toMatchObject({ wall: 4 });
    expect(found!.numbers.burstLoad).toBeCloseTo(1950, 6);
    expect(found!.where![0]).toBeCloseTo(0, 9);
  });
});

describe('looks', () => {
  it('name woods that are near each other new, aged or both', () => {
    // L* of shop/contrast.ts, from memory: cherry 62/47, birch 77/69; walnut 37/44, teak 56/50.
    expect(codes({ 'woods.field': 'cherry', 'woods.plug': 'yellow birch' }, circle(0, 0, 9))).toEqual([
      'weak-contrast note',
    ]);
    expect(codes({ 'woods.field': 'teak' }, circle(0, 0, 9))).toEqual(['weak-contrast warn']);
    expect(codes({}, circle(0, 0, 9))).toEqual([]);
  });
  it('name coloured dust beside a pale wood, whichever of the two it is', () => {
    expect(codes({ 'woods.plug': 'padauk' }, circle(0, 0, 9))).toEqual(['staining-dust note']);
    expect(codes({ 'woods.field': 'purpleheart', 'woods.plug': 'maple' }, circle(0, 0, 9))).toEqual([
      'staining-dust note',
    ]);
    expect(codes({ 'woods.plug': 'padauk', 'woods.field': 'walnut' }, circle(0, 0, 9))).not.toContain(
      'staining-dust note',
    );
  });
});

it.each(['tea-box-rosette', 'keepsake-box-lid', 'star-trivet', 'door-number'])(
  'the shipped %s gives no finding of the fit',
  (name) => {
    const recipe = readRecipe(readFileSync(`patterns/${name}.json`, 'utf8'), name);
    const { findings: found, numbers } = build(recipe, assets);
    expect(found.map((f) => f.code).filter((c) => FIT_CODES.test(c))).toEqual([]);
    // And its figures stand in job.json, none of them no number.
    for (const key of [
      'leastClearance',
      'leanGapFoot',
      'glueArea',
      'crushLoad',
      'thinnestWall',
      'plugHeight',
    ])
      expect(numbers[key], key).toEqual(expect.any(Number));
    for (const [key, value] of Object.entries(numbers)) expect(Number.isFinite(value), key).toBe(true);
  },
);

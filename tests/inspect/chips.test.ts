import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Pair } from '../../src/fit/pair.js';
import { type Region, reversedContour } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import { chips } from '../../src/inspect/chips.js';
import { cornerFeed } from '../../src/inspect/corner-feed.js';
import { deepSteps } from '../../src/inspect/deep-steps.js';
import type { Finding } from '../../src/inspect/finding.js';
import { makeOutline } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import type { Recipe } from '../../src/recipe/recipe.js';
import { cornerFeed as cornerSpeed, cornerThinning } from '../../src/shop/feed.js';
import { exampleText } from '../recipe/example.js';
import { roundedSquare, squarePair } from '../support/square.js';

/** What is found about a square with corners of 20, on which no feed here falls. */
function found(changes: Record<string, unknown>, pair: Pair = squarePair(60, 20)): Finding[] {
  return foundIn(readRecipe(exampleText({ ...PLAIN, ...changes }), 'x.json'), pair);
}

function foundIn(recipe: Recipe, pair: Pair): Finding[] {
  const setup = {
    recipe,
    outline: makeOutline(recipe.outline.shape, recipe.outline.values),
    artwork: { pieces: [] },
    safe: { region: { contours: [] }, pieces: [], changes: [] },
    pair,
  };
  return [deepSteps, chips, cornerFeed].flatMap((find) => find(setup));
}

/** One cutter of 3 mm in white ash, 6 deep: 0.036 to 0.09 mm in finishing, of a bite thinned to 0.6. */
const PLAIN = {
  roughing: undefined,
  'cutter.diameter': 3,
  'cutter.cuts': undefined,
  'cutter.ease': undefined,
  'stock.field': 8,
  'stock.plug': 7,
  depth: 6,
  skin: 2,
};

const codes = (list: readonly Finding[]): string[] => list.map((f) => `${f.code} ${f.severity}`);

describe('thin chips', () => {
  it('are none with everything left to us', () => {
    expect(found({})).toEqual([]);
  });

  it('are told with the feed that would do', () => {
    // 1000 / 36,000 = 0.0278; x 0.6 = 0.0167 under 0.036 by more than half. 0.036 / 0.6 x 36,000 = 2160.
    const [thin, ...more] = found({ 'cutter.feed': 1000 });
    expect(more).toEqual([]);
    expect(codes([thin!])).toEqual(['thin-chips warn']);
    expect(thin!.numbers).toMatchObject({ feed: 1000, rpm: 18_000, enoughFeed: 2160 });
    expect(thin!.numbers.chip).toBeCloseTo(1 / 60, 9);
    expect(thin!.numbers.least).toBeCloseTo(0.036, 9);
    expect(thin!.do).toContain('Feed 2160 mm a minute or more');
    // And it does; one that is short of it is a calm note.
    expect(found({ 'cutter.feed': 2160 })).toEqual([]);
    expect(codes(found({ 'cutter.feed': 1800 }))).toEqual(['thin-chips note']);
  });

  it('are judged by what the light bite leaves of them', () => {
    // 0.05 mm nominal is in the range, 0.03 is not.
    expect(codes(found({ 'cutter.feed': 1800 }))).toEqual(['thin-chips note']);
    // Half the diameter thins nothing.
    expect(found({ 'cutter.feed': 1800, passes: { allowance: 1.5 } })).toEqual([]);
  });

  it('want fewer turns where the machine has no more feed', () => {
    // 2000 x 0.6 / (2 x 0.036) = 16,667.
    const slow = { machine: { feed: 2000 } };
    const [thin] = found(slow);
    expect(codes([thin!])).toEqual(['thin-chips note']);
    expect(thin!.numbers.enoughRpm).toBe(16_600);
    expect(found({ ...slow, 'cutter.rpm': 16_600 })).toEqual([]);
    expect(codes(found({ ...slow, 'cutter.rpm': 16_700 }))).toEqual(['thin-chips note']);
  });

  it('want fewer flutes where it turns no slower', () => {
    const slow = { machine: { feed: 2000, slowest: 18_000 } };
    const [thin] = found(slow);
    // 2000 x 0.6 / 0.036 with one flute.
    expect(thin!.numbers).toMatchObject({ enoughFlutes: 1, enoughRpm: 33_300 });
    expect(thin!.do).toContain('a cutter with 1 flute');
    expect(found({ ...slow, 'cutter.flutes': 1 })).toEqual([]);
  });

  it('want a larger bite where nothing else is left, and say when nothing cures them', () => {
    const one = { 'cutter.flutes': 1, machine: { feed: 800, slowest: 18_000 } };
    const [thin] = found(one);
    // 0.036 x 18,000 / 800 = 0.81 of nominal: bite 1.5 (1 - sqrt(1 - 0.81^2)) = 0.6204, rounded up.
    expect(thin!.numbers.enoughAllowance).toBeCloseTo(0.621, 9);
    expect(
      found({ ...one, passes: { allowance: 0.621 } }).filter((f) => f.do.startsWith('Finishing')),
    ).toEqual([]);
    const [none] = found({ 'cutter.flutes': 1, machine: { feed: 300, slowest: 18_000 } });
    expect(none!.do).toContain('Neither feed, turns nor flutes of this machine are enough: use a sharp');
  });

  it('that take more feed warn when it is too much for another pass of that cutter', () => {
    // A bite of 0.05 thins to 2 sqrt(1/60 x 59/60) = 0.256: 0.036 / 0.256 x 36,000 = 5062, which in the slot is 0.14.
    const [thin] = found({ 'cutter.feed': 1800, machine: { feed: 6000 }, passes: { allowance: 0.05 } });
    expect(thin!.do).toContain('leave cutter.feed out');
  });
});

describe('thick chips', () => {
  it('are told with the feed or the turns that would do', () => {
    // One diameter deep 0.12 mm at most, in the slot round the plug 5400 / 36,000 = 0.15: 4320, or 22,500 turns.
    const fast = { machine: { feed: 6000 }, 'cutter.feed': 5400 };
    const [thick] = found(fast);
    expect(codes([thick!])).toEqual(['thick-chips note']);
    expect(thick!.numbers).toMatchObject({ enoughFeed: 4320, enoughRpm: 22_500 });
    expect(found({ ...fast, 'cutter.feed': 4320 })).toEqual([]);
    expect(found({ ...fast, 'cutter.rpm': 22_500 })).toEqual([]);
    expect(codes(found({ ...fast, 'cutter.feed': 4330 }))).toEqual(['thick-chips note']);
    // Twice the range is loud; no faster spindle, no word of one.
    const [loud] = found({ machine: { feed: 9000, fastest: 20_000 }, 'cutter.feed': 9000 });
    expect(codes([loud!])).toEqual(['thick-chips warn']);
    expect(loud!.do).not.toContain('turn at');
  });
});

describe('deep steps', () => {
  it('are those over one diameter of the cutter that roughs: common practice, no source', () => {
    const [deep] = found({ passes: { roughingStep: 6 } });
    expect(codes([deep!])).toEqual(['deep-steps warn']);
    expect(deep!.numbers).toMatchObject({ step: 6, diameter: 3, enoughSteps: 2 });
    // Steps are equal: of 7.5 there are three of 2.5, of 6 two of 3.
    expect(codes(found({ passes: { roughingStep: 3.5 } }))).toEqual([]);
    expect(codes(found({ passes: { roughingStep: 3.8 } }))).toEqual(['deep-steps warn']);
    // 6.6 in two of 3.3.
    const [little] = found({ passes: { roughingStep: 3.3 }, 'stock.plug': 6.1 });
    expect(little!.numbers.step).toBeCloseTo(3.3, 9);
  });
});

describe('slow corners', () => {
  it('tell the feed and the chip there, and the ease that would do', () => {
    const [slow, ...more] = found({}, squarePair(60, 1.8));
    expect(more).toEqual([]);
    expect(codes([slow!])).toEqual(['slow-corners note']);
    // 60 sqrt(250 x 0.3) = 519.6; wrapped round past a right angle, so no thinning: 519.6 / 36,000.
    expect(slow!.numbers).toMatchObject({ places: 4, turn: expect.closeTo(0.3, 9) });
    expect(slow!.numbers.cornerFeed).toBeCloseTo(519.6, 1);
    expect(slow!.numbers.chip).toBeCloseTo(519.6 / 36_000, 6);
    // (feed / 60)^2 / 250 for the feed that was set.
    expect(slow!.numbers.fullFeedEase).toBeCloseTo((slow!.numbers.feed! / 60) ** 2 / 250, 9);
    expect(slow!.zone!.lines!.length).toBe(4);
    expect(slow!.where!.map((v) => Math.abs(v))).toEqual([
      expect.closeTo(30 - 1.8 * (1 - Math.SQRT1_2), 6),
      expect.closeTo(30 - 1.8 * (1 - Math.SQRT1_2), 6),
    ]);
  });

  it('are cured by that ease, where the chip just comes to the range', () => {
    const { enoughEase, least } = found({}, squarePair(60, 1.8))[0]!.numbers;
    expect(found({}, squarePair(60, 1.5 + enoughEase!))).toEqual([]);
    const chip = (cornerSpeed(250, enoughEase!) / 36_000) * cornerThinning(0.3, 1.5, enoughEase!);
    expect(chip).toBeCloseTo(least!, 6);
    // What comes near it is let pass: our own choice.
    expect(found({}, squarePair(60, 1.5 + 0.9 * enoughEase!))).toEqual([]);
    expect(found({}, squarePair(60, 1.5 + 0.4 * enoughEase!)).length).toBe(1);
  });

  it('stop the cutter where the path has no room to turn', () => {
    const [still] = found({}, squarePair(60, 1.5));
    expect(codes([still!])).toEqual(['slow-corners warn']);
    expect(still!.do).toContain('the cutter stops there');
    expect(still!.do).not.toMatch(/NaN|Infinity/);
  });

  it('are none with a quick machine, a slow feed, or nothing light to finish', () => {
    expect(found({ machine: { acceleration: 50_000 } }, squarePair(60, 1.8))).toEqual([]);
    expect(codes(found({ 'cutter.feed': 500 }, squarePair(60, 1.8)))).not.toContain('slow-corners note');
    expect(found({ passes: { allowance: 0 } }, squarePair(60, 1.8))).toEqual([]);
  });

  it('do not advise an ease beyond the diameter', () => {
    const [slow] = found({ machine: { acceleration: 40 } }, squarePair(60, 1.8));
    expect(slow!.numbers.enoughEase).toBeGreaterThan(3);
    expect(slow!.do).toContain('No sensible ease');
    expect(slow!.do).not.toContain('An ease of');
    const [more] = found({ machine: { acceleration: 110 } }, squarePair(60, 1.8));
    expect(more!.numbers.enoughEase).toBeGreaterThan(3);
    expect(more!.numbers.enoughEase).toBeLessThan(12);
    expect(more!.do).toContain('No sensible ease');
    // One flute and so many turns: 60 sqrt(40 x 0.3) / (1 x 0.036) is under the spindle's slowest.
    expect(slow!.do).toContain('no speed of this machine');
    const [turned] = found({ machine: { acceleration: 40, slowest: 5000 } }, squarePair(60, 1.8));
    // 207.8 / 0.036 = 5773 with one flute; with two under 5000.
    expect(turned!.do).toContain('5700 turns a minute or fewer with 1 flute');
  });

  it('of a mirrored plug lie on the piece', () => {
    const frame = (dx: number): Region => ({
      contours: [roundedSquare(60, 20), reversedContour(roundedSquare(30, 1.8))].map((c) =>
        c.map((e) => ({ ...e, x0: e.x0 + dx, x1: e.x1 + dx, cx: e.r === 0 ? 0 : e.cx + dx })),
      ),
    });
    const [slow] = found(
      {},
      { pocket: { contours: [roundedSquare(60, 20)] }, plug: mirrorX(frame(40)), mirrored: true },
    );
    expect(slow!.code).toBe('slow-corners');
    expect(slow!.where![0]).toBeGreaterThan(20);
    for (const e of slow!.zone!.lines!.flat()) expect(e.x0).toBeGreaterThan(20);
    expect(slow!.do).toContain('4 of the plug');
  });
});

it('the shipped recipes get calm notes at most, in plain numbers', () => {
  const seen = new Map<string, number>();
  for (const file of readdirSync('patterns').filter((f) => f.endsWith('.json'))) {
    const recipe = readRecipe(readFileSync(`patterns/${file}`, 'utf8'), file);
    const tight = recipe.cutter.diameter / 2 + recipe.cutter.ease;
    const list = foundIn(recipe, squarePair(60, tight));
    expect(list.length, file).toBeLessThanOrEqual(2);
    for (const f of list) {
      expect(f.severity, `${file} ${f.do}`).toBe('note');
      expect(f.do).not.toMatch(/NaN|Infinity|undefined|null/);
      for (const [key, value] of Object.entries(f.numbers)) expect(Number.isFinite(value), key).toBe(true);
      if (recipe.units === 'in') expect(f.do).not.toMatch(/\d mm(?!\/s2)/);
      seen.set(f.code, (seen.get(f.code) ?? 0) + 1);
    }
  }
  expect([...seen.keys()].sort()).toEqual(['slow-corners', 'thin-chips']);
  expect(seen.get('thin-chips')).toBeLessThanOrEqual(2);
});

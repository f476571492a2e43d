import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pair } from '../../src/fit/pair.js';
import { bounds, reversedContour } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import { insideRuns } from '../../src/inspect/sums/plan/corners.js';
import { planOf } from '../../src/inspect/sums/plan/plan.js';
import type { Stage } from '../../src/inspect/sums/plan/stage.js';
import { makeOutline } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import type { Recipe } from '../../src/recipe/recipe.js';
import { exampleText } from '../recipe/example.js';
import { roundedSquare, squarePair } from '../support/square.js';

const recipeOf = (changes: Record<string, unknown> = {}): Recipe =>
  readRecipe(exampleText(changes), 'x.json');

function plan(changes: Record<string, unknown> = {}, pair: Pair = squarePair(40, 2)) {
  const recipe = recipeOf(changes);
  return planOf(recipe, makeOutline(recipe.outline.shape, recipe.outline.values), pair);
}

/** One cutter of 3 mm, 2 flutes, white ash and walnut; a pocket 6 deep, a loose plug 7 high. */
const PLAIN = {
  roughing: undefined,
  'cutter.diameter': 3,
  'cutter.cuts': undefined,
  'cutter.rpm': 12_000,
  'cutter.feed': 1200,
  'stock.field': 8,
  'stock.plug': 7,
  depth: 6,
  skin: 2,
};

const stageOf = (stages: readonly Stage[], part: string, name: string): Stage =>
  stages.find((s) => s.part === part && s.name === name)!;

describe('a square pocket of 40 with corners of 2, by hand', () => {
  const { stages, seconds } = plan(PLAIN);

  it('is roughed, then finished, and the plug after it', () => {
    expect(stages.map((s) => `${s.part} ${s.name} ${s.uses}`)).toEqual([
      'pocket roughing cutter',
      'pocket finishing cutter',
      'plug roughing cutter',
      'plug finishing cutter',
    ]);
    expect(seconds).toBeCloseTo(
      stages.reduce((sum, s) => sum + s.seconds, 0),
      9,
    );
  });

  it('roughs the area less the allowance in two steps', () => {
    const s = stageOf(stages, 'pocket', 'roughing');
    expect([s.depth, s.steps, s.step]).toEqual([6, 2, 3]);
    // What 0.3 mm leaves: a square of 39.4 whose corners of 1.7 take (4 - pi) 1.7^2 off. Paths 45 % of 3 mm apart.
    const path = (2 * (39.4 ** 2 - (4 - Math.PI) * 1.7 ** 2)) / 1.35;
    expect(s.pathLength).toBeCloseTo(path, 6);
    expect(s.seconds).toBeCloseTo((path / 1200) * 60 * 1.1, 6);
    expect(s.chip.nominal).toBeCloseTo(0.05, 12);
    // 1,350 of 3,000: 2 sqrt(0.45 x 0.55).
    expect(s.chip.real).toBeCloseTo(0.05 * 2 * Math.sqrt(0.2475), 9);
    // One diameter deep: the charts as they are, 0.002 to 0.005 in a tooth of 1/8 in, in proportion to 3 mm.
    expect(s.chip.least).toBeCloseTo(0.002 * 25.4 * (3 / 3.175), 9);
    expect(s.chip.most).toBeCloseTo(0.005 * 25.4 * (3 / 3.175), 9);
    expect(s.cornerFeed).toBeNull();
  });

  it('finishes along the walls, slower in the corners', () => {
    const s = stageOf(stages, 'pocket', 'finishing');
    // The middle of the cutter runs on 4 lines of 36 and a circle of 2 - 1.5 in four corners.
    const round = 2 * Math.PI * 0.5;
    expect(s.pathLength).toBeCloseTo(144 + round, 6);
    const there = 60 * Math.sqrt(250 * 0.5);
    expect(there).toBeCloseTo(670.8, 1);
    expect(s.cornerFeed).toBeCloseTo(there, 6);
    expect(s.seconds).toBeCloseTo((144 / 1200 + round / there) * 60 * 1.1, 6);
    // 0.3 mm with 3 mm: 2 sqrt(0.1 x 0.9) = 0.6. Two diameters deep: three quarters of the charts.
    expect(s.bite).toBe(0.3);
    expect(s.chip.real).toBeCloseTo(0.03, 9);
    expect(s.chip.corrected).toBeCloseTo(0.75, 12);
    expect(s.chip.least).toBeCloseTo(0.75 * 0.048, 9);
    expect(s.chip.beyond).toBe(false);
  });

  it('cuts the loose plug free by a slot, through its wood and into the board', () => {
    const rough = stageOf(stages, 'plug', 'roughing');
    expect([rough.depth, rough.steps, rough.step, rough.bite]).toEqual([7.5, 3, 2.5, 3]);
    // 1.5 + 0.3 outside: 4 lines of 36 and circles of 2 + 1.8.
    expect(rough.pathLength).toBeCloseTo(3 * (144 + 2 * Math.PI * 3.8), 6);
    const s = stageOf(stages, 'plug', 'finishing');
    expect(s.pathLength).toBeCloseTo(144 + 2 * Math.PI * 3.5, 6);
    // Outside corners are large arcs: 60 sqrt(250 x 3.5) = 1775 is more than the feed, and they are not inside ones.
    expect(s.cornerFeed).toBeNull();
    expect(s.seconds).toBeCloseTo((s.pathLength / 1200) * 60 * 1.1, 6);
    expect(s.chip.beyond).toBe(false);
    expect(s.chip.corrected).toBeCloseTo(0.625, 12);
  });

  it('clears the whole face round a plug on a carrier', () => {
    const on = plan({ ...PLAIN, 'fit.plug': 'carrier', 'stock.plug': 14 }).stages;
    const s = stageOf(on, 'plug', 'roughing');
    // Down to the carrier: 6 - 0.5 + 3 unless the recipe's defaults say otherwise.
    const { fit } = recipeOf({ ...PLAIN, 'fit.plug': 'carrier', 'stock.plug': 14 });
    expect(s.depth).toBe(6 - fit.glueGap + fit.sawRoom);
    const plug = 40.6 ** 2 - (4 - Math.PI) * 2.3 ** 2;
    expect(s.pathLength / s.steps).toBeCloseTo((Math.PI * 48 ** 2 - plug) / 1.35, 5);
  });
});

describe('passes', () => {
  it('have a last one when finishing goes in steps, at the feed of the others', () => {
    const { stages } = plan({ ...PLAIN, 'cutter.feed': undefined, passes: { finishingStep: 2.5 } });
    expect(stages.map((s) => s.name).slice(0, 3)).toEqual(['roughing', 'finishing', 'last pass']);
    const [, steps, last] = stages;
    expect([steps!.steps, steps!.step, last!.steps, last!.step]).toEqual([3, 2, 1, 6]);
    expect(steps!.pathLength).toBeCloseTo(3 * last!.pathLength, 9);
    expect(last!.feed).toBe(steps!.feed);
    expect(last!.chip.nominal).toBeCloseTo(steps!.chip.nominal, 12);
    expect(last!.seconds).toBeCloseTo(steps!.seconds / 3, 9);
    expect([last!.bite, last!.chip.real]).toEqual([null, null]);
    // One step that reaches the floor is no step.
    expect(plan({ ...PLAIN, passes: { finishingStep: 7.5 } }).stages.map((s) => s.name)).not.toContain(
      'last pass',
    );
  });

  it('clear with the finishing cutter what the roughing cutter leaves', () => {
    const { stages } = plan({
      ...PLAIN,
      'cutter.feed': undefined,
      roughing: { diameter: 12 },
      passes: { clearing: true },
    });
    const s = stageOf(stages, 'pocket', 'clearing');
    expect([s.uses, s.steps, s.step, s.bite]).toEqual(['cutter', 2, 3, 3]);
    // Four corners of 1.7 that a circle of 6 leaves of the square less its allowance: (4 - pi) (6^2 - 1.7^2).
    expect(s.pathLength).toBeCloseTo((2 * (4 - Math.PI) * (36 - 1.7 ** 2)) / 1.35, 3);
    expect(
      stageOf(plan({ ...PLAIN, passes: { clearing: true } }).stages, 'pocket', 'clearing'),
    ).toBeUndefined();
  });

  it('know how deep each part is cut', () => {
    const deep = (part: string, changes = {}): number =>
      stageOf(plan({ ...PLAIN, ...changes }).stages, part, 'finishing').depth;
    expect(deep('pocket')).toBe(6);
    expect(deep('pocket', { skin: 0, 'stock.field': 6 })).toBe(6.5);
    expect(deep('plug')).toBe(7.5);
    expect(deep('plug', { table: { onionSkin: 0.4 } })).toBeCloseTo(6.6, 12);
  });

  it('of one pair are those of the recipe asked with', () => {
    const pair = squarePair(40, 2);
    const feeds = [1200, 900, 1200].map(
      (feed) => plan({ ...PLAIN, 'cutter.feed': feed }, pair).stages[0]!.feed,
    );
    expect(feeds).toEqual([1200, 900, 1200]);
  });

  it('suit the wood that they cut', () => {
    const { stages } = plan({ ...PLAIN, 'woods.field': 'basswood', 'woods.plug': 'red alder' });
    const [pocket, plug] = [stageOf(stages, 'pocket', 'roughing'), stageOf(stages, 'plug', 'roughing')];
    expect([pocket.wood, pocket.kind, pocket.known]).toEqual(['basswood', 'soft', true]);
    expect([plug.wood, plug.kind, plug.known]).toEqual(['red alder', 'hard', false]);
    expect(pocket.chip.least).toBeGreaterThan(plug.chip.least);
  });
});

describe('inside corners', () => {
  /** A square of 60 round a hole of 30: the pocket turns in at the outer corners, the plug in the hole. */
  const frame = { contours: [roundedSquare(60, 4), reversedContour(roundedSquare(30, 3))] };
  const pair: Pair = { pocket: frame, plug: frame, mirrored: false };

  it('are those of the pocket from within and of the plug from without', () => {
    const [pocket, plug] = (['pocket', 'plug'] as const).map((part) => insideRuns(pair, part, 1.5));
    expect([pocket!.length, plug!.length]).toEqual([4, 4]);
    for (const run of pocket!) expect(run.map((a) => a.turn)).toEqual([expect.closeTo(2.5, 9)]);
    for (const run of plug!) expect(run.map((a) => a.turn)).toEqual([expect.closeTo(1.5, 9)]);
    const far = ({ edge }: { edge: { x0: number } }): number => Math.abs(edge.x0);
    expect(Math.min(...pocket!.flat().map(far))).toBeGreaterThan(20);
    expect(Math.max(...plug!.flat().map(far))).toBeLessThan(20);
  });

  it('lie as the pocket does when the plug is mirrored', () => {
    const aside = {
      contours: [roundedSquare(60, 4), reversedContour(roundedSquare(30, 3))].map((c) =>
        c.map((e) => ({ ...e, x0: e.x0 + 50, x1: e.x1 + 50, cx: e.cx + 50 })),
      ),
    };
    const runs = insideRuns({ pocket: aside, plug: mirrorX(aside), mirrored: true }, 'plug', 1.5);
    expect(runs.length).toBe(4);
    const box = bounds(runs.map((run) => run.map((a) => a.edge)));
    expect([box.minX, box.maxX]).toEqual([expect.closeTo(35, 9), expect.closeTo(65, 9)]);
  });
});

const shipped = readdirSync('patterns').filter((f) => f.endsWith('.json'));

describe('feeds that nobody gave', () => {
  it('make chips in the range for every shipped recipe, as far as the machine goes', () => {
    expect(shipped.length).toBeGreaterThan(30);
    let judged = 0;
    for (const file of shipped) {
      const recipe = readRecipe(readFileSync(`patterns/${file}`, 'utf8'), file);
      const { stages } = planOf(
        recipe,
        makeOutline(recipe.outline.shape, recipe.outline.values),
        squarePair(40, 3),
      );
      for (const { feed, chip, capped, part, name } of stages) {
        expect(feed, file).toBeLessThanOrEqual(recipe.machine.feed);
        if (capped) {
          // Rounded down to ten mm or half an inch.
          expect(feed, file).toBeGreaterThan(recipe.machine.feed - 12.7);
          continue;
        }
        judged++;
        expect(chip.real!, `${file} ${part} ${name}`).toBeGreaterThan(chip.least);
        expect(chip.real!, `${file} ${part} ${name}`).toBeLessThan(chip.most);
      }
    }
    expect(judged).toBeGreaterThan(50);
  });

  it('change as they ought: less time by more feed, thinner chips by more turns', () => {
    const number = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(
        number(100, 2900),
        number(1, 100),
        number(10_000, 29_000),
        number(1, 1000),
        (feed, df, rpm, dr) => {
          const at = (f: number, r: number) => plan({ ...PLAIN, 'cutter.feed': f, 'cutter.rpm': r }).stages;
          const [base, faster, spun] = [at(feed, rpm), at(feed + df, rpm), at(feed, rpm + dr)];
          base.forEach((s, k) => {
            expect(faster[k]!.seconds).toBeLessThan(s.seconds);
            expect(spun[k]!.chip.real!).toBeLessThan(s.chip.real!);
            expect(spun[k]!.seconds).toBe(s.seconds);
          });
        },
      ),
      { seed: 6, numRuns: 40 },
    );
  });
});

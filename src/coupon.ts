import { build, figures, sheetOf } from './build.js';
import type { Safe } from './cutter/safe.js';
import { type Board, boardOf } from './fit/coupon/board.js';
import { boxRegion, grown } from './fit/coupon/box.js';
import { leastSize, planStep, type StepPlan } from './fit/coupon/plan.js';
import { islandsOf } from './fit/islands.js';
import type { Pair } from './fit/pair.js';
import { makePair } from './fit/split.js';
import type { Assets } from './generators/generator.js';
import { type Box, type Contour, circle, type Region } from './geometry/region.js';
import { placedRegion } from './geometry/transform.js';
import { couponFindings } from './inspect/coupon-findings.js';
import type { Finding } from './inspect/finding.js';
import { inspect } from './inspect/index.js';
import type { Outline } from './outline/outline.js';
import type { Coupon, CouponStep } from './output/coupon.js';
import type { Job } from './output/job.js';
import { cornerRadius, type Recipe } from './recipe/recipe.js';
import { BadInput, Refusal } from './schema/fault.js';
import { lengthText } from './schema/units.js';

export interface CouponWish {
  /** Clearances of the steps, mm per side, tightest first. */
  readonly ladder: readonly number[];
  /** Most width and height of the figure of a step, mm; null: 40, or the least that holds the hard spots. */
  readonly size: number | null;
}

export const USUAL_SIZE = 40;
export const MOST_SIZE = 200;

/** The wood round the figure is the recipe's margin, but no more than this, mm: enough that the edge is not what fails (our own choice). */
export const MOST_EDGE = 5;

/** What is found about one clearance says nothing about a ladder of them: finding that out is what the coupon is for. */
const OF_CLEARANCE = new Set([
  'uncertain-clearance',
  'plug-swells',
  'gap-opens',
  'leans-wedge',
  'leans-tight',
]);

/**
 * A trial piece for a recipe: the hardest spots of its pattern, once a step, with the clearance of each step. Pure, as
 * `build`, and throws as it does; BadInput also for a size that cannot hold the spots and clearances too wide.
 */
export function coupon(recipe: Recipe, assets: Assets, { ladder, size }: CouponWish): Coupon {
  const whole = build({ ...recipe, boards: { ...recipe.boards, plug: null, field: null } }, assets);
  checkLadder(recipe, ladder);
  const { wood } = whole.inlays[0]!;
  // The trial piece is flat, whatever its pattern will lie on.
  const { bowl: _, ...flat } = recipe;
  const own: Recipe = {
    ...flat,
    name: `${recipe.name}-coupon`,
    woods: { ...recipe.woods, plug: wood },
  };
  const planned = plan(own, whole.safe, ladder.length, size);
  const board = boardOf(ladder.length, planned.step.width, planned.step.height);
  const steps = ladder.map((clearance, k) => stepOf(own, planned.step, board.boxes[k]!, clearance, k));
  return {
    job: jobOf(own, planned, board, steps, whole.inlays.length),
    steps,
    spots: planned.step.spots,
    size: planned.size,
    edge: planned.edge,
    board,
    whole: { name: recipe.name, pair: whole.pair, box: whole.outline.box },
  };
}

function checkLadder({ cutter, fit, units }: Recipe, ladder: readonly number[]): void {
  const r = cornerRadius(cutter);
  const most = fit.from === 'both' ? 2 * r : r;
  const over = ladder.find((c) => c >= most);
  if (over !== undefined)
    throw new BadInput([
      {
        where: '--ladder',
        message: `${lengthText(over, units)} per side is too much for a corner radius of ${lengthText(r, units)}: less than ${lengthText(most, units)}`,
      },
    ]);
}

interface Planned {
  readonly step: StepPlan;
  readonly size: number;
  readonly edge: number;
}

function plan(recipe: Recipe, safe: Safe, dots: number, size: number | null): Planned {
  const { cutter, outline, units } = recipe;
  const r = cornerRadius(cutter);
  const margin = Number(outline.values.margin ?? 0);
  const edge = Math.max(Math.min(margin, MOST_EDGE), 2 * r);
  // What a window leaves over of a limb is dropped, whatever the recipe wants of its own limbs.
  const request = {
    rule: { r, thin: 'drop', touch: cutter.touch },
    edge,
    dots,
    size: size ?? USUAL_SIZE,
  } as const;
  const step = planStep(safe, request);
  if (step) return { step, size: request.size, edge };
  const least = leastSize(safe, request, MOST_SIZE);
  if (least === null)
    throw new Refusal(
      'coupon-too-large',
      `the hardest spots of this pattern fit on no coupon up to ${lengthText(MOST_SIZE, units)} a step; try the fit on a piece of its own`,
    );
  if (size === null) return { step: planStep(safe, { ...request, size: least })!, size: least, edge };
  throw new BadInput([
    {
      where: '--size',
      message: `${lengthText(size, units)} is too small for the hardest spots of this pattern with this cutter: at least ${units === 'in' ? `${Math.ceil((least / 25.4) * 100) / 100} in` : `${least} mm`}`,
    },
  ]);
}

function stepOf(recipe: Recipe, plan: StepPlan, box: Box, clearance: number, k: number): CouponStep {
  const region = placedRegion(plan.figure, box.minX, box.minY);
  const safe: Safe = { region, pieces: [{ name: `step ${k + 1}`, region }], changes: [] };
  return {
    number: k + 1,
    clearance,
    box,
    safe,
    pair: makePair(safe, { ...recipe.fit, clearance }),
    dots: plan.dots
      .slice(0, k + 1)
      .map(([x, y]): Contour => circle(box.minX + x, box.minY + y, cornerRadius(recipe.cutter))),
  };
}

function jobOf(
  recipe: Recipe,
  { step, edge }: Planned,
  board: Board,
  steps: readonly CouponStep[],
  woods: number,
): Job {
  const outline = outlineOf(board.boxes, edge, {
    minX: -board.width / 2,
    maxX: board.width / 2,
    minY: -board.height / 2,
    maxY: board.height / 2,
  });
  const pieces = steps.flatMap((s) => s.safe.pieces);
  const safe: Safe = {
    region: { contours: steps.flatMap((s) => s.safe.region.contours) },
    pieces,
    changes: [],
  };
  const pair: Pair = {
    pocket: all(steps.map((s) => s.pair.pocket)),
    plug: all(steps.map((s) => s.pair.plug)),
    mirrored: steps[0]!.pair.mirrored,
  };
  return {
    recipe,
    outline,
    safe,
    pair,
    islands: islandsOf(pair),
    layouts: { plug: null, pocket: null },
    inlays: [{ wood: recipe.woods.plug, name: 'inlay 1', artwork: { pieces }, safe, pair, into: [] }],
    sheet: sheetOf(outline),
    findings: [...couponFindings(step, woods, recipe.units), ...findingsOf(recipe, edge, steps)],
    numbers: {
      ...figures(recipe, safe, pair),
      stepArea: step.width * step.height,
      couponArea: board.width * board.height,
    },
  };
}

/** What is found of one step, since each is pressed by itself; they are alike but for the clearance. */
function findingsOf(recipe: Recipe, edge: number, steps: readonly CouponStep[]): Finding[] {
  const step = steps[Math.floor((steps.length - 1) / 2)]!;
  const setup = {
    recipe: { ...recipe, fit: { ...recipe.fit, clearance: step.clearance } },
    outline: outlineOf([step.box], edge, step.box),
    artwork: { pieces: step.safe.pieces },
    safe: step.safe,
    pair: step.pair,
  };
  return inspect(setup).filter((f) => !OF_CLEARANCE.has(f.code));
}

function all(regions: readonly Region[]): Region {
  return { contours: regions.flatMap((r) => r.contours) };
}

function outlineOf(boxes: readonly Box[], edge: number, box: Box): Outline {
  return {
    shape: 'coupon',
    face: all(boxes.map(boxRegion)),
    inner: all(boxes.map((b) => boxRegion(grown(b, -edge)))),
    box,
    sizes: { width: box.maxX - box.minX, height: box.maxY - box.minY, margin: edge },
  };
}

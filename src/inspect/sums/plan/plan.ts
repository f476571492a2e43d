import type { Pair } from '../../../fit/pair.js';
import { area, contourArea, perimeter, type Region } from '../../../geometry/region.js';
import type { Outline } from '../../../outline/outline.js';
import type { Recipe } from '../../../recipe/recipe.js';
import { cornerFeed } from '../../../shop/feed.js';
import { clearingPath, parallelPath, secondsFor } from '../../../shop/passes.js';
import { cutsOf } from '../machine/cuts.js';
import { laid, type Part, reachOf } from '../reach/reach.js';
import { insideRuns, type Run, tightest } from './corners.js';
import { type Cut, type Stage, speeds, sweptRadius } from './stage.js';

/** The stages of both parts, in the order they are cut: the pocket's, then the plug's. */
export interface Plan {
  readonly stages: readonly Stage[];
  /** Of all stages together. Estimate. */
  readonly seconds: number;
}

const known = new WeakMap<Pair, { recipe: Recipe; plan: Plan }>();

/**
 * How a pair is cut: passes, feeds, chips, paths and times. With several woods, `recipe.woods.plug` is to name the wood
 * of this plug.
 *
 * Estimate. Assumed: roughing leaves an even allowance; a carrier's face is cleared whole round the plug, a loose plug
 * is cut free by one slot as wide as the roughing cutter; clearing goes no deeper a pass than a diameter of its cutter;
 * arcs of the finishing path are driven as fast as the machine's acceleration lets them, its speeding up and slowing
 * down before and after is left out; MOVES of shop/passes.ts for the rest.
 */
export function planOf(recipe: Recipe, outline: Outline, pair: Pair): Plan {
  const before = known.get(pair);
  if (before?.recipe === recipe) return before.plan;
  const stages = (['pocket', 'plug'] as const).flatMap((part) =>
    laid(pair, part).contours.length > 0 ? new PartPlan(recipe, outline, pair, part).stages() : [],
  );
  const plan = { stages, seconds: stages.reduce((sum, s) => sum + s.seconds, 0) };
  known.set(pair, { recipe, plan });
  return plan;
}

/** An onion skin as thick as its part leaves this much to cut, mm: next to nothing. */
const SHALLOWEST = 0.01;

class PartPlan {
  readonly #recipe: Recipe;
  readonly #outline: Outline;
  readonly #pair: Pair;
  readonly #part: Part;
  readonly #walls: Region;
  /** mm. */
  readonly #perimeter: number;
  /** Outer contours less holes. */
  readonly #turns: number;
  /** 1 where a wider cutter path is longer: round the plug. */
  readonly #out: number;

  constructor(recipe: Recipe, outline: Outline, pair: Pair, part: Part) {
    this.#recipe = recipe;
    this.#outline = outline;
    this.#pair = pair;
    this.#part = part;
    this.#walls = laid(pair, part);
    this.#perimeter = perimeter(this.#walls);
    this.#turns = this.#walls.contours.reduce((n, c) => n + (contourArea(c) > 0 ? 1 : -1), 0);
    this.#out = part === 'pocket' ? -1 : 1;
  }

  stages(): Stage[] {
    const { cutter, passes, roughing } = this.#recipe;
    const inSteps = passes.finishingStep !== null && passes.finishingStep < this.#depth - 1e-9;
    return [
      this.#roughing(),
      ...(passes.clearing && roughing ? [this.#clearing()] : []),
      this.#finishing('finishing', inSteps ? passes.finishingStep! : this.#depth, passes.allowance || null),
      ...(inSteps ? [this.#lastPass(cutter.feed)] : []),
    ];
  }

  get #depth(): number {
    const { deep } = cutsOf(this.#recipe, this.#pair)[this.#part === 'pocket' ? 0 : 1];
    return Math.max(deep, SHALLOWEST);
  }

  #roughing(): Stage {
    const { fit, passes, roughing } = this.#recipe;
    const uses = roughing ? 'roughing' : 'cutter';
    const radius = sweptRadius(this.#recipe, uses);
    const cut = {
      part: this.#part,
      name: 'roughing',
      uses,
      deepest: passes.roughingStep,
      turn: null,
    } as const;
    if (this.#part === 'plug' && fit.plug === 'loose') {
      const slot = this.#parallel(radius + passes.allowance);
      return this.#straight(
        { ...cut, depth: this.#depth, bite: 2 * radius },
        slot,
        'one slot round each part',
      );
    }
    const bite = (passes.stepover / 100) * 2 * radius;
    const waste = roughing ? this.#areas(radius).reached : this.#withoutAllowance();
    const way = 'area reached / distance between paths';
    return this.#straight({ ...cut, depth: this.#depth, bite }, clearingPath(waste, bite), way);
  }

  /** Area of the waste less the strip of allowance; the cutter that the pattern was made for gets to all of it. mm2. */
  #withoutAllowance(): number {
    const { allowance } = this.#recipe.passes;
    const strip = allowance * this.#parallel(allowance / 2);
    const own = area(this.#walls);
    const waste = this.#part === 'pocket' ? own : area(this.#outline.face) - own;
    return Math.max(0, waste - strip);
  }

  #clearing(): Stage {
    const { cutter, passes } = this.#recipe;
    const diameter = 2 * sweptRadius(this.#recipe, 'cutter');
    const { left } = this.#areas(sweptRadius(this.#recipe, 'roughing'));
    const cut: Cut = {
      part: this.#part,
      name: 'clearing',
      uses: 'cutter',
      depth: this.#depth,
      deepest: Math.min(passes.roughingStep, cutter.diameter),
      // In a tight place it cuts with its whole width.
      bite: diameter,
      turn: null,
    };
    const path = clearingPath(left, (passes.stepover / 100) * diameter);
    return this.#straight(cut, path, 'area the roughing cutter leaves / distance between paths');
  }

  #areas(radius: number) {
    return reachOf(this.#recipe, this.#outline, this.#pair, this.#part, radius, this.#recipe.passes.allowance)
      .areas;
  }

  #finishing(name: 'finishing' | 'last pass', deepest: number, bite: number | null): Stage {
    const radius = sweptRadius(this.#recipe, 'cutter');
    const runs = insideRuns(this.#pair, this.#part, radius);
    const turn = tightest(runs)?.turn ?? null;
    const cut: Cut = { part: this.#part, name, uses: 'cutter', depth: this.#depth, deepest, bite, turn };
    const stage = speeds(this.#recipe, cut);
    const once = this.#parallel(radius);
    const { acceleration } = this.#recipe.machine;
    const seconds = stage.steps * (secondsFor(once, stage.feed) + slowed(runs, stage.feed, acceleration));
    return {
      ...stage,
      pathLength: once * stage.steps,
      seconds,
      formula: `walls' length at the cutter's middle${times(stage)}; path / feed, inside corners at most at sqrt(acceleration x radius of path), a tenth more for moves`,
    };
  }

  /** Follows the walls at the feed of finishing, since what it takes is not known. */
  #lastPass(feed: number | null): Stage {
    const { passes } = this.#recipe;
    const before = this.#finishing('finishing', passes.finishingStep!, passes.allowance || null);
    const last = this.#finishing('last pass', this.#depth, null);
    if (feed !== null) return last;
    const slower = before.feed / last.feed;
    return {
      ...last,
      feed: before.feed,
      capped: before.capped,
      chip: { ...last.chip, nominal: last.chip.nominal * slower },
      cornerFeed: before.cornerFeed,
      seconds: before.seconds / before.steps,
    };
  }

  /** A stage whose path is not looked at corner by corner; `once`: its path on one level, mm. */
  #straight(cut: Cut, once: number, way: string): Stage {
    const stage = speeds(this.#recipe, cut);
    const pathLength = once * stage.steps;
    return {
      ...stage,
      pathLength,
      seconds: secondsFor(pathLength, stage.feed),
      formula: `${way}${times(stage)}; path / feed, a tenth more for moves`,
    };
  }

  /** The line that many mm off the walls on the cutter's side. */
  #parallel(distance: number): number {
    return parallelPath(this.#perimeter, this.#turns, this.#out * distance);
  }
}

function times({ steps }: { readonly steps: number }): string {
  return steps === 1 ? '' : ` x ${steps} steps`;
}

/** Seconds that inside corners take over what they would take at the full feed. */
function slowed(runs: readonly Run[], feed: number, acceleration: number): number {
  let sum = 0;
  for (const { turn, path } of runs.flat()) {
    const there = cornerFeed(acceleration, turn);
    if (there > 0 && there < feed) sum += secondsFor(path, there) - secondsFor(path, feed);
  }
  return sum;
}

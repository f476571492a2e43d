import { midpoint } from '../geometry/edge.js';
import type { Recipe } from '../recipe/recipe.js';
import { lengthText, MM_PER_INCH } from '../schema/units.js';
import { chipOf, cornerThinning, cornerFeed as feedOn, radiusFor, rpmOf } from '../shop/feed.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { feedText, settableRpm } from './stage-words.js';
import { insideRuns, type Run, tightest } from './sums/plan/corners.js';
import { planOf } from './sums/plan/plan.js';
import { type Stage, sweptRadius } from './sums/plan/stage.js';

/**
 * Corners whose chips come that near to the range are left alone, as share of its least: the acceleration is no better
 * known. Our own choice.
 */
const NEARLY = 0.8;

/** Ease is told rounded up to this, mm. */
const EASE_STEP = { mm: 0.1, in: MM_PER_INCH / 200 } as const;

/** A path that turns on less stands still in the corner, mm. */
const STILL = 1e-6;

interface Slow {
  readonly stage: Stage;
  readonly runs: readonly Run[];
  readonly turn: number;
  readonly feed: number;
  readonly chip: number;
}

/**
 * Inside corners where the machine cannot hold its feed, so that the finishing pass cuts chips too thin for the wood.
 * Estimate: centripetal acceleration alone, and the chip as it is with the cutter wrapped round by the corner; see
 * shop/feed.ts. Slow corners whose chips stay thick enough are no finding.
 */
export function cornerFeed({ recipe, outline, pair }: Setup): Finding[] {
  const { cutter, machine, units } = recipe;
  const radius = sweptRadius(recipe, 'cutter');
  const slow = planOf(recipe, outline, pair)
    .stages.filter((s) => s.name === 'finishing' && s.bite !== null)
    .flatMap((stage): Slow[] => {
      const runs = insideRuns(pair, stage.part, radius, (turn) => rubs(recipe, stage, turn));
      const worst = tightest(runs);
      if (!worst) return [];
      const feed = feedOn(machine.acceleration, worst.turn);
      return [{ stage, runs, turn: worst.turn, feed, chip: chipAt(recipe, stage, worst.turn) }];
    });
  if (slow.length === 0) return [];
  const share = ({ chip, stage }: Slow): number => chip / stage.chip.least;
  const worst = slow.reduce((a, b) => (share(b) < share(a) ? b : a));
  if (share(worst) > NEARLY) return [];
  const { stage, turn, feed, chip } = worst;
  const runs = slow.flatMap((s) => s.runs);
  const full = radiusFor(stage.feed, machine.acceleration);
  const enough = easeFor(recipe, stage, full);
  const places = slow
    .map(({ stage: { part }, runs: { length } }) => `${length} of the ${part}`)
    .join(' and ');
  const there =
    turn < STILL
      ? `the path has no room to turn, so the cutter stops there and scorches (estimate)`
      : `the path turns on as little as ${lengthText(turn, units)}: ${machine.acceleration} mm/s2 (machine.acceleration) lets it go ${feedText(feed, units)} there, not ${feedText(stage.feed, units)} (estimate), so chips fall to ${lengthText(chip, units)}, and under ${lengthText(stage.chip.least, units)} the wood may scorch`;
  const { edge } = tightest(worst.runs)!;
  return [
    {
      code: 'slow-corners',
      severity: turn < STILL ? 'warn' : 'note',
      where: midpoint(edge),
      numbers: {
        places: runs.length,
        turn,
        feed: stage.feed,
        cornerFeed: feed,
        chip,
        least: stage.chip.least,
        ease: cutter.ease,
        enoughEase: enough,
        fullFeedEase: full,
      },
      zone: { lines: runs.map((run) => run.map((a) => a.edge)) },
      do: `In tight inside corners (${places}), ${there}. ${cure(recipe, worst, enough, full)}`,
    },
  ];
}

/** Real chip of the finishing pass in a corner, mm. */
function chipAt(recipe: Recipe, stage: Stage, turn: number): number {
  const reached = Math.min(stage.feed, feedOn(recipe.machine.acceleration, turn));
  return chipOf(reached, stage.rpm, stage.tool.flutes) * thinningAt(recipe, stage, turn);
}

function thinningAt(recipe: Recipe, { bite }: Stage, turn: number): number {
  return cornerThinning(bite!, sweptRadius(recipe, 'cutter'), turn);
}

/** Whether the corner is slower than the pass, and its chip thinner than suits. */
function rubs(recipe: Recipe, stage: Stage, turn: number): boolean {
  return (
    feedOn(recipe.machine.acceleration, turn) < stage.feed &&
    chipAt(recipe, stage, turn) < stage.chip.least * (1 - 1e-6)
  );
}

/** An ease whose corners do not rub, mm; at most that of the full feed, where the corner slows nothing. */
function easeFor(recipe: Recipe, stage: Stage, full: number): number {
  let [low, high] = [0, full];
  for (let k = 0; k < 50; k++) {
    const middle = (low + high) / 2;
    if (rubs(recipe, stage, middle)) low = middle;
    else high = middle;
  }
  return high;
}

function cure(recipe: Recipe, { stage, turn, feed }: Slow, enough: number, full: number): string {
  const { cutter, machine, units } = recipe;
  const step = EASE_STEP[units];
  const text = (mm: number): string => lengthText(Math.ceil(mm / step) * step, units);
  // More than the cutter's diameter would change the pattern more than it helps.
  if (enough <= cutter.diameter) {
    const whole = full <= cutter.diameter ? `; ${text(full)} lets the full feed through` : '';
    const corner = text(sweptRadius(recipe, 'cutter') + enough);
    return `An ease of ${text(enough)} (cutter.ease), which rounds corners to ${corner}, keeps them thick enough${whole}. Otherwise use a sharp cutter and look for marks there.`;
  }
  const reached = feed * thinningAt(recipe, stage, turn);
  for (let { flutes } = stage.tool; flutes > 0 && reached > 0; flutes--) {
    const turns = settableRpm(rpmOf(reached, flutes, stage.chip.least), Math.floor);
    if (turns < machine.slowest) continue;
    const fewer = flutes < stage.tool.flutes ? ` with ${flutes} ${flutes === 1 ? 'flute' : 'flutes'}` : '';
    return `No sensible ease cures it; ${turns} turns a minute or fewer${fewer} would (cutter.rpm).`;
  }
  return 'No sensible ease, and no speed of this machine, cures it: use a sharp cutter and look for marks there.';
}

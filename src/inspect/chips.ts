import type { Recipe } from '../recipe/recipe.js';
import { inwards, lengthRange, lengthText, numberText } from '../schema/units.js';
import { biteFor, feedOf, rpmOf } from '../shop/feed.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { feedText, rangeText, settableFeed, settableRpm, stageText, upperFirst } from './stage-words.js';
import { planOf } from './sums/plan/plan.js';
import type { Stage } from './sums/plan/stage.js';

/** How far off the range is loud, as the range spans two charts that differ by as much themselves. Our own choice. */
const LOUD = { thin: 0.5, thick: 1.5 } as const;

/** Digits that feeds lose in their sums are no thin chip. */
const SAME = 1e-6;

/** Thinning is told when it is more than this. */
const TOLD = 0.95;

type Judged = Stage & { readonly bite: number; readonly chip: { readonly real: number } };

/** Chips too thin, which rub and scorch, and too thick, which may break the cutter: one finding of each a cutter. */
export function chips({ recipe, outline, pair }: Setup): Finding[] {
  const stages = planOf(recipe, outline, pair).stages.filter(
    (s): s is Judged => s.chip.real !== null && s.bite !== null,
  );
  return (['roughing', 'cutter'] as const).flatMap((uses) => {
    const own = stages.filter((s) => s.uses === uses);
    const thin = own.filter((s) => s.chip.real < s.chip.least * (1 - SAME));
    const thick = own.filter((s) => s.chip.real > s.chip.most * (1 + SAME));
    return [
      ...(thin.length > 0 ? [thinChips(recipe, thin, own)] : []),
      ...(thick.length > 0 ? [thickChips(recipe, thick)] : []),
    ];
  });
}

function thinChips(recipe: Recipe, thin: readonly Judged[], own: readonly Judged[]): Finding {
  const worst = thin.reduce((a, b) => (b.chip.real / b.chip.least < a.chip.real / a.chip.least ? b : a));
  const { chip } = worst;
  const cure = thicker(recipe, worst, own);
  return {
    code: 'thin-chips',
    severity: chip.real / chip.least < LOUD.thin ? 'warn' : 'note',
    where: null,
    numbers: { ...numbersOf(worst), passes: thin.length, ...cure.numbers },
    do: `${said(recipe, worst, thin)}, under the ${chipsText(recipe, worst)}: the edges rub, and the wood may scorch. ${cure.text}`,
  };
}

/** Which way to turn for thicker chips: more feed, else fewer turns, else fewer flutes, else a larger bite. Common practice. */
function thicker(
  { machine, units }: Recipe,
  stage: Judged,
  own: readonly Judged[],
): { text: string; numbers: Record<string, number> } {
  const { bite, chip, feed, rpm, tool, uses } = stage;
  // Chip load that would do, before it is thinned.
  const wanted = (chip.least * chip.nominal) / chip.real;
  const faster = settableFeed(feedOf(rpm, tool.flutes, wanted), units, Math.ceil);
  if (faster <= machine.feed) {
    const thick = own.some((s) => (s.chip.real * faster) / feed > s.chip.most * (1 + SAME));
    return {
      text: `Feed ${feedText(faster, units)} or more (${uses}.feed); more feed leaves a rougher wall.${
        thick
          ? ` Other passes of this cutter would then cut too thick: leave ${uses}.feed out, and each pass gets its own.`
          : ''
      }`,
      numbers: { enoughFeed: faster },
    };
  }
  const fastest = feedText(machine.feed, units);
  const slower = settableRpm(rpmOf(machine.feed, tool.flutes, wanted), Math.floor);
  if (slower >= machine.slowest)
    return {
      text: `At the ${fastest} that the machine does, turn at ${slower} a minute or fewer (${uses}.rpm).`,
      numbers: { enoughRpm: slower },
    };
  for (let flutes = tool.flutes - 1; flutes > 0; flutes--) {
    const turns = settableRpm(rpmOf(machine.feed, flutes, wanted), Math.floor);
    if (turns >= machine.slowest)
      return {
        text: `Neither more feed nor fewer turns of this machine are enough: use a cutter with ${flutes} ${flutes === 1 ? 'flute' : 'flutes'}, at ${fastest} and ${turns} turns a minute or fewer.`,
        numbers: { enoughFlutes: flutes, enoughRpm: turns },
      };
  }
  const share = (chip.least * tool.flutes * machine.slowest) / machine.feed;
  if (share < 1 && bite < tool.diameter / 2) {
    const allowance = inwards(biteFor(share, tool.diameter), units, Math.ceil);
    return {
      text: `Neither feed, turns nor flutes of this machine are enough: leave ${lengthText(allowance, units)} for this pass (passes.allowance), at ${fastest} and ${machine.slowest} turns a minute.`,
      numbers: { enoughAllowance: allowance },
    };
  }
  return {
    text: `Neither feed, turns nor flutes of this machine are enough: use a sharp cutter, blow the chips out, and expect marks; a smaller cutter takes thinner chips.`,
    numbers: {},
  };
}

function thickChips(recipe: Recipe, thick: readonly Judged[]): Finding {
  const worst = thick.reduce((a, b) => (b.chip.real / b.chip.most > a.chip.real / a.chip.most ? b : a));
  const { chip, feed, rpm, tool, uses } = worst;
  const { machine, units } = recipe;
  const wanted = (chip.most * chip.nominal) / chip.real;
  const slower = feedOf(rpm, tool.flutes, wanted);
  // A slow feed is not rounded to nothing.
  const least = settableFeed(slower, units, Math.floor) || slower;
  const turns = settableRpm(rpmOf(feed, tool.flutes, wanted), Math.ceil);
  const faster = turns <= machine.fastest;
  return {
    code: 'thick-chips',
    severity: chip.real / chip.most > LOUD.thick ? 'warn' : 'note',
    where: null,
    numbers: {
      ...numbersOf(worst),
      passes: thick.length,
      enoughFeed: least,
      ...(faster ? { enoughRpm: turns } : {}),
    },
    do:
      `${said(recipe, worst, thick)}, over the ${chipsText(recipe, worst)}: the cutter bends, tears the wood and may break. ` +
      `Feed ${feedText(least, units)} or less (${uses}.feed)${faster ? `, or turn at ${turns} a minute or more (${uses}.rpm)` : ''}, or take shallower passes.`,
  };
}

/** "Finishing the pocket (and 2 passes more) at 2400 mm and 18000 turns a minute cuts chips of 0.02 mm (estimate ...)". */
function said(
  { units }: Recipe,
  { bite, chip, feed, name, part, rpm }: Judged,
  all: readonly Judged[],
): string {
  const more = all.length - 1;
  const share = chip.real / chip.nominal;
  const thinned =
    share < TOLD
      ? `: a bite of ${lengthText(bite, units)} thins them to ${numberText(share, 2)} of ${lengthText(chip.nominal, units)}`
      : '';
  const others = more === 0 ? '' : ` (and ${more} more like it)`;
  return `${upperFirst(stageText({ name, part }))}${others} at ${feedText(feed, units)} and ${rpm} turns cuts chips of ${lengthText(chip.real, units)} (estimate${thinned})`;
}

/** "0.03 mm to 0.08 mm that charts give a ...". */
function chipsText({ units }: Recipe, stage: Judged): string {
  return `${lengthRange(stage.chip.least, stage.chip.most, units)} that charts have for ${rangeText(stage, units)}`;
}

function numbersOf({ bite, chip, feed, rpm, tool }: Judged): Record<string, number> {
  return {
    chip: chip.real,
    nominal: chip.nominal,
    least: chip.least,
    most: chip.most,
    feed,
    rpm,
    flutes: tool.flutes,
    bite,
  };
}

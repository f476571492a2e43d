import { cutterRadius, type Recipe, type Tool } from '../../../recipe/recipe.js';
import { MM_PER_INCH } from '../../../schema/units.js';
import { chipRange, depthCorrection, type WoodKind, woodKind } from '../../../shop/chip-load.js';
import { chipOf, cornerFeed, feedOf, thinning } from '../../../shop/feed.js';
import { equalSteps } from '../../../shop/passes.js';
import type { Part } from '../reach/reach.js';

export type StageName = 'roughing' | 'clearing' | 'finishing' | 'last pass';

/** Chips of one stage, mm a tooth. */
export interface Chip {
  /** feed / (rpm x flutes). */
  readonly nominal: number;
  /** The thickest one really cut: nominal x thinning; null where the bite is not known. */
  readonly real: number | null;
  /** The range that suits cutter and wood at this depth: estimate of shop/chip-load.ts. */
  readonly least: number;
  readonly most: number;
  /** Share of the charts' chip load that holds at this depth. */
  readonly corrected: number;
  /** Deeper than three diameters: beyond what is published. */
  readonly beyond: boolean;
}

/** One stage of cutting a part. Lengths mm, feeds mm a minute; feeds, paths and times are estimates. */
export interface Stage {
  readonly part: Part;
  readonly name: StageName;
  /** Which of the recipe's cutters; without a roughing cutter the one does all. */
  readonly uses: 'cutter' | 'roughing';
  readonly tool: Tool;
  /** Wood that is cut, by name, and as which kind; `known`: by its hardness, else taken as hard. */
  readonly wood: string;
  readonly kind: WoodKind;
  readonly known: boolean;
  /** Whole depth, in how many equal steps, and how deep each. */
  readonly depth: number;
  readonly steps: number;
  readonly step: number;
  readonly rpm: number;
  readonly feed: number;
  /** The recipe gives the feed; `capped`: it does not, and the machine cannot do what suits. */
  readonly given: boolean;
  readonly capped: boolean;
  readonly chip: Chip;
  /** How much of the cutter's side is in the wood; null for a pass that only takes what the bent cutter left. */
  readonly bite: number | null;
  /** The feed that the machine reaches in the tightest inside corner of a wall; null where it follows none. */
  readonly cornerFeed: number | null;
  readonly pathLength: number;
  readonly seconds: number;
  /** How path and time are found, in words. */
  readonly formula: string;
}

/** How a stage takes the wood away, before its path is known. */
export interface Cut {
  readonly part: Part;
  readonly name: StageName;
  readonly uses: 'cutter' | 'roughing';
  readonly depth: number;
  /** As deep as a pass may be. */
  readonly deepest: number;
  readonly bite: number | null;
  /** Radius that the cutter's middle turns on in the tightest inside corner; null: follows no wall. */
  readonly turn: number | null;
}

/** Feeds that nobody gave are rounded down to this, mm a minute: an inch recipe shows half inches. */
const ROUND = { mm: 10, in: MM_PER_INCH / 2 } as const;

/** A cut with its steps, feed and chips. */
export function speeds(recipe: Recipe, cut: Cut): Omit<Stage, 'pathLength' | 'seconds' | 'formula'> {
  const { machine } = recipe;
  const { bite, turn, uses } = cut;
  const tool: Tool = uses === 'roughing' ? recipe.roughing! : recipe.cutter;
  const wood = recipe.woods[cut.part === 'pocket' ? 'field' : 'plug'];
  const { kind, known } = woodKind(wood, recipe.woods.own);
  const { steps, step } = equalSteps(cut.depth, cut.deepest);
  const { share, beyond } = depthCorrection(step, tool.diameter);
  const chart = chipRange(tool.diameter, kind);
  const [least, most] = [chart.least * share, chart.most * share];
  const thinner = bite === null ? null : thinning(bite, tool.diameter);
  const suits = feedOf(tool.rpm, tool.flutes, (least + most) / 2) / (thinner ?? 1);
  const feed = tool.feed ?? rounded(Math.min(suits, machine.feed), recipe);
  const nominal = chipOf(feed, tool.rpm, tool.flutes);
  return {
    part: cut.part,
    name: cut.name,
    uses,
    tool,
    wood,
    kind,
    known,
    depth: cut.depth,
    steps,
    step,
    rpm: tool.rpm,
    feed,
    given: tool.feed !== null,
    capped: tool.feed === null && suits > machine.feed,
    chip: {
      nominal,
      real: thinner === null ? null : nominal * thinner,
      least,
      most,
      corrected: share,
      beyond,
    },
    bite,
    cornerFeed: turn === null ? null : Math.min(feed, cornerFeed(machine.acceleration, turn)),
  };
}

function rounded(feed: number, { units }: Recipe): number {
  const step = ROUND[units];
  // One hair over a whole number of steps keeps it.
  return Math.floor(feed / step + 1e-9) * step || feed;
}

/** Radius that a cutter sweeps, mm: the measured one where it is given. */
export function sweptRadius(recipe: Recipe, uses: 'cutter' | 'roughing'): number {
  return uses === 'roughing' && recipe.roughing ? recipe.roughing.diameter / 2 : cutterRadius(recipe.cutter);
}

import { DEFAULT_LADDER, ladder } from '../ladder.js';
import { choose } from './choose.js';
import { type Contradiction, contradictions, suspects } from './contradictions.js';
import { RESULTS } from './entry.js';
import { believe, type Trial } from './model.js';
import { type Borders, borders, chanceAt, type Good, surest, widest } from './range.js';

/** With this confidence, and a glued result that was good, no further coupon is worth its wood. Our own choice. */
export const ENOUGH = 0.95;
/** The confidence of the range that is named as good. */
export const RANGE = 0.8;

export interface Asked {
  /** Steps of the next coupon. */
  readonly steps: number;
  /** What the machine repeats, mm. */
  readonly repeatability: number;
}

/** What to do next. Lengths in mm per side; ranges and confidences are those of glued fits. */
export interface Advice<T extends Trial> {
  /** `start`: nothing is known yet; `go on`: cut the ladder; `stop`: use the clearance. */
  readonly do: 'start' | 'go on' | 'stop';
  /** Steps of the next coupon; null when there is no need of one. */
  readonly ladder: readonly number[] | null;
  /** The clearance that is most surely good, and how surely; null while nothing is known. */
  readonly use: { readonly clearance: number; readonly confidence: number } | null;
  /** The widest range that is good all over with a confidence of RANGE; null when none is yet. */
  readonly good: Good | null;
  /** Where the ends of the good range are thought to lie; null while nothing is known. */
  readonly borders: Borders | null;
  /** By how much glue makes a fit tighter, mean; what the results scatter by. */
  readonly swell: number | null;
  readonly spread: number | null;
  readonly contradictions: readonly Contradiction<T>[];
  /** The results that the contradictions hang on. */
  readonly doubted: readonly T[];
  /** Why not to stop yet, or why to stop: what the words of the command are made from. */
  readonly because: 'empty' | 'unsure' | 'never glued' | 'contradicted' | 'sure';
}

export const USUAL: Asked = { steps: DEFAULT_LADDER.steps, repeatability: DEFAULT_LADDER.repeatability };

/** What the trials say to do next. The same trials give the same advice, in whatever order they come. */
export function advise<T extends Trial>(given: readonly T[], asked: Asked = USUAL): Advice<T> {
  const { steps, repeatability } = asked;
  // Sums of floating numbers hang on their order by a last digit.
  const trials = given.toSorted(byValue);
  const odd = contradictions(trials, repeatability);
  if (trials.length === 0)
    return {
      do: 'start',
      ladder: first(asked),
      use: null,
      good: null,
      borders: null,
      swell: null,
      spread: null,
      contradictions: [],
      doubted: [],
      because: 'empty',
    };
  const doubted = suspects(odd);
  const belief = believe(trials);
  const use = surest(belief);
  const because = reason(trials, use, doubted);
  const stop = because === 'sure';
  return {
    do: stop ? 'stop' : 'go on',
    ladder: stop ? null : choose(belief, steps, repeatability),
    use,
    good: widest(belief, RANGE),
    borders: borders(belief),
    swell: belief.swell,
    spread: belief.sigma,
    contradictions: odd,
    doubted: [...doubted],
    because,
  };
}

/** The default ladder; wider when the machine is too rough for its steps. */
function first({ steps, repeatability }: Asked): number[] {
  const { from, to } = DEFAULT_LADDER;
  return ladder({ from, to: Math.max(to, from + repeatability * (steps - 1)), steps, repeatability });
}

/**
 * A contradiction is not averaged away: while one stands, the advice must be as sure without the results in doubt as it
 * is with them.
 */
function reason(
  trials: readonly Trial[],
  use: { clearance: number; confidence: number },
  doubted: ReadonlySet<Trial>,
): Advice<Trial>['because'] {
  if (use.confidence < ENOUGH) return 'unsure';
  if (!trials.some(gluedWell)) return 'never glued';
  if (doubted.size === 0) return 'sure';
  const rest = trials.filter((t) => !doubted.has(t));
  return rest.some(gluedWell) && chanceAt(believe(rest), use.clearance) >= ENOUGH ? 'sure' : 'contradicted';
}

function gluedWell({ tried, result }: Trial): boolean {
  return tried === 'glued' && result === 'good';
}

function byValue(a: Trial, b: Trial): number {
  return (
    a.clearance - b.clearance ||
    RESULTS.indexOf(a.result) - RESULTS.indexOf(b.result) ||
    (a.tried === b.tried ? 0 : a.tried === 'dry' ? -1 : 1)
  );
}

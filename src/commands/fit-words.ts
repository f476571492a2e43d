import { type Advice, ENOUGH, RANGE } from '../fit/log/advice.js';
import { depthClass } from '../fit/log/match.js';
import type { Trial } from '../fit/log/model.js';
import type { Recipe } from '../recipe/recipe.js';
import { lengthText, type Units } from '../schema/units.js';

/** A result and where it is written. */
export interface Seen extends Trial {
  readonly log: string;
  readonly line: number;
}

/** What the advice rests on. */
export interface Known {
  here: number;
  readonly others: { readonly log: string; readonly results: number }[];
  /** Results of this log that do not count, by why. */
  readonly unlike: Map<string, number>;
}

/** More names than this in a line say no more. */
const MOST_NAMED = 4;

/** The advice as lines to print: what is known, what contradicts, what to do and why. */
export function adviceLines(
  recipe: Recipe,
  known: Known,
  advice: Advice<Seen>,
  repeatability: number,
): string[] {
  const { units, name, woods, cutter, depth, fit } = recipe;
  const mm = (length: number): string => lengthText(length, units);
  const cuts = cutter.cuts === null ? '' : ` that cuts ${mm(cutter.cuts)}`;
  return [
    `${name}: ${woods.plug} in ${woods.field}, cutter ${mm(cutter.diameter)}${cuts}, depth ${depthClass(depth)}; ${knownText(known)}`,
    ...oddLines(advice, units),
    ...rangeLines(advice, units, repeatability),
    ...doLines(advice, units, fit.clearance),
  ];
}

function knownText({ here, others, unlike }: Known): string {
  const more = others.map((o) => `${o.results} from ${o.log}`);
  const total = here + others.reduce((sum, o) => sum + o.results, 0);
  const passed = [...unlike].map(([why, n]) => `${n} of the log not counted (${why})`);
  const from = more.length === 0 ? '' : ` (${[`${here} of its own`, ...more].join(', ')})`;
  return [`${total} result${total === 1 ? '' : 's'}${from}`, ...passed].join('; ');
}

/** A line for each doubted result, with those it does not go with; each pair once. */
function oddLines({ contradictions, doubted }: Advice<Seen>, units: Units): string[] {
  const told = ({ log, line, clearance, tried, result }: Seen): string =>
    `${log} line ${line} (${lengthText(clearance, units)}, ${tried}, ${result})`;
  let left = contradictions;
  const lines: string[] = [];
  for (const one of doubted) {
    const mine = left.filter(({ looser, tighter }) => looser === one || tighter === one);
    left = left.filter((pair) => !mine.includes(pair));
    if (mine.length === 0) continue;
    const others = mine.slice(0, MOST_NAMED).map((p) => told(p.looser === one ? p.tighter : p.looser));
    if (mine.length > MOST_NAMED) others.push(`${mine.length - MOST_NAMED} more`);
    const off = lengthText(Math.max(...mine.map((p) => p.by)), units);
    lines.push(
      `Contradiction: ${told(one)} does not go with ${others.join(', ')}: less clearance cannot come out looser (off by up to ${off})`,
    );
  }
  if (lines.length > 0)
    lines.push('Try these clearances again; if one was a slip of the pen, delete its line from the log');
  return lines;
}

function rangeLines(
  { good, use, borders, swell }: Advice<Seen>,
  units: Units,
  repeatability: number,
): string[] {
  if (use === null || borders === null) return [];
  const mm = (length: number): string => lengthText(length, units);
  const between = ([a, b]: readonly [number, number]): string => `${mm(round(a))} to ${mm(round(b))}`;
  const lines = [
    good === null
      ? `No range is good when glued with ${percent(RANGE)} confidence yet; likeliest is ${mm(use.clearance)} per side, ${percent(use.confidence)}`
      : `Good when glued: ${good.to > good.from ? `${mm(good.from)} to ${mm(good.to)}` : mm(good.from)} per side, with ${percent(good.confidence)} confidence; surest is ${mm(use.clearance)}, ${percent(use.confidence)}`,
    `Its tight end lies at ${between(borders.tightest)}, its loose end at ${between(borders.loosest)} (four times in five); glue takes up some ${mm(round(swell!))}`,
  ];
  if (borders.width < repeatability)
    lines.push(
      `The good range looks about ${mm(round(borders.width))} wide, narrower than the ${mm(repeatability)} the machine repeats: expect spoiled pieces, or make the machine repeat better`,
    );
  return lines;
}

function doLines({ do: what, ladder, use, because }: Advice<Seen>, units: Units, now: number): string[] {
  const mm = (length: number): string => lengthText(length, units);
  if (what === 'stop') {
    const set =
      Math.abs(now - use!.clearance) < 5e-4
        ? 'the recipe has it already'
        : `set fit.clearance to ${JSON.stringify(mm(use!.clearance).replace(' ', ''))}`;
    return [
      `Stop: use ${mm(use!.clearance)} per side, good when glued with ${percent(use!.confidence)} confidence (enough is ${percent(ENOUGH)}); ${set}`,
    ];
  }
  const steps = ladder!;
  return [
    `Next coupon: ${steps.length} steps from ${mm(steps[0]!)} to ${mm(steps.at(-1)!)} per side: ${steps.map(mm).join(', ')}`,
    `Why: ${WHY[because]}`,
  ];
}

const SPLIT =
  'these steps part what is still possible into the most even shares, so that any outcome rules out much';
const WHY: Readonly<Record<Advice<Seen>['because'], string>> = {
  empty:
    'nothing is known of these woods, this cutter and this depth; these steps span what is commonly good',
  unsure: `no clearance is good with ${percent(ENOUGH)} confidence yet; ${SPLIT}`,
  'never glued':
    'no glued fit has come out good yet, and glue makes a fit tighter: glue the steps that are good when dry, or cut these and glue them',
  contradicted: `the answer hangs on results that contradict each other; ${SPLIT}`,
  sure: '',
};

/** Rounded down: 0.949 must not read as the 95 % that is enough. */
function percent(p: number): string {
  return `${Math.floor(p * 100 + 1e-9)} %`;
}

/** An estimate needs no more than two places, mm. */
function round(mm: number): number {
  return Math.round(mm * 100) / 100;
}

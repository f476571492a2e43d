import { basename } from 'node:path';
import { loadRecipeText } from '../disk/load.js';
import { message } from '../disk/report.js';
import { type Advice, advise, USUAL } from '../fit/log/advice.js';
import { assumedLadder, stepsText } from '../fit/log/coupon-ladder.js';
import { type Entry, LOG_VERSION, type Setup } from '../fit/log/entry.js';
import { unlike } from '../fit/log/match.js';
import { readRecipe } from '../recipe/read.js';
import type { Recipe } from '../recipe/recipe.js';
import { BadInput } from '../schema/fault.js';
import { numberText } from '../schema/units.js';
import { appendLine, keepAside, type LogFile, logPath, otherLogs, readLog } from './fit-log.js';
import { type NextOptions, type RecordOptions, readNext, readRecord } from './fit-options.js';
import { adviceLines, type Known, type Seen } from './fit-words.js';

/** Adds one result to the log beside the recipe. Throws BadInput; nothing is written then. */
export function record(recipePath: string, options: RecordOptions): void {
  const recipe = readRecipe(loadRecipeText(recipePath), recipePath);
  const asked = readRecord(options, recipe.units);
  const log = readLog(logPath(recipePath));
  tellProblems(log, true);
  const entry: Entry = {
    version: LOG_VERSION,
    kind: 'result',
    clearance: asked.clearance ?? stepClearance(asked.step!, asked.ladder, log),
    step: asked.step,
    result: asked.result,
    tried: asked.tried,
    ...setupOf(recipe),
    moisture: asked.moisture,
    date: asked.date,
    note: asked.note,
  };
  appendLine(log.path, entry);
  if (options.json) print(JSON.stringify({ log: log.path, entry, problems: log.problems }, null, 2));
  else {
    const step = entry.step === null ? '' : `step ${entry.step}, `;
    print(
      `${recipe.name}: recorded ${step}${numberText(entry.clearance)} mm per side, ${entry.tried}: ${entry.result}; ${log.path}`,
    );
  }
}

/** Says what to try next, from the log beside the recipe and the logs of like jobs in the same folder. */
export function next(recipePath: string, options: NextOptions): void {
  const recipe = readRecipe(loadRecipeText(recipePath), recipePath);
  const asked = readNext(options, recipe.units);
  const setup = setupOf(recipe);
  const own = readLog(logPath(recipePath));
  tellProblems(own, true);
  const known: Known = { here: 0, others: [], unlike: new Map() };
  const seen: Seen[] = gather(own, setup, (why) => known.unlike.set(why, (known.unlike.get(why) ?? 0) + 1));
  known.here = seen.length;
  const problems = own.problems.map((p) => `${own.path}: ${p}`);
  for (const path of otherLogs(own.path)) {
    const other = readLog(path);
    const like = gather(other, setup, () => undefined);
    if (like.length > 0) known.others.push({ log: path, results: like.length });
    seen.push(...like);
    tellProblems(other, false);
    problems.push(...other.problems.map((p) => `${path}: ${p}`));
  }
  const { steps, repeatability } = { ...USUAL, ...asked };
  const advice = advise(seen, { steps, repeatability });
  if (options.json)
    print(JSON.stringify(nextObject(recipePath, own.path, setup, known, advice, problems), null, 2));
  else for (const line of adviceLines(recipe, known, advice, repeatability)) print(line);
}

function nextObject(
  recipe: string,
  log: string,
  setup: Setup,
  known: Known,
  advice: Advice<Seen>,
  problems: readonly string[],
): object {
  const { here, others } = known;
  return {
    recipe,
    log,
    setup,
    results: { here, others, unlike: Object.fromEntries(known.unlike) },
    ...advice,
    problems,
  };
}

/** The results of a log that say something about the setup; `passed` is told why each other one does not. */
function gather(log: LogFile, setup: Setup, passed: (why: string) => void): Seen[] {
  const seen: Seen[] = [];
  for (const { number, line } of log.lines) {
    if (line.kind !== 'result') continue;
    const why = unlike(line, setup);
    if (why !== null) passed(why);
    else
      seen.push({
        clearance: line.clearance,
        result: line.result,
        tried: line.tried,
        log: basename(log.path),
        line: number,
      });
  }
  return seen;
}

function stepClearance(step: number, given: readonly number[] | null, log: LogFile): number {
  const { steps, assumed } = given
    ? { steps: given, assumed: false }
    : assumedLadder(log.lines.map((l) => l.line));
  const clearance = steps[step - 1];
  if (clearance === undefined)
    throw new BadInput([
      {
        where: '--step',
        message: `${step} is no step of the coupon; its steps are ${stepsText(steps)}. Was it another coupon? Give --ladder, or --clearance instead`,
      },
    ]);
  if (assumed)
    message(
      `the log names no coupon: step ${step} is taken from the usual ladder, ${stepsText(steps)}; if yours was another, delete that line and record it with --clearance`,
    );
  return clearance;
}

function setupOf({ cutter, woods, depth }: Recipe): Setup {
  return {
    cutter: { diameter: cutter.diameter, cuts: cutter.cuts },
    woods: { field: woods.field, plug: woods.plug },
    depth,
  };
}

/** Damage in somebody else's log is reported; it is kept aside when that job's own log is used. */
function tellProblems(log: LogFile, own: boolean): void {
  for (const problem of log.problems) message(`${log.path}: ${problem}`);
  const aside = own ? keepAside(log) : null;
  if (aside !== null) message(`${log.path}: ${aside}`);
}

function print(text: string): void {
  process.stdout.write(`${text}\n`);
}

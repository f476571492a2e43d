import { availableParallelism } from 'node:os';
import { loadRecipeText } from '../disk/load.js';
import { message } from '../disk/report.js';
import { BadInput } from '../schema/fault.js';
import { failed, type Given, type Outcome, type Task } from './outcome.js';
import { partNumbers } from './parts.js';
import { uninterrupted } from './uninterrupted.js';

export interface MakeOptions {
  readonly out: string;
  readonly set: readonly string[];
  readonly json?: boolean;
  /** Numbers of spoiled parts, as given. */
  readonly parts?: string;
  /** How many pieces are made at a time, as given. */
  readonly threads?: string;
  /** The one recipe, when it is not in its file yet. */
  readonly given?: Given;
}

/**
 * Makes each recipe into a folder of its own, going on after a failure: several at a time, on as many threads as there
 * are cores. Prints a line a piece (or one JSON array) to stdout, in the order given, and everything else to stderr.
 * Returns the worst exit code.
 */
export async function make(recipes: readonly string[], options: MakeOptions): Promise<number> {
  const spoiled = partNumbers(options.parts, recipes.length);
  const threads = Math.min(threadsAsked(options.threads), recipes.length);
  const tasks = await checked(recipes, options, spoiled, threads > 1);
  const results: object[] = [];
  let worst = 0;
  const say = (outcome: Outcome): void => {
    for (const line of [...(outcome.told ?? []), ...outcome.errors]) message(line);
    if (outcome.line !== null && !options.json) process.stdout.write(`${outcome.line}\n`);
    results.push(outcome.result);
    worst = Math.max(worst, outcome.code);
  };
  if (threads > 1) {
    const { makeMany } = await import('./make-many.js');
    await makeMany(tasks, threads, say);
  } else await oneByOne(tasks, say);
  if (options.json) process.stdout.write(`${JSON.stringify(results, null, 2)}\n`);
  return worst;
}

async function oneByOne(tasks: readonly (Task | Outcome)[], say: (outcome: Outcome) => void): Promise<void> {
  const { makeOne } = await import('./make-one.js');
  for (const task of tasks) {
    if (!('text' in task)) {
      say(task);
      continue;
    }
    const step = (step: string): void => message(`${task.name}: ${step}`);
    say(await makeOne(task, { tell: message, step, write: uninterrupted }));
  }
}

/**
 * The recipes as read once to know their names; what already fails then. Where threads are to read them their names are
 * only looked up.
 */
async function checked(
  recipes: readonly string[],
  { out, set, given }: MakeOptions,
  spoiled: readonly number[] | null,
  onThreads: boolean,
): Promise<(Task | Outcome)[]> {
  const names = new Map<string, string>();
  const all: (Task | Outcome)[] = [];
  for (const path of recipes) {
    try {
      const text = given?.text ?? loadRecipeText(path);
      const looked = onThreads && !set.some((s) => s.startsWith('name')) ? nameIn(text) : null;
      const recipe =
        looked === null ? (await import('../recipe/read.js')).readRecipe(text, path, set) : undefined;
      const name = recipe?.name ?? looked!;
      // Two pieces of one name would overwrite each other; some disks hold upper and lower case alike.
      const key = name.toLowerCase();
      const other = names.get(key);
      if (other !== undefined)
        throw new BadInput([
          {
            where: 'name',
            message: `${JSON.stringify(name)} is the name in ${other} too; give each its own`,
          },
        ]);
      names.set(key, path);
      all.push({
        path,
        text,
        name,
        out,
        set,
        spoiled,
        ...(recipe ? { recipe } : {}),
        ...(given ? { given } : {}),
      });
    } catch (e) {
      all.push(failed(path, e));
    }
  }
  return all;
}

/** The name that a recipe's text gives, when it is a text with one. */
function nameIn(text: string): string | null {
  try {
    const tree: unknown = JSON.parse(text);
    const name = tree !== null && typeof tree === 'object' && 'name' in tree ? tree.name : null;
    return typeof name === 'string' ? name : null;
  } catch {
    return null; // The reader says what is wrong with it.
  }
}

/** More threads than this are of no use to anyone, and each takes memory. */
const MOST_THREADS = 256;

function threadsAsked(given: string | undefined): number {
  if (given === undefined) return availableParallelism();
  if (/^\d{1,3}$/.test(given) && Number(given) >= 1 && Number(given) <= MOST_THREADS) return Number(given);
  throw new BadInput([
    {
      where: '--threads',
      message: `${JSON.stringify(given)} must be a whole number from 1 to ${MOST_THREADS}`,
    },
  ]);
}

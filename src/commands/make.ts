import { join } from 'node:path';
import { build } from '../build.js';
import type { Files, Job } from '../output/job.js';
import type { ProofResult } from '../output/job-text.js';
import type { Asked, ProofFiles } from '../proof/index.js';
import { readRecipe } from '../recipe/read.js';
import { cutterRadius } from '../recipe/recipe.js';
import { BadInput, Refusal } from '../schema/fault.js';
import { checkFolder, writeFolder } from './folder.js';
import { loadAssets, loadRecipeText, loadRenderer } from './load.js';
import { describeError, message } from './report.js';
import { resultLine, resultObject } from './result.js';

export interface MakeOptions {
  readonly out: string;
  readonly set: readonly string[];
  readonly json?: boolean;
}

/**
 * Makes each recipe into a folder of its own, going on after a failure. Prints a line a piece (or one JSON array) to
 * stdout and everything else to stderr. Returns the worst exit code.
 */
export async function make(recipes: readonly string[], { out, set, json }: MakeOptions): Promise<number> {
  const made = new Map<string, string>();
  const results: object[] = [];
  let worst = 0;
  for (const path of recipes) {
    try {
      const { job, proof } = await makeOne(path, out, set, made);
      const folder = join(out, job.recipe.name);
      if (json) results.push(resultObject(path, job, proof, folder));
      else process.stdout.write(`${resultLine(job, proof, folder)}\n`);
    } catch (e) {
      const { lines, code } = describeError(e, path);
      lines.forEach(message);
      results.push({ recipe: path, made: false, exitCode: code, errors: lines });
      worst = Math.max(worst, code);
    }
  }
  if (json) process.stdout.write(`${JSON.stringify(results, null, 2)}\n`);
  return worst;
}

async function makeOne(
  path: string,
  out: string,
  set: readonly string[],
  made: Map<string, string>,
): Promise<{ job: Job; proof: ProofResult }> {
  const recipe = readRecipe(loadRecipeText(path), path, set);
  const { name } = recipe;
  // Two pieces of one name would overwrite each other; some disks hold upper and lower case alike.
  const key = name.toLowerCase();
  const other = made.get(key);
  if (other !== undefined)
    throw new BadInput([
      { where: 'name', message: `${JSON.stringify(name)} is the name in ${other} too; give each its own` },
    ]);
  made.set(key, path);
  checkFolder(out, name);

  const starting = loadRenderer();
  starting.catch(() => undefined); // Awaited below, unless building refuses first.
  const [{ draw, jobText }, { prove }] = await Promise.all([
    import('../output/index.js'),
    import('../proof/index.js'),
  ]);
  message(`${name}: building`);
  const job = build(recipe, loadAssets(recipe, path));
  for (const f of job.findings)
    message(`${name}: ${f.severity === 'warn' ? 'warning' : f.severity}: ${f.do}`);
  message(`${name}: drawing`);
  const files = draw(job, await starting);
  message(`${name}: proving`);
  const proof = prove(drawings(files), asked(job));
  if (!proof.holds)
    throw new Refusal(
      'proof-failed',
      `the drawings do not pass their proof: ${proof.failures.join('; ')}. Nothing is written`,
    );
  writeFolder(out, name, new Map([...files, ['job.json', jobText(job, proof)]]));
  return { job, proof };
}

/** The four drawings as they will be written: the proof reads nothing else. */
function drawings(files: Files): ProofFiles {
  const text = (name: string): string => {
    const content = files.get(name);
    if (typeof content !== 'string') throw new Error(`${name} was not drawn`);
    return content;
  };
  return {
    pocketSvg: text('pocket.svg'),
    plugSvg: text('plug.svg'),
    pocketDxf: text('pocket.dxf'),
    plugDxf: text('plug.dxf'),
  };
}

function asked({ recipe, pair }: Job): Asked {
  return { radius: cutterRadius(recipe.cutter), clearance: recipe.fit.clearance, carrier: pair.mirrored };
}

import { join } from 'node:path';
import { build } from '../build.js';
import { checkFolder, writeFolder } from '../disk/folder.js';
import { loadAssets, loadRecipeText, loadRenderer } from '../disk/load.js';
import { describeError, message } from '../disk/report.js';
import type { Assets } from '../generators/generator.js';
import { ranked } from '../inspect/ranked.js';
import type { Job } from '../output/job.js';
import type { ProofResult } from '../output/job-text.js';
import { readRecipe } from '../recipe/read.js';
import { BadInput } from '../schema/fault.js';
import { layoutLines, partNumbers } from './parts.js';
import { resultLine, resultObject } from './result.js';

export interface MakeOptions {
  readonly out: string;
  readonly set: readonly string[];
  readonly json?: boolean;
  /** Numbers of spoiled parts, as given. */
  readonly parts?: string;
  /** The one recipe, when it is not in its file yet. */
  readonly given?: Given;
}

/** A recipe with all that it needs, made up by a command: its files are written with the piece. */
export interface Given {
  readonly text: string;
  readonly assets: Assets;
  /** Findings that the user was told of already, by their text. */
  readonly told?: ReadonlySet<string>;
  /** Called when all is known, before anything is drawn. */
  built?(job: Job): void;
  /** Called when all is proven: writes what lies beside the piece, and returns what takes it back. */
  keep(): () => void;
}

/**
 * Makes each recipe into a folder of its own, going on after a failure. Prints a line a piece (or one JSON array) to
 * stdout and everything else to stderr. Returns the worst exit code.
 */
export async function make(
  recipes: readonly string[],
  { out, set, json, parts, given }: MakeOptions,
): Promise<number> {
  const spoiled = partNumbers(parts, recipes.length);
  const made = new Map<string, string>();
  const results: object[] = [];
  let worst = 0;
  for (const path of recipes) {
    try {
      const { job, proofs } = await makeOne(path, out, set, made, spoiled, given);
      const folder = join(out, job.recipe.name);
      if (json) results.push(resultObject(path, job, proofs, folder));
      else process.stdout.write(`${resultLine(job, proofs, folder)}\n`);
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
  spoiled: readonly number[] | null,
  given?: Given,
): Promise<{ job: Job; proofs: readonly ProofResult[] }> {
  const recipe = readRecipe(given?.text ?? loadRecipeText(path), path, set);
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
  const { proven } = await import('../proven.js');
  message(`${name}: building`);
  const job = build(recipe, given?.assets ?? loadAssets(recipe, path), spoiled ? { spoiled } : {});
  tellFindings(job, path, given?.told);
  given?.built?.(job);
  const { files, proofs } = proven(job, await starting, (step) => message(`${name}: ${step}`));
  for (const line of layoutLines(job)) message(`${name}: ${line}`);
  const takeBack = given?.keep();
  try {
    writeFolder(out, name, files);
  } catch (e) {
    takeBack?.();
    throw e;
  }
  return { job, proofs };
}

/** Findings that ask for care, worst first; how many more are good to know. */
function tellFindings(
  { findings: all, recipe: { name } }: Job,
  path: string,
  told?: ReadonlySet<string>,
): void {
  const findings = all.filter((f) => !told?.has(f.do));
  for (const { finding } of ranked(findings))
    if (finding.severity !== 'note') message(`${name}: take care: ${finding.do}`);
  const notes = findings.filter((f) => f.severity === 'note').length;
  if (notes > 0)
    message(
      `${name}: ${notes} ${notes === 1 ? 'note' : 'notes'} more: on the sheet, or inlaywright inspect ${path}`,
    );
}

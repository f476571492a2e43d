import { join } from 'node:path';
import { build } from '../build.js';
import { checkFolder, writeFolder } from '../disk/folder.js';
import { loadAssets, loadRenderer } from '../disk/load.js';
import { ranked } from '../inspect/ranked.js';
import type { Job } from '../output/job.js';
import { readRecipe } from '../recipe/read.js';
import { failed, type Outcome, type Task } from './outcome.js';
import { layoutLines } from './parts.js';
import { resultLine, resultObject } from './result.js';

export interface Listener {
  /** Hears each message. */
  tell(line: string): void;
  /** Hears of each step as it begins. */
  step(step: 'building' | 'drawing' | 'proving'): void;
  /** Writes the files: nothing may stop it half way. */
  write(work: () => void): void | Promise<void>;
}

/** Makes a piece into its folder. Throws nothing: what goes wrong is in the outcome. */
export async function makeOne(task: Task, listener: Listener): Promise<Outcome> {
  try {
    return await made(task, listener);
  } catch (e) {
    return failed(task.path, e);
  }
}

async function made(task: Task, { tell, step, write }: Listener): Promise<Outcome> {
  const { path, out, set, spoiled, given } = task;
  const recipe = task.recipe ?? readRecipe(task.text, path, set);
  const { name } = recipe;
  checkFolder(out, name);

  const starting = loadRenderer();
  starting.catch(() => undefined); // Awaited below, unless building refuses first.
  const { proven } = await import('../proven.js');
  step('building');
  const job = build(recipe, given?.assets ?? loadAssets(recipe, path), spoiled ? { spoiled } : {});
  for (const line of findingLines(job, path, given?.told)) tell(line);
  given?.built?.(job);
  const { files, proofs } = proven(job, await starting, step);
  for (const line of layoutLines(job)) tell(`${name}: ${line}`);
  await write(() => {
    const takeBack = given?.keep();
    try {
      writeFolder(out, name, files);
    } catch (e) {
      takeBack?.();
      throw e;
    }
  });
  const folder = join(out, name);
  return {
    line: resultLine(job, proofs, folder),
    result: resultObject(path, job, proofs, folder),
    code: 0,
    errors: [],
  };
}

/** Findings that ask for care, worst first; how many more are good to know. */
function findingLines(
  { findings: all, recipe: { name } }: Job,
  path: string,
  told?: ReadonlySet<string>,
): string[] {
  const findings = all.filter((f) => !told?.has(f.do));
  const lines = ranked(findings)
    .filter(({ finding }) => finding.severity !== 'note')
    .map(({ finding }) => `${name}: take care: ${finding.do}`);
  const notes = findings.filter((f) => f.severity === 'note').length;
  if (notes > 0)
    lines.push(
      `${name}: ${notes} ${notes === 1 ? 'note' : 'notes'} more: on the sheet, or inlaywright inspect ${path}`,
    );
  return lines;
}

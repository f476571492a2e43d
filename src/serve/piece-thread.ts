import { parentPort, workerData } from 'node:worker_threads';
import { build } from '../build.js';
import { checkFolder } from '../disk/folder.js';
import { loadKernel, loadRenderer } from '../disk/load.js';
import { describeError } from '../disk/report.js';
import type { Files } from '../output/job.js';
import { proven } from '../proven.js';
import { readRecipe } from '../recipe/read.js';
import { type StavedStep, staved } from '../staved.js';
import type { Made, Making } from '../wire.js';
import { assetsWithin } from './assets.js';

/** What a thread is to make: a recipe's text, and the file it stands for, from the served folder. */
export interface Task {
  readonly root: string;
  readonly out: string;
  readonly file: string;
  readonly text: string;
}

export type ThreadSays =
  | Extract<Making, { step: string } | { wrong: object }>
  | { readonly name: string; readonly files: Files; readonly proof: Made['proof'] };

const { root, out, file, text } = workerData as Task;
const say = (said: ThreadSays): void => parentPort!.postMessage(said);

try {
  say({ step: 'reading' });
  const recipe = readRecipe(text, file);
  checkFolder(out, recipe.name);
  const starting = loadRenderer();
  starting.catch(() => undefined); // Awaited below, unless building refuses first.
  const assets = assetsWithin(root, file, recipe);
  say({ step: 'building' });
  const job = build(recipe, assets);
  const tell = (step: StavedStep): void => say({ step });
  const { files, proofs } = recipe.bowl
    ? await staved(job, await starting, await loadKernel(), tell)
    : proven(job, await starting, tell);
  const least = (side: 'pocket' | 'plug'): number => Math.min(...proofs.map((p) => p[side].reach));
  const proof = { required: proofs[0]!.required, pocket: least('pocket'), plug: least('plug') };
  say({ name: recipe.name, files, proof });
} catch (e) {
  say({ wrong: { lines: describeError(e, file).lines } });
}

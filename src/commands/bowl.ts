import { join } from 'node:path';
import { build } from '../build.js';
import { checkFolder, writeFolder } from '../disk/folder.js';
import { loadAssets, loadKernel, loadRecipeText, loadRenderer } from '../disk/load.js';
import { message } from '../disk/report.js';
import { ranked } from '../inspect/ranked.js';
import { readRecipe } from '../recipe/read.js';
import { makeCoupon } from './coupon.js';
import { resultLine, resultObject } from './result.js';

export interface BowlOptions {
  readonly out: string;
  readonly set: readonly string[];
  /** False with --no-coupon. */
  readonly coupon: boolean;
  readonly json?: boolean;
}

/**
 * Makes a staved vessel's folder: the stave's drawings with their proof, jigs, models, pictures and sheets; and its coupon
 * beside. Throws BadInput and Refusal; nothing is written then.
 */
export async function makeBowl(path: string, { out, set, coupon, json }: BowlOptions): Promise<void> {
  const recipe = readRecipe(loadRecipeText(path), path, set);
  const { name } = recipe;
  checkFolder(out, name);
  const starting = loadRenderer();
  starting.catch(() => undefined); // Awaited below, unless building refuses first.
  const { staved } = await import('../staved.js');
  message(`${name}: building`);
  const job = build(recipe, loadAssets(recipe, path));
  for (const { finding } of ranked(job.findings))
    if (finding.severity !== 'note') message(`${name}: take care: ${finding.do}`);
  const { files, proofs } = await staved(job, await starting, await loadKernel(), (step) =>
    message(`${name}: ${step}`),
  );
  writeFolder(out, name, files);
  const folder = join(out, name);
  const text = json
    ? JSON.stringify(resultObject(path, job, proofs, folder), null, 2)
    : resultLine(job, proofs, folder);
  process.stdout.write(`${text}\n`);
  if (coupon) await makeCoupon(path, { out, set } as Parameters<typeof makeCoupon>[1]);
}

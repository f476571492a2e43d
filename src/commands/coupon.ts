import { join } from 'node:path';
import { coupon } from '../coupon.js';
import { checkFolder, writeFolder } from '../disk/folder.js';
import { loadAssets, loadRecipeText, loadRenderer } from '../disk/load.js';
import { message } from '../disk/report.js';
import type { Coupon } from '../output/coupon.js';
import type { CouponProof } from '../proof/index.js';
import { nameFault } from '../recipe/name.js';
import { readRecipe } from '../recipe/read.js';
import { BadInput, Refusal } from '../schema/fault.js';
import { MM_PER_INCH, numberText } from '../schema/units.js';
import { type CouponOptions, readCoupon } from './coupon-options.js';
import { noteCoupon } from './fit-log.js';

/**
 * Makes the coupon of a recipe into OUT/NAME-coupon and notes its steps in the recipe's fit log. Throws BadInput and
 * Refusal; nothing is written then.
 */
export async function makeCoupon(path: string, options: CouponOptions): Promise<void> {
  const recipe = readRecipe(loadRecipeText(path), path, options.set);
  const { units } = recipe;
  const asked = readCoupon(options, units, recipe.machine.repeatability);
  const name = `${recipe.name}-coupon`;
  const wrong = nameFault(name);
  if (wrong) throw new BadInput([{ where: 'name', message: `${JSON.stringify(name)} ${wrong}` }]);
  checkFolder(options.out, name);
  const starting = loadRenderer();
  starting.catch(() => undefined); // Awaited below, unless building refuses first.
  const [{ drawCoupon, drawingsOf, couponAsked, couponEntry, couponText }, { proveSteps }] =
    await Promise.all([import('../output/index.js'), import('../proof/index.js')]);
  message(`${name}: looking for the hard spots`);
  const made = coupon(recipe, loadAssets(recipe, path), asked);
  for (const f of made.job.findings)
    message(`${name}: ${f.severity === 'warn' ? 'warning' : f.severity}: ${f.do}`);
  message(`${name}: drawing`);
  const files = drawCoupon(made, await starting);
  message(`${name}: proving`);
  const proof = proveSteps(drawingsOf(files, 0), couponAsked(made));
  if (!proof.holds)
    throw new Refusal(
      'proof-failed',
      `the drawings do not pass their proof: ${proof.failures.join('; ')}. Nothing is written`,
    );
  // The log first: with a coupon whose steps it does not know, `fit record --step` would note the wrong clearances.
  const takeBack = noteCoupon(path, asked.ladder);
  try {
    writeFolder(options.out, name, new Map([...files, ['job.json', couponText(made, proof, proof.steps)]]));
  } catch (e) {
    takeBack();
    throw e;
  }
  const folder = join(options.out, name);
  const text = options.json
    ? JSON.stringify({ recipe: path, made: true, name, folder, ...couponEntry(made, proof.steps) }, null, 2)
    : resultLine(made, proof, folder);
  process.stdout.write(`${text}\n`);
}

/** What was made, in one line: the steps, the wood, the gap of each step as proven, the folder. */
function resultLine({ job, steps, board, whole }: Coupon, proof: CouponProof, folder: string): string {
  const { units, name } = job.recipe;
  const fine = (mm: number): string =>
    numberText(units === 'in' ? mm / MM_PER_INCH : mm, units === 'in' ? 5 : 4);
  const square = (mm2: number): string =>
    units === 'in'
      ? `${numberText(mm2 / (MM_PER_INCH * MM_PER_INCH), 1)} in2`
      : `${numberText(mm2 / 100, 1)} cm2`;
  const piece = (whole.box.maxX - whole.box.minX) * (whole.box.maxY - whole.box.minY);
  const gaps = proof.steps.map(({ gap: { least, most } }) =>
    fine(least) === fine(most) ? fine(least) : `${fine(least)} to ${fine(most)}`,
  );
  return [
    `${name}: ${steps.length} step${steps.length === 1 ? '' : 's'} on ${square(board.width * board.height)} of wood (the piece takes ${square(piece)})`,
    `proven gaps per side, ${units}: ${gaps.join(', ')}`,
    folder,
  ].join('; ');
}

import { build } from '../build.js';
import { loadAssets, loadRecipeText } from '../disk/load.js';
import { message } from '../disk/report.js';
import type { Finding } from '../inspect/finding.js';
import { ranked } from '../inspect/ranked.js';
import { planOf } from '../inspect/sums/plan/plan.js';
import { reachTable } from '../inspect/sums/reach/reach-table.js';
import type { Job } from '../output/job.js';
import { reachNote, reachRows } from '../output/sheet-reach.js';
import { readRecipe } from '../recipe/read.js';
import { MM_PER_INCH, numberText } from '../schema/units.js';
import { pictureKind, writePicture } from './picture-file.js';
import { wrapped } from './wrap.js';

export interface InspectOptions {
  readonly set: readonly string[];
  readonly picture?: string;
  readonly json?: boolean;
}

const SEVERITY: Readonly<Record<Finding['severity'], string>> = {
  stop: 'STOP',
  warn: 'take care',
  note: 'note',
};

/** Prints everything that is known before the cut, worst first, and draws it when asked. Throws BadInput, Refusal. */
export async function inspectRecipe(path: string, options: InspectOptions): Promise<void> {
  const { picture, set, json } = options;
  const kind = picture === undefined ? null : pictureKind(picture, 'findings.png');
  const recipe = readRecipe(loadRecipeText(path), path, set);
  message(`${recipe.name}: looking`);
  const job = build(recipe, loadAssets(recipe, path));
  if (picture !== undefined) {
    const { findingPicture } = await import('../output/finding-picture.js');
    await writePicture(picture, kind!, (font) => findingPicture(job, { key: true, font }));
  }
  process.stdout.write(`${json ? JSON.stringify(inspectObject(path, job), null, 2) : table(job)}\n`);
}

function table(job: Job): string {
  const { name } = job.recipe;
  const list = ranked(job.findings);
  if (list.length === 0) return [`${name}: nothing to warn of`, '', ...reachLines(job)].join('\n');
  const counts = (['stop', 'warn', 'note'] as const)
    .map((s) => [list.filter(({ finding }) => finding.severity === s).length, s] as const)
    .filter(([n]) => n > 0)
    .map(([n, s]) => `${n} ${SEVERITY[s]}`);
  const places = list.map(({ finding }) => placeText(finding, job));
  const width = (column: readonly string[]): number => Math.max(...column.map((c) => c.length));
  const codes = width(list.map(({ finding }) => finding.code));
  const at = width(places);
  const rows = list.map(({ number, finding }, k) => {
    const head = `${String(number).padStart(3)}  ${SEVERITY[finding.severity].padEnd(9)}  ${finding.code.padEnd(codes)}  ${places[k]!.padEnd(at)}`;
    return `${head.trimEnd()}\n${wrapped(finding.do, 5)}`;
  });
  const title = `${name}: ${counts.join(', ')}; worst first`;
  const units = `Places in ${job.recipe.units}, right and up from the datum: the lower left corner of the face's box.`;
  return [title, units, '', ...rows, '', ...reachLines(job)].join('\n');
}

/** Where each cutter gets to, in columns. */
function reachLines(job: Job): string[] {
  const rows = reachRows(job, 'all');
  const widths = rows[0]!.map((_, k) => Math.max(...rows.map((r) => r[k]!.length)));
  const lines = rows.map((r) =>
    r
      .map((cell, k) => (k === r.length - 1 ? cell : cell.padStart(widths[k]!)))
      .join('  ')
      .trimEnd(),
  );
  return ['Where each cutter gets to', ...lines.map((l) => `  ${l}`), wrapped(reachNote(job), 2)];
}

/** A place from the datum, as the sheet gives it; nothing for what is about the whole job. */
function placeText({ where }: Finding, { outline, recipe }: Job): string {
  if (!where) return '';
  const [x, y] = [where[0] - outline.box.minX, where[1] - outline.box.minY];
  const text = (mm: number): string =>
    recipe.units === 'in' ? numberText(mm / MM_PER_INCH, 3) : numberText(mm, 1);
  return `at ${text(x)}, ${text(y)}`;
}

function inspectObject(path: string, job: Job): object {
  return {
    recipe: path,
    name: job.recipe.name,
    findings: ranked(job.findings).map(({ number, finding: { zone: _, ...f } }) => ({ number, ...f })),
    reach: reachTable(job.recipe, job.outline, job.pair),
    plan: planOf(job.recipe, job.outline, job.pair),
    numbers: job.numbers,
  };
}

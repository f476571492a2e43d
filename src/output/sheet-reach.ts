import { type ReachIn, type ReachRow, reachTable } from '../inspect/sums/reach/reach-table.js';
import { decimal, escapeText, lengthText } from './format.js';
import type { Job } from './job.js';
import { eachInlay } from './sheet-inlays.js';
import { volumeText } from './sheet-units.js';

const USE: Readonly<Record<ReachRow['use'], string>> = {
  finishing: 'finishing cutter, no allowance',
  roughing: 'roughing cutter',
  stock: '',
};

/** Where each cutter gets to: the rows of a table, plain text. The first row is the head. */
export function reachRows(
  { recipe, outline, pair }: Job,
  which: 'all' | 'own',
): readonly (readonly string[])[] {
  const { units } = recipe;
  const volume = ({ finishing }: ReachIn): string => volumeText(finishing, units);
  return [
    ['Cutter', 'Pocket', 'left', 'Plug', 'left', ''],
    ...reachTable(recipe, outline, pair, which)
      // Thinner ones get wherever the finishing cutter does.
      .filter((r) => r.diameter > recipe.cutter.diameter - 1e-6)
      .map(({ diameter, use, pocket, plug }) => [
        lengthText(diameter, units),
        percent(pocket),
        volume(pocket),
        percent(plug),
        volume(plug),
        USE[use],
      ]),
  ];
}

function percent({ share }: ReachIn): string {
  // All of it is said only where it is all of it.
  return `${decimal(Math.floor(share * 1000 + 1e-6) / 10, 1)} %`;
}

/** What the columns are. */
export function reachNote({ recipe: { passes, units } }: Job): string {
  return `Share of the waste of pocket and plug that a cutter gets to with ${lengthText(passes.allowance, units)} left on the walls, and the wood, allowance and all, that is then left for the finishing cutter. By geometry: the opening of the waste by the cutter’s circle.`;
}

/** Where the recipe's own cutters get to, for each inlay. HTML text. */
export function reachBlock(job: Job): string {
  const note = `${reachNote(job)} Other cutters: inlaywright inspect.`;
  return `${eachInlay(job, reachOfInlay)}\n<p><small>${escapeText(note)}</small></p>`;
}

function reachOfInlay(job: Job): string {
  // Every stock cutter would take seconds on large pieces: `inlaywright inspect` has them.
  const [head, ...rows] = reachRows(job, 'own');
  const line = (cells: readonly string[], tag: 'th' | 'td'): string =>
    `<tr>${cells.map((c) => `<${tag}>${escapeText(c)}</${tag}>`).join('')}</tr>`;
  return `<table class="settings">${[line(head!, 'th'), ...rows.map((r) => line(r, 'td'))].join('\n')}</table>`;
}

import { type Plan, planOf } from '../inspect/sums/plan/plan.js';
import type { Stage } from '../inspect/sums/plan/stage.js';
import type { Recipe } from '../recipe/recipe.js';
import { decimal, escapeText, lengthText } from './format.js';
import type { Job } from './job.js';
import { ofInlay } from './of-inlay.js';
import { eachInlay } from './sheet-inlays.js';
import { feedText, minutes } from './work-order.js';

/** Style of tables with many narrow columns. */
export const SETTINGS_STYLE = `
.settings { width: 100%; font-size: 8.4pt; margin-bottom: 1mm }
.settings th { width: auto; color: #000; font-weight: bold; vertical-align: bottom; line-height: 1.15 }
.settings td { white-space: nowrap }
.settings .wrap { white-space: normal }`;

const COLUMNS = [
  'Part',
  'Stage',
  'Cutter',
  'Depth',
  'rpm',
  'Feed',
  'Feed in corners',
  'Chip (range)',
  'Path',
  'Time',
] as const;

/** Cutters and settings, stage by stage, of each inlay, and once what they are reckoned from. HTML text. */
export function settingsBlock(job: Job): string {
  const stages = job.inlays.flatMap((_, k) => planOfInlay(ofInlay(job, k)).stages);
  return `${eachInlay(job, settingsTable)}\n${settingsNote(stages)}`;
}

function planOfInlay({ recipe, outline, pair }: Job): Plan {
  return planOf(recipe, outline, pair);
}

function settingsTable(job: Job): string {
  const plan = planOfInlay(job);
  const head = `<tr>${COLUMNS.map((c) => `<th>${c}</th>`).join('')}</tr>`;
  const rows = plan.stages.map(
    (s) =>
      `<tr>${cells(s, job.recipe)
        .map(
          (c, k) =>
            `<td${k === COLUMNS.indexOf('Chip (range)') ? ' class="wrap"' : ''}>${escapeText(c)}</td>`,
        )
        .join('')}</tr>`,
  );
  return `<table class="settings">${[head, ...rows].join('\n')}</table>\n<p>All together about ${minutes(plan.seconds)} of cutting (estimate).</p>`;
}

function settingsNote(stages: readonly Stage[]): string {
  const formulas = [...new Set(stages.map((s) => s.formula))];
  const unknown = [...new Set(stages.filter((s) => !s.known).map((s) => s.wood))];
  const text = [
    'Estimates. Feed = rpm × flutes × chip load; the range of chip loads spans two tool makers’ published charts for cutter and wood, less with depth: 75 % at 2 diameters, 50 % at 3 (published).',
    ...(stages.some((s) => s.chip.beyond)
      ? ['Beyond 3 diameters nothing is published: the 50 % stands in.']
      : []),
    'A light side bite a thins the chip to 2 √(a/D (1 − a/D)) of the nominal one. Feed in the tightest inside corner = √(acceleration × radius of the path), at most the feed.',
    ...unknown.map((w) => `Hardness of ${w} is not known: taken as hard.`),
    `Path and time: ${formulas.join('; ')}.`,
    'Keep within the marks on cutter and machine; listen, and slow down when it squeals.',
  ];
  return `<p><small>${escapeText(text.join(' '))}</small></p>`;
}

function cells(s: Stage, { units }: Recipe): string[] {
  const len = (mm: number): string => lengthText(mm, units);
  return [
    s.part === 'pocket' ? 'Pocket' : 'Plug',
    s.name,
    len(s.tool.diameter),
    s.steps === 1 ? len(s.depth) : `${s.steps} × ${len(s.step)}`,
    decimal(s.rpm, 0),
    `${feedText(s.feed, units)}${s.capped ? ' (machine’s most)' : ''}`,
    s.cornerFeed === null ? '' : feedText(s.cornerFeed, units),
    chipText(s, units),
    units === 'in' ? `${decimal(s.pathLength / 25.4, 0)} in` : `${decimal(s.pathLength / 1000, 1)} m`,
    minutes(s.seconds),
  ];
}

/** "0.046 (0.02 to 0.05 mm)". */
function chipText({ chip }: Stage, units: Recipe['units']): string {
  const fine = (mm: number): string => (units === 'in' ? decimal(mm / 25.4, 4) : decimal(mm, 3));
  const range = `${fine(chip.least)} to ${fine(chip.most)} ${units}`;
  return chip.real === null ? `(${range})` : `${fine(chip.real)} (${range})`;
}

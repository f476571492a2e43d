import type { Change } from '../cutter/safe.js';
import type { Finding } from '../inspect/finding.js';
import { ranked } from '../inspect/ranked.js';
import { bareLength, decimal, escapeText, lengthText } from './format.js';
import type { Job } from './job.js';
import type { Place } from './sheet-figures.js';

/** The changes that have a letter; more would hide a small drawing. Numbers are the parts'. */
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

const CHANGE: Readonly<Record<Change['kind'], string>> = {
  vanished: 'was too thin for the cutter and is gone',
  split: 'came apart where it was too thin',
  filled: 'had a gap or hole too tight for the cutter, now solid',
  parted: 'were too close: the gap was opened to the cutter’s width',
  joined: 'were too close: they are bridged or filled',
  shortened: 'lost a narrow end',
  merged: 'grew together into one part',
  widened: 'had a stroke thinner than the cutter, now of the cutter’s width',
  opened: 'had a gap too tight for the cutter, now opened to its width',
};

/** Changes the cutter made necessary, in words, with their places from the datum; the first ones lettered. */
export function changeList(job: Job): string {
  if (job.safe.changes.length === 0)
    return '<p>None beyond rounding the corners to the corner radius: nothing was lost, joined or parted.</p>';
  const items = job.safe.changes.map(
    (c) =>
      `<li><b>${escapeText(c.piece)}</b> ${changed(c, job)} (${escapeText(lengthText(c.size, job.recipe.units))} across, ${fromDatum(job, c.at)})</li>`,
  );
  return `<ol type="A">${items.join('\n')}</ol>`;
}

function changed({ kind, to }: Change, { recipe }: Job): string {
  if (to === undefined) return CHANGE[kind];
  const width = escapeText(lengthText(Math.round(to * 1000) / 1000, recipe.units));
  return kind === 'widened'
    ? `had a limb thinner than asked, now ${width}`
    : kind === 'opened'
      ? `had a gap narrower than asked, now ${width}`
      : `were closer than asked: the gap is now ${width}`;
}

/** Places of the lettered changes. */
export function changePlaces(job: Job): Place[] {
  return job.safe.changes.slice(0, LETTERS.length).map((c, i) => ({ label: LETTERS[i]!, at: c.at }));
}

const SEVERITY: Readonly<Record<Finding['severity'], string>> = {
  stop: 'Stop',
  warn: 'Take care',
  note: 'Note',
};

/** Findings, worst first and numbered, each with its place and what to do. */
export function findingList(job: Job): string {
  if (job.findings.length === 0) return '<p>None.</p>';
  const items = ranked(job.findings).map(({ finding: f }) => {
    const place = f.where ? ` (${fromDatum(job, f.where)})` : '';
    return `<li><b>${SEVERITY[f.severity]}:</b> ${escapeText(f.do)}${place} <small>${escapeText(f.code)}</small></li>`;
  });
  return `<ol>${items.join('\n')}</ol>`;
}

/** A place as a maker finds it: right and up from the datum, on the pocket's drawing. */
function fromDatum(job: Job, [x, y]: readonly [number, number]): string {
  const { units } = job.recipe;
  const { minX, minY } = job.outline.box;
  const round = (mm: number): string =>
    units === 'mm' ? decimal(mm, 1) : bareLength(Math.round((mm / 25.4) * 1000) * 0.0254, 'in');
  return `at ${round(x - minX)}, ${round(y - minY)} ${units}`;
}

import { fileStem } from '../fit/inlay.js';
import { area, parts } from '../geometry/region.js';
import { listed } from '../inspect/part-names.js';
import { areaText, escapeText } from './format.js';
import type { Job } from './job.js';
import { ofInlay } from './of-inlay.js';
import { smallDrawing } from './sheet-figures.js';
import { changePlaces } from './sheet-lists.js';
import { numberTable } from './sheet-numbers.js';

/** Widest and tallest a small drawing of one inlay may be on paper, mm. */
const ROOM = 46;

/** Style of what only several woods have. */
export const INLAY_STYLE = `
h3 { font-size: 9.6pt; margin: 2mm 0 .5mm; break-after: avoid }
.inlay { display: flex; gap: 10mm }
.inlays > li { margin-bottom: 2.5mm }
.inlays p { margin-bottom: 1mm }`;

/** Several plug woods, as numbered steps in the order they go in, each with its drawings. HTML text. */
export function inlayBlock(job: Job): string {
  const items = job.inlays.map((inlay, k) => {
    const own = ofInlay(job, k);
    const [pocket, plug] = [fileStem('pocket', k), fileStem('plug', k)];
    const n = parts(inlay.pair.plug).length;
    const size = `${n} ${n === 1 ? 'part' : 'parts'}, ${areaText(area(inlay.pair.plug), job.recipe.units)}`;
    const figures = `${smallDrawing(own, 'pocket', changePlaces(own), ROOM)}\n${smallDrawing(own, 'plug', [], ROOM)}`;
    return [
      `<li><p><b>${escapeText(inlay.wood)}</b> (${pocket}.svg and ${plug}.svg, or .dxf; ${size}). ${escapeText(whenText(job, k))}</p>`,
      `<div class="inlay">${figures}</div></li>`,
    ].join('\n');
  });
  return [
    `<p>Each wood is an inlay of its own, with its own pocket and plug on one datum. Go through the steps below for each, in this order: ${escapeText(inOrder(job))}</p>`,
    `<ol class="inlays">${items.join('\n')}</ol>`,
  ].join('\n');
}

/** "1. black walnut: cut, glue, plane; 2. padauk: ..." */
function inOrder({ inlays }: Job): string {
  return `${inlays.map(({ wood }, k) => `${k + 1}. ${wood}: cut, glue, plane`).join('; ')}.`;
}

/** When an inlay's pocket may be cut, and what will be cut into it later. */
function whenText({ inlays }: Job, k: number): string {
  const { into } = inlays[k]!;
  const woods = (list: readonly number[]): string =>
    listed(
      list.map((i) => inlays[i]!.wood),
      'and',
    );
  const over = inlays.flatMap((later, i) => (later.into.includes(k) ? [i] : []));
  const under =
    over.length === 0
      ? ''
      : ` It runs under ${woods(over)}, so that no field shows between: much of it may be cut away again.`;
  if (into.length > 0)
    return `Its pocket is cut into ${woods(into)}: not before ${into.length === 1 ? 'that is' : 'they are'} glued in, dry and planed. Find the datum again exactly, or leave the field clamped.${under}`;
  if (k === 0) return `It goes in first.${under}`;
  return `It touches no wood before it: its pocket can be cut in the same setting, and its plug glued in at the same time.${under}`;
}

/** The numbers of the first inlay: those of the others that differ stand with their drawings. HTML text. */
export function numbersBlock(job: Job): string {
  const table = numberTable(ofInlay(job, 0));
  if (job.inlays.length === 1) return table;
  return `${table}\n<p><small>Plug, parts and area are those of inlay 1; those of the others stand with their drawings.</small></p>`;
}

/** A block made of each inlay as if it were the only one, under its number and wood. HTML text. */
export function eachInlay(job: Job, block: (own: Job) => string): string {
  if (job.inlays.length === 1) return block(ofInlay(job, 0));
  return job.inlays
    .map(({ wood }, k) => `<h3>${k + 1}. ${escapeText(wood)}</h3>\n${block(ofInlay(job, k))}`)
    .join('\n');
}

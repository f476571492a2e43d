import { escapeText } from './format.js';
import type { Job } from './job.js';
import { workOrder } from './work-order.js';

/** Style of what is ticked off with a pencil. */
export const WORK_STYLE = `
.work { columns: 2; column-gap: 7mm }
.work h3 { font-size: 9.6pt; margin: 0 0 .5mm; break-after: avoid }
.work div { margin-bottom: 2mm }
.ticks { list-style: none; padding-left: 0 }
.ticks li { padding-left: 5mm; position: relative }
.ticks li::before { content: ""; position: absolute; left: 0; top: .45mm; width: 2.6mm; height: 2.6mm; border: .25mm solid #000 }`;

/** How to make a piece, step by step, to be ticked off. HTML text. */
export function stepList(job: Job): string {
  return ticked(workOrder(job));
}

/** Groups of steps with a box to tick before each. HTML text. */
export function ticked(
  all: readonly { readonly title: string; readonly items: readonly string[] }[],
): string {
  const groups = all.map(
    ({ title, items }) =>
      `<div><h3>${escapeText(title)}</h3>\n<ul class="ticks">${items.map((i) => `<li>${escapeText(i)}</li>`).join('\n')}</ul></div>`,
  );
  return `<div class="work">${groups.join('\n')}</div>`;
}

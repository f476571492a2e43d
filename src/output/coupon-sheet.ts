import type { Coupon } from './coupon.js';
import { pressBlock, spotList, stepTable, woodText } from './coupon-sheet-tables.js';
import { couponFileList, couponStepList } from './coupon-sheet-words.js';
import { escapeText, lengthText } from './format.js';
import { smallDrawing } from './sheet-figures.js';
import { findingList } from './sheet-lists.js';
import { numberTable } from './sheet-numbers.js';
import { block, inline, sheetPage } from './sheet-page.js';
import { sectionFigure } from './sheet-section.js';
import { cautionList } from './sheet-words.js';

/** Rules for the table that is filled in by hand. */
const STYLE = `
.steps { width: 100%; font-size: 8.6pt }
.steps th { width: auto; vertical-align: bottom; color: #000 }
.steps td { height: 7mm; vertical-align: middle }
.steps td + td, .steps th + th { padding-left: 2mm }
.steps .fill { border-left: .15mm solid #888; width: 14mm }
.press { width: 100%; font-size: 8.6pt }
.press th { width: 44mm; color: #000 }`;

/** A coupon's shop sheet: one self-contained page, no scripts, nothing fetched. `picture` is picture.svg's text. */
export function couponSheet(coupon: Coupon, picture: string): string {
  const { job, steps } = coupon;
  const { recipe } = job;
  const { width, height } = coupon.board;
  const wide = width / height > 1.45;
  const room = wide ? 84 : 58;
  const places = steps.map((s) => ({
    label: String(s.number),
    // Not at the lower left corner, where the datum is.
    at: [s.box.minX, s.box.maxY] as const,
  }));
  // Parts are numbered by step in the drawings, where there is room for it.
  const plain = { ...job, islands: [] };
  const section = `${sectionFigure(recipe)}\n<p><small>Heights as on the piece, to one scale; widths and eased foot not. The clearance named here and below is the recipe's; each step has its own.</small></p>`;
  return sheetPage(recipe.name, 'coupon sheet', STYLE, [
    `<p class="lead">${escapeText(`Coupon to find the clearance of ${coupon.whole.name}: ${steps.length} step${steps.length === 1 ? '' : 's'}, ${recipe.woods.plug} in ${recipe.woods.field}, ${lengthText(width, recipe.units)} by ${lengthText(height, recipe.units)}. ${woodText(coupon)}`)}</p>`,
    `<div class="figures${wide ? ' wide' : ''}">`,
    `<figure class="picture">${inline(picture)}<figcaption>The coupon, plugs in place; dots number the steps</figcaption></figure>`,
    `<div class="parts">${smallDrawing(plain, 'pocket', places, room)}\n${smallDrawing(plain, 'plug', places, room)}</div>`,
    '</div>',
    block('Steps of the ladder: gauge, try, write down', stepTable(coupon), true),
    block('What to do', couponStepList(coupon)),
    block('Hard spots that every step holds', spotList(coupon)),
    block('Pressing one step', pressBlock(coupon), true),
    block('Section', section, true),
    block('Numbers', numberTable(job)),
    block(
      'Findings',
      `${findingList(job)}\n<p><small>Part 2 is part 1.2 of step 1, 2.2 of step 2 and so on.</small></p>`,
    ),
    block('Files and scale', couponFileList(coupon)),
    block('Cautions', cautionList()),
  ]);
}

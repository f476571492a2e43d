import { listed } from '../inspect/part-names.js';
import { findingPicture, placedFindings } from './finding-picture.js';
import { escapeText, lengthText } from './format.js';
import type { Job } from './job.js';
import { smallDrawing } from './sheet-figures.js';
import { fitBlock } from './sheet-fit.js';
import { eachInlay, INLAY_STYLE, inlayBlock, numbersBlock } from './sheet-inlays.js';
import { changeList, changePlaces, findingList } from './sheet-lists.js';
import { block, inline, sheetPage } from './sheet-page.js';
import { layoutBlock } from './sheet-parts.js';
import { reachBlock } from './sheet-reach.js';
import { sectionFigure } from './sheet-section.js';
import { SETTINGS_STYLE, settingsBlock } from './sheet-settings.js';
import { cautionList, fileList } from './sheet-words.js';
import { stepList, WORK_STYLE } from './sheet-work.js';

/** The shop sheet: one self-contained page, no scripts, nothing fetched. `picture` is picture.svg's text. */
export function sheetHtml(job: Job, picture: string): string {
  const { recipe } = job;
  const several = job.inlays.length > 1;
  const woods = `${listed(
    job.inlays.map((i) => i.wood),
    'and',
  )} in ${recipe.woods.field}`;
  const { minX, minY, maxX, maxY } = job.outline.box;
  const size = `${lengthText(maxX - minX, recipe.units)} by ${lengthText(maxY - minY, recipe.units)}`;
  const wide = (maxX - minX) / (maxY - minY) > 1.45;
  const room = wide ? 84 : 58;
  const places = changePlaces(job);
  const layouts = layoutBlock(job);
  return sheetPage(recipe.name, 'shop sheet', WORK_STYLE + SETTINGS_STYLE + (several ? INLAY_STYLE : ''), [
    `<p class="lead">${escapeText(`${woods}; face ${size}. ${fitSentence(job)}`)}</p>`,
    `<div class="figures${wide || several ? ' wide' : ''}">`,
    `<figure class="picture">${inline(picture)}<figcaption>The piece as it will look</figcaption></figure>`,
    several
      ? ''
      : `<div class="parts">${smallDrawing(job, 'pocket', places, room)}\n${smallDrawing(job, 'plug', [], room)}</div>`,
    '</div>',
    ...(several ? [block('Inlays, in this order', inlayBlock(job))] : []),
    block(
      'Section',
      `${sectionFigure(recipe)}\n<p><small>Heights to one scale; widths, clearance and eased foot not.</small></p>`,
      true,
    ),
    block('Numbers', numbersBlock(job)),
    block('Findings', findingBlock(job)),
    block('Cutters and settings', settingsBlock(job)),
    ...(recipe.roughing ? [block('Where each cutter gets to', reachBlock(job), true)] : []),
    block('Order of work', stepList(job)),
    block('Cautions', cautionList()),
    block('The fit', fitBlock(job)),
    ...(layouts === '' ? [] : [block('Layout', layouts)]),
    block('What the cutter made necessary', `${eachInlay(job, changeList)}\n${placesNote(job)}`),
    block('Files and scale', fileList(job)),
  ]);
}

function fitSentence(job: Job): string {
  if (!job.pair.mirrored) return 'The plug is loose: cut it as it goes in.';
  return job.recipe.fit.plug === 'carrier'
    ? 'The plug is on a carrier: cut mirrored, press in face down.'
    : 'The plug is loose and goes in face down: cut it mirrored, turn it over.';
}

/** The findings with a picture of where they lie, when any has a place. */
function findingBlock(job: Job): string {
  const list = findingList(job);
  if (placedFindings(job).length === 0) return list;
  const picture = inline(
    findingPicture(job, { key: false, font: 'Liberation Sans, Arial, Helvetica, sans-serif' }),
  );
  const caption = 'Numbers are those of the list; hatched: take care, dotted: good to know';
  return `<figure class="find">${picture}<figcaption>${caption}</figcaption></figure>\n${list}`;
}

function placesNote(job: Job): string {
  const any = job.inlays.some((i) => i.safe.changes.length > 0) || job.findings.some((f) => f.where);
  return any ? '<p><small>Places are right and up from the datum, on the pocket’s drawing.</small></p>' : '';
}

import { drawingDxf } from './dxf.js';
import type { Files, Job } from './job.js';
import { marksOf } from './marks.js';
import { pictureSvg } from './picture.js';
import type { Renderer } from './renderer.js';
import { frameOf } from './ring.js';
import { sheetHtml } from './sheet.js';
import { drawingSvg } from './svg.js';

/** Width of picture.png, pixels: sharp on a page, and drawn in a third of the time that 1200 takes. */
const PICTURE_WIDTH = 720;

/** Every file of a job but job.json, in memory. */
export function draw(job: Job, renderer: Renderer): Files {
  const frame = frameOf(job.sheet, job.recipe.units);
  const forPocket = marksOf(job, false);
  const forPlug = marksOf(job, job.pair.mirrored);
  const { name } = job.recipe;
  const { pocket, plug, mirrored } = job.pair;
  const picture = pictureSvg(job);
  const plugTitle = `${name}: plug${mirrored ? ', mirrored' : ''}`;
  return new Map<string, string | Uint8Array>([
    ['pocket.svg', drawingSvg('pocket', `${name}: pocket`, pocket, forPocket, frame)],
    ['plug.svg', drawingSvg('plug', plugTitle, plug, forPlug, frame)],
    ['pocket.dxf', drawingDxf('POCKET', pocket, forPocket, frame)],
    ['plug.dxf', drawingDxf('PLUG', plug, forPlug, frame)],
    ['picture.svg', picture],
    ['picture.png', renderer.png(picture, PICTURE_WIDTH)],
    ['sheet.html', sheetHtml(job, picture)],
  ]);
}

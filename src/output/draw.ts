import { fileStem } from '../fit/inlay.js';
import { islandsOf } from '../fit/islands.js';
import { drawingDxf } from './dxf.js';
import type { Files, Job } from './job.js';
import { layoutDrawing } from './layout-drawing.js';
import { type Marks, marksOf } from './marks.js';
import { numbersOf } from './numbers.js';
import { pictureSvg } from './picture.js';
import type { Renderer } from './renderer.js';
import { type Frame, frameOf } from './ring.js';
import { sheetHtml } from './sheet.js';
import { drawingSvg } from './svg.js';

/** Width of picture.png, pixels: sharp on a page, and drawn in a third of the time that 1200 takes. */
export const PICTURE_WIDTH = 720;

/** Every file of a job but job.json, in memory. */
export function draw(job: Job, renderer: Renderer): Files {
  const frame = frameOf(job.sheet, job.recipe.units);
  const forPocket = marksOf(job, false);
  const forPlug = marksOf(job, job.pair.mirrored);
  const { inlays, recipe } = job;
  const { name } = recipe;
  const { pocket, plug, mirrored } = job.pair;
  const picture = pictureSvg(job);
  const of = inlays.length > 1 ? `, ${inlays[0]!.wood}` : '';
  const plugTitle = `${name}: plug${of}${mirrored ? ', mirrored' : ''}`;
  return new Map<string, string | Uint8Array>([
    ['pocket.svg', drawingSvg('pocket', `${name}: pocket${of}`, pocket, forPocket, frame)],
    ['plug.svg', drawingSvg('plug', plugTitle, plug, forPlug, frame)],
    ['pocket.dxf', drawingDxf('POCKET', pocket, forPocket, frame)],
    ['plug.dxf', drawingDxf('PLUG', plug, forPlug, frame)],
    ...furtherInlays(job, { forPocket, forPlug, frame }),
    ...layoutFiles(job),
    ['picture.svg', picture],
    ['picture.png', renderer.png(picture, PICTURE_WIDTH)],
    ['sheet.html', sheetHtml(job, picture)],
  ]);
}

/** The parts laid out on boards, as far as that was asked for. */
function layoutFiles({ layouts, islands, pair, recipe }: Job): [string, string][] {
  return (['plug', 'pocket'] as const).flatMap((part): [string, string][] => {
    const layout = layouts[part];
    if (!layout) return [];
    const { region, marks, frame } = layoutDrawing(layout, part, islands, pair.mirrored, recipe.units);
    const turned = part === 'plug' && pair.mirrored ? ', mirrored' : '';
    const title = `${recipe.name}: ${part === 'plug' ? 'plug parts' : 'pockets'} laid out${turned}`;
    return [
      [`${part}-layout.svg`, drawingSvg(part, title, region, marks, frame)],
      [`${part}-layout.dxf`, drawingDxf(part === 'plug' ? 'PLUG' : 'POCKET', region, marks, frame)],
    ];
  });
}

/** The drawings of the second inlay and those after it: same sheet, same marks, the wood in the title. */
function furtherInlays(
  { inlays, recipe }: Job,
  { forPocket, forPlug, frame }: { forPocket: Marks; forPlug: Marks; frame: Frame },
): [string, string][] {
  return inlays.slice(1).flatMap(({ wood, pair }, i): [string, string][] => {
    const [pocket, plug] = [fileStem('pocket', i + 1), fileStem('plug', i + 1)];
    // Each wood's parts have numbers of their own.
    const islands = islandsOf(pair);
    const onPocket = { ...forPocket, numbers: numbersOf(islands, false) };
    const onPlug = { ...forPlug, numbers: numbersOf(islands, pair.mirrored) };
    const title = (part: string): string => `${recipe.name}: ${part} ${i + 2}, ${wood}`;
    const plugTitle = `${title('plug')}${pair.mirrored ? ', mirrored' : ''}`;
    return [
      [`${pocket}.svg`, drawingSvg('pocket', title('pocket'), pair.pocket, onPocket, frame)],
      [`${plug}.svg`, drawingSvg('plug', plugTitle, pair.plug, onPlug, frame)],
      [`${pocket}.dxf`, drawingDxf('POCKET', pair.pocket, onPocket, frame)],
      [`${plug}.dxf`, drawingDxf('PLUG', pair.plug, onPlug, frame)],
    ];
  });
}

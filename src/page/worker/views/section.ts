import type { Job } from '../../../output/job.js';
import { sectionFigure } from '../../../output/sheet-section.js';
import type { Units } from '../../../schema/units.js';
import type { View } from '../protocol.js';
import { viewOf } from './view.js';

/** Room beside the figure, mm: a screen's letters may be wider than the paper's. */
const ROOM = 9;

/** The joint cut across, as the sheet prints it. */
export function sectionView({ recipe, outline }: Job, units: Units): View {
  const figure = sectionFigure({ ...recipe, units });
  const [, wide, high] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(figure)!;
  const [width, height] = [Number(wide) + 2 * ROOM, Number(high)];
  return viewOf('section', outline, {
    box: { minX: -ROOM, minY: 0, maxX: width - ROOM, maxY: height },
    // It stands by itself here: as an image it needs its own name and size, and has no style sheet.
    picture: figure.replace(
      /^<svg [^>]*>/,
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${-ROOM} 0 ${width} ${height}" font-family="sans-serif">`,
    ),
    says: 'Cut across: the plug as it is cut, going in, and in place. Heights are to one scale; widths and the gap are not.',
  });
}

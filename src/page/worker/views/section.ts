import type { Job } from '../../../output/job.js';
import { sectionFigure } from '../../../output/sheet-section.js';
import type { Units } from '../../../schema/units.js';
import type { View } from '../protocol.js';
import { viewOf } from './view.js';

/** More room beside the figure, mm: a screen's letters may be wider than the paper's. */
const ROOM = 5;

/** The joint cut across, as the sheet prints it. */
export function sectionView({ recipe, outline }: Job, units: Units): View {
  const figure = sectionFigure({ ...recipe, units });
  const [left, top, wide, height] = /viewBox="([^"]+)"/.exec(figure)![1]!.split(' ').map(Number) as [
    number,
    number,
    number,
    number,
  ];
  const [minX, width] = [left - ROOM, wide + 2 * ROOM];
  return viewOf('section', outline, {
    box: { minX, minY: top, maxX: minX + width, maxY: top + height },
    // It stands by itself here: as an image it needs its own name and size, and has no style sheet.
    picture: figure.replace(
      /^<svg [^>]*>/,
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${minX} ${top} ${width} ${height}" font-family="sans-serif">`,
    ),
    says: 'Cut across: the plug as it is cut, going in, and in place. Heights are to one scale; widths and the gap are not.',
  });
}

import type { Job } from '../../../output/job.js';
import { sectionFigure } from '../../../output/sheet-section.js';
import type { View } from '../protocol.js';
import { viewOf } from './view.js';

/** The joint cut across, as the sheet prints it. */
export function sectionView({ recipe, outline }: Job): View {
  const figure = sectionFigure(recipe);
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(figure)!;
  return viewOf('section', outline, {
    box: { minX: 0, minY: 0, maxX: Number(width), maxY: Number(height) },
    // It stands by itself here: as an image it needs its own name and size, and has no style sheet.
    picture: figure.replace(
      /^<svg [^>]*>/,
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" font-family="sans-serif">`,
    ),
    says: 'Cut across: the plug as it is cut, going in, and in place. Heights are to one scale; widths and the gap are not.',
  } as Partial<View>);
}

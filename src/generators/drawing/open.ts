import type { Region } from '../../geometry/region.js';
import { BadInput, Refusal } from '../../schema/fault.js';
import type { Assets } from '../generator.js';
import { type Drawing, readSvg } from './read-svg.js';

/** Reads a drawing that was loaded. Throws BadInput, about the recipe's value at `where`, when it was not. */
export function openDrawing(assets: Assets, file: string, where: string): Drawing {
  const text = assets.drawings.get(file);
  if (text === undefined)
    throw new BadInput([
      { where, message: `${JSON.stringify(file)} was not loaded; give the path of an SVG file` },
    ]);
  return readSvg(text, file);
}

/** Drawings that are repeated are drawn this large first, mm: scaled down, their curves stay true. */
const DRAWN = 200;

/** A motif is compared with its own copies edge by edge: more edges than this take too long. */
const MOST_EDGES = 1500;

/** A drawing as one figure, in no particular size or place, for a pattern that repeats it. */
export function drawingMotif(assets: Assets, file: string, where: string): Region {
  const source = openDrawing(assets, file, where);
  const contours = source.figures(DRAWN / source.extent).flatMap((p) => p.region.contours);
  const edges = contours.reduce((sum, c) => sum + c.length, 0);
  if (edges > MOST_EDGES)
    throw new Refusal(
      'too-large',
      `${where}: ${JSON.stringify(file)} has ${edges} edges, more than the ${MOST_EDGES} that a motif may have; make it simpler`,
    );
  return { contours };
}

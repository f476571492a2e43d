import type { Region } from '../../geometry/region.js';
import { BadInput, Refusal } from '../../schema/fault.js';
import type { Assets } from '../generator.js';
import { readDxf } from './dxf/read-dxf.js';
import type { ReadAs } from './outlines/options.js';
import { type Drawing, readSvg } from './read-svg.js';

/**
 * Reads a drawing that was loaded: SVG or DXF, by what it holds. Throws BadInput, about the recipe's value at `where`,
 * when it was not loaded, or when its name ends as the other kind's does.
 */
export function openDrawing(assets: Assets, file: string, where: string, as?: ReadAs): Drawing {
  const text = assets.drawings.get(file);
  if (text === undefined)
    throw new BadInput([
      { where, message: `${JSON.stringify(file)} was not loaded; give the path of an SVG or DXF file` },
    ]);
  const kind = kindOf(text);
  const ending = /\.(svg|dxf)$/i.exec(file)?.[1]?.toLowerCase();
  if (kind && ending && kind !== ending)
    throw new BadInput([
      {
        source: file,
        where: '',
        message: `holds ${kind === 'dxf' ? 'a DXF drawing' : 'an SVG drawing'}, though its name ends in .${ending}; rename it to end in .${kind}`,
      },
    ]);
  return (kind ?? ending) === 'dxf' ? readDxf(text, file, as) : readSvg(text, file, as);
}

/** What a text holds by its beginning; null when that tells neither. */
function kindOf(text: string): 'svg' | 'dxf' | null {
  const start = text.slice(0, 4000).replace(/^\uFEFF/, '');
  if (/^\s*</.test(start)) return 'svg';
  if (/^[ \t]*999[ \t]*\r?\n/.test(start) || /^[ \t]*0[ \t]*\r?\n[ \t]*SECTION[ \t]*\r?\n/.test(start))
    return 'dxf';
  return null;
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

import { basename, extname } from 'node:path';
import { drawingText, loadDrawing } from '../disk/load.js';
import { openDrawing } from '../generators/drawing/open.js';
import type { ReadAs } from '../generators/drawing/outlines/options.js';
import { TOLERANCES } from '../generators/drawing/outlines/repair.js';
import { placedRegion } from '../geometry/transform.js';
import { type Drawing, drawingOfEdges, readDxf, readSvg, Unreadable } from '../proof/index.js';
import { BadInput } from '../schema/fault.js';
import { MM_PER_INCH, type Units } from '../schema/units.js';

/** A drawing file as it is measured. */
export interface ProveFile {
  readonly file: string;
  /** mm, y up; in the page's coordinates where the file has any. */
  readonly drawing: Drawing;
  /** What the file itself is in; mm where it does not say. */
  readonly unit: Units;
  /** Width of the sheet, mm; null where the file has none. */
  readonly sheet: number | null;
  /** pocket or plug, where the file names it as our own drawings do. */
  readonly names: 'pocket' | 'plug' | null;
  /** How it was read, as a clause. */
  readonly how: string;
}

/** Coordinates past this, mm, are no wood's. */
const FARTHEST = 50_000;

/** Curves are followed to this by the drawing reader. */
const FOLLOWED = 'curves are followed to within 0.0015 mm';

/** Reads an SVG or DXF of closed outlines; ends nearer than `join`, mm, are joined. Throws BadInput, one line with the place. */
export function readProveFile(file: string, join = TOLERANCES.join): ProveFile {
  const ending = extname(file).toLowerCase();
  if (ending !== '.svg' && ending !== '.dxf')
    throw bad(file, `must be a drawing: a file that ends in .svg or .dxf`);
  const text = drawingText(file, loadDrawing(file));
  const read =
    (ending === '.svg' ? ownSvg(file, text) : ownDxf(file, text, join)) ?? foreign(file, text, join);
  const { edges } = read.drawing;
  if (edges.count === 0) throw bad(file, 'has nothing drawn in it');
  for (const [column, name] of [
    [edges.x0, 'x'],
    [edges.y0, 'y'],
  ] as const) {
    const far = column.find((v) => !(Math.abs(v) <= FARTHEST));
    if (far !== undefined)
      throw bad(
        file,
        `has a point over ${FARTHEST / 1000} m out (${name} ${shownNumber(far)} mm); move its parts together`,
      );
  }
  return read;
}

/** A drawing with a group named as in our own: its paths as they are written, and nothing else in the file. */
function ownSvg(file: string, text: string): ProveFile | null {
  const group = /<g\s[^>]*\bid\s*=\s*["'](pocket|plug)["']/.exec(text)?.[1];
  if (!group) return null;
  try {
    const drawing = readSvg(text);
    return own(file, drawing, `lines and arcs of its group "${drawing.name}", as they are written`);
  } catch (e) {
    if (!(e instanceof Unreadable)) throw e;
    throw bad(
      file,
      `${e.message}; its group "${group}" is all that is measured, and must be as inlaywright writes it`,
    );
  }
}

function ownDxf(file: string, text: string, join: number): ProveFile | null {
  const layer = /^[ \t]*8[ \t]*\r?\n[ \t]*(POCKET|PLUG)[ \t]*\r?$/im.exec(text)?.[1];
  if (!layer) return null;
  try {
    const drawing = readDxf(text);
    return own(file, drawing, `polylines of its layer ${layer.toUpperCase()}, as they are written`);
  } catch (e) {
    if (!(e instanceof Unreadable)) throw e;
    return { ...foreign(file, text, join, layer), names: layer.toLowerCase() as 'pocket' | 'plug' };
  }
}

function own(file: string, drawing: Drawing, how: string): ProveFile {
  return { file, drawing, unit: drawing.unit, sheet: drawing.width, names: drawing.name, how };
}

/** Any other drawing: what it shows, or for DXF what its lines enclose. */
function foreign(file: string, text: string, join: number, layer = ''): ProveFile {
  // Nothing is tidied away: what is to be measured is what was drawn. Only ends that nearly meet are joined.
  const tolerances = { join, speck: 0, refit: 0 };
  // Messages name the file by its path, the reader tells the kind by the ending.
  const assets = { fonts: new Map(), drawings: new Map([[file, text]]) };
  const draw = (lines: ReadAs['lines']): ProveFile => {
    const source = openDrawing(assets, file, '', { lines, tolerances, layer });
    const pieces = source.figures(1);
    const height = source.page?.height ?? 0;
    const dxf = extname(file).toLowerCase() === '.dxf';
    const [dx, dy] = [source.middle[0], dxf ? source.middle[1] : height - source.middle[1]];
    const outlines = pieces.flatMap((p) => placedRegion(p.region, dx, dy).contours);
    const mended = new Map<string, number>();
    for (const r of source.repairsAt(1)) mended.set(r.kind, (mended.get(r.kind) ?? 0) + r.count);
    const how = [
      dxf
        ? `what its lines enclose${layer === '' ? '' : ` on layer ${layer.toUpperCase()}`}`
        : lines === 'strokes'
          ? 'what it shows in any colour but white'
          : 'what its lines enclose, since it has only thin lines',
      FOLLOWED,
      ...(source.unit === null && source.page === null ? ['it names no unit, so mm'] : []),
      ...[...mended].map(([kind, n]) => `${n} ${kind}`),
    ].join('; ');
    return {
      file,
      drawing: drawingOfEdges(outlines, 'pocket'),
      unit: source.unit ?? 'mm',
      sheet: source.page?.width ?? null,
      names: null,
      how,
    };
  };
  try {
    return draw('strokes');
  } catch (e) {
    if (!(e instanceof BadInput) || !/has only lines|encloses nothing/.test(e.message)) throw e;
    return draw('outlines');
  }
}

export function bad(file: string, message: string): BadInput {
  return new BadInput([{ source: file, where: '', message }]);
}

function shownNumber(x: number): string {
  return x - x === 0 ? x.toPrecision(3) : 'too large to write down';
}

/** mm in a unit. */
export const PER: Readonly<Record<Units, number>> = { mm: 1, in: MM_PER_INCH };

/** The name of a file without its folder, for headings. */
export function nameOf({ file }: ProveFile): string {
  return basename(file);
}

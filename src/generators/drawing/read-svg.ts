import type { Piece } from '../../geometry/artwork.js';
import type { Vector } from '../../geometry/bezier.js';
import { BadInput } from '../../schema/fault.js';
import type { Display, Painted } from './display.js';
import { figuresOf } from './figures.js';
import { apply } from './matrix.js';
import { MM_PER_PIXEL } from './numbers.js';
import type { Step } from './outline-path.js';
import { AS_DRAWN, type ReadAs, remembered, scaledBy } from './outlines/options.js';
import { type Repair, Repairs } from './outlines/repair.js';
import { DrawingFaults } from './unreadable.js';
import { Walk } from './walk.js';
import { readXml, type SvgElement } from './xml.js';

/** A drawing that was read, to be drawn at any size. */
export interface Drawing {
  /** The page at the drawing's own size, mm; null when the file gives none. */
  readonly page: { readonly width: number; readonly height: number } | null;
  /** The unit that the file names for its size; null where it names none, or pixels only. */
  readonly unit: 'mm' | 'in' | null;
  /** The longer side of a box that holds every path at the drawing's own size, mm. */
  readonly extent: number;
  /** Where the middle of all paths lies on the page, mm at the drawing's own size, right and down of its corner. */
  readonly middle: Vector;
  /**
   * What the drawing shows at a scale on top of its own size, mm, y up, about the middle of its paths: every
   * connected part as a piece, its curves within CURVE_FIT. Throws BadInput when it shows nothing, or has a gap.
   * `at` is the scale that it is going to be made at, where that is another: what is mended is mended as there.
   */
  figures(scale: number, at?: number): Piece[];
  /** What is mended in it at its own size, mm about its middle, y up. Throws as `figures` does. */
  readonly repairs: readonly Repair[];
  /** What is mended in it when it is drawn at a scale. */
  repairsAt(scale: number): readonly Repair[];
}

/** Coordinates past this, mm, are no wood's. */
const FARTHEST = 50_000;

/** A line thinner than this, mm, is a mark on paper, not a figure. */
const HAIRLINE = 0.5;

/**
 * Reads an SVG file. Every colour but white is the figure: what one sees where it is not white is drawn, and white on
 * top cuts away what is under it. `source` names the file in messages. Throws BadInput with every fault found, each
 * with its line and element, and Refusal for a drawing too large.
 */
export function readSvg(text: string, source: string, as: ReadAs = AS_DRAWN): Drawing {
  refuseLayer(as, source);
  const root = readXml(text, source);
  const faults = new DrawingFaults(source);
  const display = new Walk(root, faults).display(root);
  faults.check();
  const span = spanOf(display.painted);
  const page = display.page && {
    width: display.page.width * MM_PER_PIXEL,
    height: display.page.height * MM_PER_PIXEL,
  };
  const fail = (message: string): BadInput => new BadInput([{ source, where: '', message }]);
  if (!display.painted.some((p) => !p.white))
    throw fail('has nothing painted in it but white; give the figures a fill that is not white or none');
  const draw = (scale: number, at: number): { figures: Piece[]; repairs: readonly Repair[] } => {
    const repairs = new Repairs();
    const mended = { ...as, tolerances: scaledBy(as.tolerances, scale / at) };
    const figures = figuresOf(display, scale, span.middle, mended, repairs, source);
    return { figures, repairs: repairs.list() };
  };
  const drawnAt = remembered(draw);
  return {
    page,
    unit: namesUnit(root) ? 'mm' : null,
    extent: page ? Math.min(span.extent, Math.max(page.width, page.height)) : span.extent,
    middle: [span.middle[0] * MM_PER_PIXEL, span.middle[1] * MM_PER_PIXEL],
    figures(scale, at = scale) {
      if (!(span.extent * scale <= FARTHEST))
        throw fail(`reaches over ${FARTHEST / 1000} m; give it a width, or move its parts together`);
      // Before anything is drawn: the bands of a web of thin lines take seconds.
      const lines = as.lines === 'outlines' ? null : hairlines(display, scale);
      if (lines !== null && lines > 0)
        throw fail(
          `has only lines, ${lines.toFixed(2)} mm wide at the most; fill the figures, draw the lines as wide as they are to be cut, or set lines to outlines`,
        );
      const { figures } = drawnAt(scale, at);
      if (figures.length === 0)
        throw fail(
          'encloses nothing: its lines have no width and its paths no area; give it closed, filled paths',
        );
      return figures;
    },
    repairsAt: (scale) => drawnAt(scale, scale).repairs,
    get repairs() {
      return drawnAt(1, 1).repairs;
    },
  };
}

function refuseLayer({ layer }: ReadAs, source: string): void {
  if (layer.trim() !== '')
    throw new BadInput([
      {
        where: 'pattern.layer',
        message: `${source} is an SVG, whose groups are not picked; leave layer out`,
      },
    ]);
}

/** Does the file give its width or height in a unit of length? A pixel is none: programs differ in its size. */
function namesUnit({ attributes }: SvgElement): boolean {
  return ['width', 'height'].some((side) => /\d\s*(mm|cm|q|in|pt|pc)\s*$/i.test(attributes.get(side) ?? ''));
}

/** Width of the widest line, mm, where a drawing has lines only and all too thin; else null. */
function hairlines({ painted }: Display, scale: number): number | null {
  let widest = 0;
  for (const { stroke, matrix, white } of painted) {
    if (white) continue;
    if (!stroke) return null;
    const area = Math.abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]);
    widest = Math.max(widest, stroke.width * (stroke.fixed ? 1 : Math.sqrt(area)) * MM_PER_PIXEL * scale);
  }
  return widest < HAIRLINE ? widest : null;
}

/** The longer side, mm at the drawing's own size and never 0, and the middle, pixels, of a box that holds every path. */
function spanOf(painted: readonly Painted[]): { extent: number; middle: Vector } {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { path, matrix } of painted)
    for (const run of path)
      for (const p of [run.start, ...run.steps.flatMap(points)]) {
        const [x, y] = apply(matrix, p);
        minX = Math.min(minX, x);
        maxX = Math.max(maxX, x);
        minY = Math.min(minY, y);
        maxY = Math.max(maxY, y);
      }
  const extent = Math.max(maxX - minX, maxY - minY);
  return { extent: extent === 0 ? 1 : extent * MM_PER_PIXEL, middle: [(minX + maxX) / 2, (minY + maxY) / 2] };
}

function points(step: Step): Vector[] {
  switch (step.kind) {
    case 'line':
      return [step.to];
    case 'quadratic':
      return [step.handle, step.to];
    case 'cubic':
      return [step.first, step.second, step.to];
    case 'rational':
      return [...step.points];
    case 'arc': {
      const { centre, u, v } = step.arc;
      const far = Math.abs(u[0]) + Math.abs(u[1]) + Math.abs(v[0]) + Math.abs(v[1]);
      return [step.to, [centre[0] + far, centre[1] + far], [centre[0] - far, centre[1] - far]];
    }
  }
}
